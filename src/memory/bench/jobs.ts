/** All jobs of a folder, read. */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { titlesOfFolder } from '../../find/index/find.ts';
import { filesOf, jobText } from '../../find/index/folder.ts';
import { jobOf, readJob } from '../../job/read.ts';
import type { BenchJob } from '../due.ts';
import { type Machine, sameMachine } from '../machine.ts';

export interface BenchJobs {
  jobs: BenchJob[];
  /** Names of files that cannot be read as jobs. */
  unread: string[];
}

/** All of a folder, one after the other. Throws the system's error where the folder cannot be read. */
export function jobsIn(folder: string): Iterable<BenchJob | { unread: string }> {
  return readEach(
    folder,
    filesOf(folder).map(({ name }) => name),
  );
}

/** Those on a machine, and what the machines of the others are called. */
export function jobsOn(folder: string, machine: Machine): BenchJobs & { others: string[] } {
  const others = new Set<string>();
  const names: string[] = [];
  for (const [name, titles] of titlesOfFolder(folder, () => {})) {
    if (sameMachine(machine, titles)) names.push(name);
    else if (titles.machine !== null) others.add(titles.machine);
  }
  return { ...readAll(folder, names), others: [...others] };
}

function readAll(folder: string, names: readonly string[]): BenchJobs {
  const [jobs, unread]: [BenchJob[], string[]] = [[], []];
  for (const one of readEach(folder, names)) {
    if ('unread' in one) unread.push(one.unread);
    else jobs.push(one);
  }
  return { jobs, unread };
}

function* readEach(
  folder: string,
  names: readonly string[],
): Generator<BenchJob | { unread: string }> {
  for (const file of names) {
    const found = jobText(folder, file);
    if (found === null) continue;
    const read = 'text' in found ? readJob(found.text, join(folder, file)) : null;
    yield read === null || read.unreadable ? { unread: file } : { file, job: jobOf(read) };
  }
}

/** How far below a folder its jobs are looked for. */
const DEPTH = 3;

/** Folders below one in which files of jobs may lie, by their names from there, in their order. */
export function benchesBelow(folder: string, depth = DEPTH): string[] {
  if (depth === 0) return [];
  const inside = readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && !/^\.|^node_modules$/.test(entry.name))
    .map((entry) => entry.name)
    .sort();
  return inside.flatMap((name) => {
    const path = join(folder, name);
    try {
      const own = filesOf(path).length > 0 ? [name] : [];
      return [...own, ...benchesBelow(path, depth - 1).map((below) => join(name, below))];
    } catch {
      // One that may not be looked into is none of this bench.
      return [];
    }
  });
}

/** All jobs of a folder, read. */
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

/** Throws the system's error where the folder cannot be read. */
export function allJobs(folder: string): BenchJobs {
  return readAll(
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
  const unread: string[] = [];
  const jobs = names.flatMap((file): BenchJob[] => {
    const found = jobText(folder, file);
    if (found === null) return [];
    const read = 'text' in found ? readJob(found.text, join(folder, file)) : null;
    if (read === null || read.unreadable) {
      unread.push(file);
      return [];
    }
    return [{ file, job: jobOf(read) }];
  });
  return { jobs, unread };
}

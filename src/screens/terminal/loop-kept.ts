/** Marks that a file has no place for just now, put where they are not lost: beside it, as a job file of its own. */
import { lstatSync, readdirSync, rmSync } from 'node:fs';
import { basename, dirname, extname, join } from 'node:path';
import { createFile } from '../../job/save/create.ts';
import { disk } from '../../job/save/disk.ts';
import { readPlain } from '../../job/save/plain.ts';
import { makeStateFolder } from '../../job/save/state.ts';
import type { Entry } from '../../model/types.ts';

export interface Kept {
  path: string;
  text: string;
  ids: readonly string[];
}

/** So many files one keeps for one job before somebody looks at them. */
const MOST = 99;

/** `job.kept-1.yaml` beside `file`, or in the user's own folder where that cannot be written; null: nowhere. */
export function keepBeside(file: string, text: string, entries: readonly Entry[]): Kept | null {
  const end = extname(file);
  const stem = basename(file, end);
  const ids = entries.map((e) => e.id);
  for (const folder of [() => dirname(file), () => makeStateFolder(disk)]) {
    for (let n = 1; n <= MOST; n++) {
      try {
        const path = join(folder(), `${stem}.kept-${n}${end}`);
        const made = createFile(path, text);
        if (made.ok) return { path, text, ids };
        if (made.code !== 'exists') break;
        // Left by a run that was killed right after it had written the same.
        if (says(path, text)) return { path, text, ids };
      } catch {
        break;
      }
    }
  }
  return null;
}

/** How it is named beside the job. */
export function keptName(kept: Kept, file: string): string {
  return dirname(kept.path) === dirname(file) ? basename(kept.path) : kept.path;
}

/** What a program that was killed had put beside `file` of these marks; null: nothing. */
export function keptBefore(file: string, entries: readonly Entry[]): Kept | null {
  const ids = new Set(entries.map((e) => e.id));
  const end = extname(file);
  const stem = basename(file, end);
  try {
    for (const name of readdirSync(dirname(file))) {
      if (!name.startsWith(`${stem}.kept-`) || !name.endsWith(end)) continue;
      const path = join(dirname(file), name);
      if (!lstatSync(path).isFile()) continue;
      const text = readPlain(path).bytes.toString('utf8');
      const there = [...idsIn(text)];
      if (there.length > 0 && there.every((id) => ids.has(id))) return { path, text, ids: there };
    }
  } catch {
    // What cannot be read is nobody's to take away.
  }
  return null;
}

/** Takes it away again, if it still is what was put there. */
export function dropKept({ path, text }: Kept): void {
  // What somebody took away or changed is theirs now.
  if (says(path, text)) rmSync(path, { force: true });
}

/** A plain file with just this text. */
function says(path: string, text: string): boolean {
  try {
    return readPlain(path).bytes.toString('utf8') === text;
  } catch {
    return false;
  }
}

/** So many files of a folder are looked into. */
const MOST_FILES = 500;

/** Another file of the folder that has all these marks: the job may have got another name. */
export function findKept(file: string, ids: readonly string[]): string | null {
  try {
    const names = readdirSync(dirname(file)).filter((name) => /\.ya?ml$/i.test(name));
    const has = (name: string) => {
      const path = join(dirname(file), name);
      if (path === file || !lstatSync(path).isFile()) return false;
      const there = idsIn(readPlain(path).bytes.toString('utf8'));
      return ids.every((id) => there.has(id));
    };
    return names.slice(0, MOST_FILES).find(has) ?? null;
  } catch {
    return null;
  }
}

/** What look like ids of entries, in any text. */
export function idsIn(text: string): Set<string> {
  return new Set(Array.from(text.matchAll(/\bid: *["']?([A-Za-z0-9_-]{8})\b/g), (m) => m[1] ?? ''));
}

/** The job files of a folder, as they are found: plain files that are jobs, links that lead out left alone. */
import { lstatSync, readdirSync, realpathSync, type Stats, statSync } from 'node:fs';
import { join, sep } from 'node:path';
import { BENCH_FILE } from '../../diary/bench.ts';
import { errorCode } from '../../job/save/disk.ts';
import { failOf } from '../../job/save/fail.ts';
import { readPlain } from '../../job/save/plain.ts';
import { MOST_CHARACTERS } from '../../job/yaml/doc.ts';
import { IS_JOB } from '../../job/yaml/is-job.ts';

export interface FolderFile {
  name: string;
  /** Another text whenever the file was changed, also where somebody put size and time of writing back. */
  stamp: string;
  /** ms since 1970 when anything of it was changed last: nobody can set that. */
  changed: number;
}

const IS_YAML = /\.ya?ml$/i;

/** What has a name of a job file, by name. Throws the system's error where the folder cannot be read. */
export function filesOf(folder: string): FolderFile[] {
  let real: string | null = null;
  const names = readdirSync(folder).filter((n) => IS_YAML.test(n) && n !== BENCH_FILE);
  return names.sort().flatMap((name) => {
    const path = join(folder, name);
    let stat = lstatOf(path);
    if (stat?.isSymbolicLink()) {
      // A link inside the bench is one of its jobs.
      real ??= realpathSync(folder) + sep;
      stat = insideOf(path, real);
    }
    if (!stat?.isFile()) return [];
    // Fractions of a ms, so that these figures tell as much as the system does.
    const { ino, size, mtimeMs, ctimeMs } = stat;
    return [{ name, stamp: `${ino} ${size} ${mtimeMs} ${ctimeMs}`, changed: ctimeMs }];
  });
}

function lstatOf(path: string): Stats | undefined {
  return lstatSync(path, { throwIfNoEntry: false });
}

function insideOf(path: string, real: string): Stats | undefined {
  try {
    return realpathSync(path).startsWith(real) ? statSync(path) : undefined;
  } catch {
    return undefined;
  }
}

/** The text of a job; null: it is none; or a sentence that says why it could not be read. */
export function jobText(
  folder: string,
  name: string,
): { text: string } | { unread: string } | null {
  try {
    const { bytes, whole } = readPlain(realpathSync(join(folder, name)), 3 * MOST_CHARACTERS);
    if (!whole) {
      return { unread: `${name} is too large for a job file.` };
    }
    const text = bytes.toString('utf8');
    return IS_JOB.test(text) ? { text } : null;
  } catch (error) {
    const code = errorCode(error);
    if (code === null) throw error;
    return code === 'ENOENT' ? null : { unread: failOf(error, name, 'read').say };
  }
}

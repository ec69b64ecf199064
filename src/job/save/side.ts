/**
 * The folder beside a job file where its lock and what is half written lie.
 *
 * `.putback/` holds a `.gitignore` of its own with `*` in it: git shows nothing of the folder and `git add -A`
 * takes nothing from it, in any repository and without a setting, even after a kill between two steps. It is on
 * the file's own file system, so that a rename out of it is one step. Where the folder cannot be written, a
 * private one in the system's folder for temporary files serves, for this host alone; renaming is then out.
 */
import { createHash } from 'node:crypto';
import { constants } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { type Disk, errorCode } from './disk.ts';

export const SIDE = '.putback';

export interface Side {
  folder: string;
  /** Whether files in it can be renamed to the job file. */
  beside: boolean;
  lock: string;
  /** Held while a dead holder's lock is taken away. */
  breaking: string;
  journal: string;
  /** Start of the names of files that are being written. */
  temp: string;
}

/** Longest name that leaves room for what is added, of the 255 bytes that file systems allow. */
const LONGEST = 180;

function nameOf(file: string): string {
  const name = basename(file);
  if (Buffer.byteLength(name) <= LONGEST) return name;
  return createHash('sha256').update(name).digest('hex');
}

function sideIn(folder: string, name: string, beside: boolean): Side {
  const path = join(folder, name);
  return {
    folder,
    beside,
    lock: `${path}.lock`,
    breaking: `${path}.break`,
    journal: `${path}.journal`,
    temp: `${path}.`,
  };
}

export function besideOf(file: string): Side {
  return sideIn(join(dirname(file), SIDE), nameOf(file), true);
}

/** The private folder for files whose own folder cannot be written. */
export function awayOf(file: string, temp = tmpdir()): Side {
  const user = process.getuid?.() ?? 'user';
  const name = createHash('sha256').update(file).digest('hex').slice(0, 32);
  return sideIn(join(temp, `putback-${user}`), name, false);
}

/** Makes the folder, or sees that it is a real one of ours; throws the system's error where it cannot. */
export function makeSide(d: Disk, side: Side): void {
  try {
    d.mkdirSync(side.folder, side.beside ? 0o777 : 0o700);
    // Whoever may write the bench may write here: several people can share one.
    if (side.beside) d.chmodSync(side.folder, d.statSync(dirname(side.folder)).mode & 0o777);
  } catch (error) {
    if (errorCode(error) !== 'EEXIST') throw error;
  }
  const stat = d.lstatSync(side.folder);
  const mine = side.beside || process.getuid === undefined || stat.uid === process.getuid();
  if (!stat.isDirectory() || !mine) {
    throw Object.assign(new Error(`${side.folder} is not a folder of putback's`), {
      code: 'EACCES',
    });
  }
  d.accessSync(side.folder, constants.W_OK);
  if (side.beside) d.writeFileSync(join(side.folder, '.gitignore'), '*\n');
}

/** Whether the folder is there and hidden from git. */
export function isSideReady(d: Disk, side: Side): boolean {
  const stat = d.lstatSync(side.folder, { throwIfNoEntry: false });
  if (!stat?.isDirectory()) return false;
  try {
    d.accessSync(side.folder, constants.W_OK);
  } catch {
    return false;
  }
  if (!side.beside) return process.getuid === undefined || stat.uid === process.getuid();
  return (d.statSync(join(side.folder, '.gitignore'), { throwIfNoEntry: false })?.size ?? 0) > 0;
}

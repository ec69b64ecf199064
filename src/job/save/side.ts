/**
 * The folder beside a job file where its lock and what is half written lie; nothing in it is believed, since a
 * repository may have brought it.
 *
 * `.putback/` holds a `.gitignore` of its own with `*` in it: git shows nothing of the folder and `git add -A`
 * takes nothing from it, in any repository and without a setting, even after a kill between two steps. It is on
 * the file's own file system, so that a rename out of it is one step. Where the folder cannot be written, or what
 * is called so is no folder of ours, the user's own one serves (`state.ts`); renaming is then out.
 */
import { createHash } from 'node:crypto';
import { constants } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { type Disk, errorCode, writeNew } from './disk.ts';
import { lookAt, NotPlain, readPlain, SIDE } from './plain.ts';
import { makeStateFolder } from './state.ts';

/** The two files of a lock. */
export interface Locks {
  lock: string;
  /** Held while a dead holder's lock is taken away. */
  breaking: string;
}

export interface Side extends Locks {
  folder: string;
  /** Whether files in it can be renamed to the job file. */
  beside: boolean;
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

function filesIn(folder: string, name: string): Omit<Side, 'beside'> {
  const path = join(folder, name);
  return {
    folder,
    lock: `${path}.lock`,
    breaking: `${path}.break`,
    temp: `${path}.`,
  };
}

export function besideOf(file: string): Side {
  return { ...filesIn(join(dirname(file), SIDE), nameOf(file)), beside: true };
}

/** In the user's own folder, for files whose own folder cannot be written. */
function awayOf(d: Disk, file: string, state?: string): Side {
  const name = createHash('sha256').update(file).digest('hex').slice(0, 32);
  return { ...filesIn(makeStateFolder(d, state), name), beside: false };
}

/** What two names of one file share: the file itself, by its number on its disk. */
export function inodeLocks(d: Disk, stat: { dev: bigint; ino: bigint }, state?: string): Locks {
  const path = join(makeStateFolder(d, state), `${stat.dev}-${stat.ino}`);
  return { lock: `${path}.lock`, breaking: `${path}.break` };
}

const IGNORE = '.gitignore';
const ALL = '*\n';

/** Makes the folder, or sees that it is a real one of ours; throws the system's error where it cannot. */
export function makeSide(d: Disk, side: Side): void {
  try {
    d.mkdirSync(side.folder, 0o777);
    // Whoever may write the bench may write here: several people can share one.
    d.chmodSync(side.folder, d.statSync(dirname(side.folder)).mode & 0o777);
  } catch (error) {
    if (errorCode(error) !== 'EEXIST') throw error;
  }
  const found = lookAt(d, side.folder);
  if (!found?.stat.isDirectory()) throw new NotPlain(side.folder, found?.odd ?? 'a file');
  d.accessSync(side.folder, constants.W_OK);
  const ignore = join(side.folder, IGNORE);
  const before = lookAt(d, ignore);
  // Left empty by a kill between making it and writing into it.
  if (before?.odd === null && before.stat.size === 0n) d.unlinkSync(ignore);
  try {
    writeNew(d, ignore, ALL, { sync: false });
  } catch (error) {
    if (errorCode(error) !== 'EEXIST') throw error;
    if (!isSideReady(d, side)) throw new NotPlain(ignore, 'another file');
  }
}

/** What was read of it last, by its path; it is read again when anything about it has changed. */
const ignores = new Map<string, string>();

/** Whether the folder is there and hidden from git. */
export function isSideReady(d: Disk, side: Side): boolean {
  try {
    if (!d.lstatSync(side.folder, { throwIfNoEntry: false })?.isDirectory()) return false;
    d.accessSync(side.folder, constants.W_OK);
    const ignore = join(side.folder, IGNORE);
    const { dev, ino, ctimeNs, size } = d.lstatSync(ignore, { bigint: true });
    const now = `${dev} ${ino} ${ctimeNs} ${size}`;
    if (ignores.get(ignore) === now) return true;
    ignores.delete(ignore);
    if (readPlain(ignore, ALL.length, d).bytes.toString('latin1') !== ALL) return false;
    ignores.set(ignore, now);
    return true;
  } catch {
    return false;
  }
}

/** The folder for lock and half-written files, made where it is missing. */
export function openSide(d: Disk, file: string, state?: string): Side {
  const beside = besideOf(file);
  if (isSideReady(d, beside)) return beside;
  try {
    makeSide(d, beside);
    return beside;
  } catch (error) {
    const code = errorCode(error) ?? '';
    if (!['EACCES', 'EPERM', 'EROFS', 'ENOTDIR', 'ENOTPLAIN'].includes(code)) throw error;
  }
  return awayOf(d, file, state);
}

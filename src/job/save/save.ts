/** Saving a job file so that no mark that was shown is ever lost: see `saveFile`. */
import { realpathSync } from 'node:fs';
import { basename } from 'node:path';
import { type Disk, disk, drop, errorCode } from './disk.ts';
import { failOf, lockedBy, type SaveFail, saveFail } from './fail.ts';
import { recover, writeInPlace } from './inplace.ts';
import { acquire, isOurs, type Lock, PATIENCE, type Patience, release } from './lock.ts';
import { cleanTemps, prepare, type Renamed, renameOver, tempName } from './replace.ts';
import { awayOf, besideOf, isSideReady, makeSide, type Side } from './side.ts';
import { textOf } from './text.ts';

/** What a change answers: the new text, or that nothing is to be written and why. */
export type Change<T> = (text: string) => { text: string } | { stop: T };

export type Saved<T> =
  /** On disk. `changed` is false when the new text was the old one. */
  | { ok: true; changed: boolean; text: string }
  /** The change did not want to write; the file is untouched. */
  | { ok: true; stopped: T; text: string }
  | SaveFail;

export interface SaveOptions {
  patience?: Patience;
  /** Tries of a rename that the system refuses because somebody holds the file. */
  renameTries?: number;
  /** The folder for temporary files, where the file's own folder cannot be written. */
  temp?: string;
  disk?: Disk;
}

/** Tries against somebody who writes the file at the same time without the lock (an editor). */
const TRIES = 20;
/** Windows holds files for up to about a second; elsewhere nothing holds a rename for long. */
const RENAME_TRIES = process.platform === 'win32' ? 12 : 2;

/** Saves of this process on one file wait for each other here: a process does not wait for its own lock. */
const queue = new Map<string, Promise<unknown>>();

/**
 * Reads the file under its lock, asks `change` for the new text, and puts it on disk: written beside, synced,
 * renamed, folder synced, with mode and owner kept, a symbolic link still a link; written in place, behind a
 * journal, where a rename would part hard links or change the owner. `ok` with `changed` means it is on disk.
 *
 * `change` must be free of effects: it is asked again when the file was changed under way. What can go wrong
 * outside the program is an answer, never thrown; after it the file is whole, with its old bytes or, where only
 * the last sync failed, with the new ones.
 */
export async function saveFile<T = never>(
  path: string,
  change: Change<T>,
  options: SaveOptions = {},
): Promise<Saved<T>> {
  let file: string;
  try {
    file = realpathSync(path);
  } catch (error) {
    return failOf(error, path);
  }
  const before = queue.get(file);
  const saving = (async () => {
    await before;
    return saveLocked(file, change, options);
  })();
  const done = saving.catch(() => undefined);
  queue.set(file, done);
  try {
    return await saving;
  } finally {
    if (queue.get(file) === done) queue.delete(file);
  }
}

async function saveLocked<T>(
  file: string,
  change: Change<T>,
  options: SaveOptions,
): Promise<Saved<T>> {
  const d = options.disk ?? disk;
  try {
    for (let n = 0; n < TRIES; n++) {
      const side = openSide(d, file, options.temp);
      const lock = await acquireIn(d, side, file, options.patience ?? PATIENCE);
      if (lock === 'again') continue;
      if ('heldBy' in lock) return lockedBy(lock.heldBy, file);
      try {
        const saved = await saveOnce(d, file, side, lock, change, options);
        if (saved !== 'again') return saved;
      } finally {
        release(d, lock);
      }
    }
    return saveFail(
      'busy',
      `${basename(file)} is being changed by another program all the time.`,
      'Let that finish, then try again.',
    );
  } catch (error) {
    return failOf(error, file);
  }
}

/** The folder for lock and half-written files, made where it is missing. */
function openSide(d: Disk, file: string, temp: string | undefined): Side {
  const beside = besideOf(file);
  if (isSideReady(d, beside)) return beside;
  try {
    makeSide(d, beside);
    return beside;
  } catch (error) {
    const code = errorCode(error) ?? '';
    if (!['EACCES', 'EPERM', 'EROFS', 'ENOTDIR'].includes(code)) throw error;
  }
  const away = awayOf(file, temp);
  if (!isSideReady(d, away)) makeSide(d, away);
  return away;
}

/** The lock; `again` when its folder was swept away under way while the file is still there. */
async function acquireIn(d: Disk, side: Side, file: string, patience: Patience) {
  try {
    return await acquire(d, side, patience);
  } catch (error) {
    if (errorCode(error) !== 'ENOENT') throw error;
    d.statSync(file);
    return 'again';
  }
}

async function saveOnce<T>(
  d: Disk,
  file: string,
  side: Side,
  lock: Lock,
  change: Change<T>,
  options: SaveOptions,
): Promise<Saved<T> | 'again'> {
  if (cleanTemps(d, side)) recover(d, file, side);
  const stat = d.statSync(file);
  if (!stat.isFile()) return saveFail('io', `${basename(file)} is not a file.`, 'Name a job file.');
  const before = d.readFileSync(file);
  const text = textOf(before, file);
  if (typeof text !== 'string') return text;
  const answer = change(text);
  if ('stop' in answer) return { ok: true, stopped: answer.stop, text };
  if (answer.text === text) return { ok: true, changed: false, text };
  if (!answer.text.isWellFormed()) {
    return saveFail(
      'not-text',
      'The text holds half a character.',
      'Type it again without that character.',
    );
  }
  const after = Buffer.from(answer.text);
  const still = () => isOurs(d, lock) && d.readFileSync(file).equals(before);
  // The owner's own write protection is heeded, which a rename would walk past.
  if ((stat.mode & 0o222) === 0)
    throw Object.assign(new Error('write-protected'), { code: 'EACCES' });
  const renamed =
    side.beside && stat.nlink === 1
      ? await replace(d, file, side, stat, after, still, options.renameTries ?? RENAME_TRIES)
      : 'refused';
  const done =
    renamed === 'refused' ? writeInPlace(d, file, side, before, after, still) : renamed === 'done';
  return done ? { ok: true, changed: true, text: answer.text } : 'again';
}

/** `refused`: the folder cannot be written though ours in it can, or owner and group could not be kept. */
async function replace(
  d: Disk,
  file: string,
  side: Side,
  stat: { mode: number; uid: number; gid: number },
  after: Uint8Array,
  still: () => boolean,
  tries: number,
): Promise<Renamed> {
  const temp = tempName(side);
  let renamed: Renamed = 'refused';
  try {
    if (prepare(d, temp, after, stat)) renamed = await renameOver(d, temp, file, tries, still);
    return renamed;
  } finally {
    if (renamed !== 'done') drop(d, temp);
  }
}

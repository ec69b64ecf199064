/** Saving a job file so that no mark that was shown is ever lost: see `saveFile`. */
import { lstatSync, realpathSync } from 'node:fs';
import { basename } from 'node:path';
import { quoted } from '../../model/safe.ts';
import type { Change, Saved, SaveOptions } from './change.ts';
import { disk } from './disk.ts';
import { failOf, type SaveFail, saveFail } from './fail.ts';
import { hold } from './hold.ts';
import { PATIENCE } from './lock.ts';
import { saveOnce } from './once.ts';
import { openSide } from './side.ts';

/** Tries against somebody who writes the file at the same time without the lock (an editor). */
const TRIES = 20;
/** Longest wait for another program that is in the middle of saving, and the pause between two looks, ms. */
const SAVING = 3000;
const LOOK = 60;

/** Elsewhere the two answer differently where letters or drives have two spellings. */
const realOf = process.platform === 'linux' ? realpathSync.native : realpathSync;

/** Saves of this process on one file wait for each other here: a process does not wait for its own lock. */
const queue = new Map<string, Promise<unknown>>();

/**
 * Reads the file under its lock, asks `change` for the new text, and puts it on disk: written beside, synced,
 * renamed, folder synced, with mode, owner, access list and attributes kept, a symbolic link still a link; written
 * in place, behind a journal, where a rename would lose one of these or part hard links. `ok` with `changed` means
 * it is on disk.
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
    file = realOf(path);
    if (options.real !== undefined && leadsAway(path, file, options.real)) return elsewhere(path);
  } catch (error) {
    return failOf(error, path);
  }
  const before = queue.get(file);
  const saving = (async () => {
    await before;
    return saveHeld(file, change, options);
  })();
  const done = saving.catch(() => undefined);
  queue.set(file, done);
  try {
    return await saving;
  } finally {
    if (queue.get(file) === done) queue.delete(file);
  }
}

/** Whether a path that led to `real` has become a link to another file: `now`. */
export function leadsAway(path: string, now: string, real: string): boolean {
  return now !== real && lstatSync(path).isSymbolicLink();
}

export function elsewhere(path: string): SaveFail {
  return saveFail(
    'elsewhere',
    `${basename(path)} is a link to another file now.`,
    'Open that one by its own path, if it is the one you mean.',
  );
}

async function saveHeld<T>(
  file: string,
  change: Change<T>,
  options: SaveOptions,
): Promise<Saved<T>> {
  const d = options.disk ?? disk;
  const begun = performance.now();
  try {
    for (let n = 0; n < TRIES; n++) {
      const side = openSide(d, file, options.state);
      const held = await hold(d, file, side, options.patience ?? PATIENCE, options.state);
      if (held === 'again') continue;
      if ('ok' in held) return held;
      let waits = false;
      try {
        const saved = await saveOnce(d, file, side, held, change, options);
        if (saved === 'waits') waits = true;
        else if (saved !== 'again') return saved;
      } finally {
        held.release();
      }
      if (!waits) continue;
      if (performance.now() - begun >= (options.saving ?? SAVING)) return beingSaved(file);
      await new Promise((done) => setTimeout(done, LOOK));
      // It was only looked at.
      n = -1;
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

export function beingSaved(file: string): SaveFail {
  return saveFail(
    'waits',
    `${basename(file)} is being saved by another program, or was cut short.`,
    `Nothing is written into it until it is whole. Was it edited by hand? putback check ${quoted(basename(file))} says the line.`,
  );
}

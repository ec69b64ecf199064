/** The folders of a camera, looked through when a job opens: whether there is anything new for it. It notes nothing. */
import { lstatSync } from 'node:fs';
import { resolve } from 'node:path';
import { setImmediate as breath } from 'node:timers/promises';
import { secondsOf } from '../../model/time.ts';
import type { Job } from '../../model/types.ts';
import { many } from '../../model/words.ts';
import { atHand, handled } from '../../plan/photos/at-hand.ts';
import { sayShot, takenAt } from '../../plan/photos/photo-time.ts';
import { readCamera } from './camera.ts';
import { picturesIn } from './photo-files.ts';

/** The same picture under whatever folder: its name and when it was taken. */
export function sameAs(path: string, taken: string | undefined): string {
  return `${path.split(/[\\/]/).at(-1) ?? ''} ${taken === undefined ? '' : secondsOf(taken)}`;
}

/** Of the pictures of a job, to be known again. */
export function notedOnes({ entries }: Pick<Job, 'entries'>): Set<string> {
  return new Set(entries.flatMap((e) => (e.verb === 'photo' ? [sameAs(e.value, e.shot)] : [])));
}

/** More than so many are not looked into while somebody waits at the screens; `photo` does. */
const MOST = 1000;
/** ms. A picture that was written so long before the first mark is of another time. */
const BEFORE = 24 * 3600 * 1000;

/**
 * One quiet line where pictures lie there that were taken while a piece of this job was at hand and are not noted; null:
 * none. `folders` are taken from `root`. Others have their turn between two pictures. Never rejects.
 */
export async function newPhotosSaid(
  job: Job,
  folders: readonly string[],
  root: string,
  now: string,
): Promise<string | null> {
  const marks = handled(job);
  const [first] = marks;
  if (!first) return null;
  const known = notedOnes(job);
  const since = secondsOf(job.entries[0]?.at ?? '') * 1000 - BEFORE;
  let count = 0;
  const paths = folders.flatMap((folder) => picturesIn(resolve(root, folder))).slice(0, MOST);
  for (const path of paths) {
    await breath();
    try {
      if (lstatSync(path).mtimeMs < since) continue;
      const { clock, offset } = readCamera(path);
      const taken = clock === null ? null : takenAt(clock, offset, 0, job, now);
      if (taken === null || known.has(sameAs(path, sayShot(taken)))) continue;
      if (atHand(marks, taken.seconds).candidates.length > 0) count += 1;
    } catch {
      // What cannot be read here is told by the command, which is asked for it.
    }
  }
  if (count === 0) return null;
  return `${many(count, 'new photograph')} of this job in the camera’s folder: putback photo notes ${count === 1 ? 'it' : 'them'}.`;
}

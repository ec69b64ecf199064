/** Finds lines over several benches: the folder one is in, and those of the user's settings. */
import { realpathSync } from 'node:fs';
import { join } from 'node:path';
import { errorCode } from '../../job/save/disk.ts';
import { failOf } from '../../job/save/fail.ts';
import { bestFirst, type Held, type Question } from '../question.ts';
import { type Answers, findIn } from './find.ts';

export interface Overall extends Answers {
  held: Held[];
}

/**
 * Best first. Files of `here` are named as in that folder, others by their whole path; a folder that cannot be
 * read is told.
 */
export function findOver(
  here: string,
  others: readonly string[],
  ask: Question,
  progress: (folder: string, done: number, of: number) => void,
): Overall {
  const held: Held[] = [];
  const unread: string[] = [];
  const seen = new Set<string>();
  for (const folder of [here, ...others]) {
    try {
      const real = realpathSync(folder);
      if (seen.has(real)) continue;
      seen.add(real);
      const found = findIn(folder, ask, ({ done, of }) => progress(folder, done, of));
      const named = (file: string) => (folder === here ? file : join(folder, file));
      for (const h of found.held) held.push({ ...h, file: named(h.file) });
      unread.push(...found.unread);
    } catch (error) {
      if (errorCode(error) === null) throw error;
      unread.push(failOf(error, folder, 'read').say);
    }
  }
  return { held: held.sort(bestFirst), unread };
}

/** What comes next, and the row of the job that it is about. */

import { inWords, type Words } from '../../job/truth/said.ts';
import type { Job } from '../../model/types.ts';
import { taskName } from '../ladder-names.ts';
import { atTime } from '../time/at-time.ts';
import { nextInWords } from './next-on-job.ts';
import { toldNow } from './waits-for.ts';

export interface NextNow {
  rung: string;
  say: string;
  /** The same in parts: what is printed and not so is struck. */
  words: Words;
}

/** Null where nothing is left that anybody could do. */
export function nextNow(job: Job, now: string): NextNow | null {
  return atTime(job, now, 'next', () => {
    const next = nextInWords(job, toldNow(job, now));
    if (next === null) return null;
    const rung = next.task === null ? (next.piece ?? '') : taskName(next.task);
    return { rung, say: inWords(next.words), words: next.words };
  });
}

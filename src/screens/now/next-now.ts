/** What comes next, and the row of the job that it is about. */
import type { Job } from '../../model/types.ts';
import { nextOnJob } from '../../plan/next-on-job.ts';
import { taskName } from './ladder-names.ts';
import { atTime } from './plan-now.ts';
import { toldNow } from './waits-for.ts';

export interface NextNow {
  rung: string;
  say: string;
}

/** Null where nothing is left that anybody could do. */
export function nextNow(job: Job, now: string): NextNow | null {
  return atTime(job, now, 'next', () => {
    const next = nextOnJob(job, toldNow(job, now));
    if (next === null) return null;
    return { rung: next.task === null ? (next.piece ?? '') : taskName(next.task), say: next.say };
  });
}

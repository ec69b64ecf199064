/** What comes next, as far as the whole job lets it: a piece that waits for a part or a task is not the next thing. */
import type { Job } from '../../job/types.ts';
import { nextWork } from '../../plan/next.ts';
import { taskName } from './ladder-names.ts';
import { atTime, planNow } from './plan-now.ts';
import { waitsFor } from './waits-for.ts';

export interface NextNow {
  /** The row of the job that it is about. */
  rung: string;
  say: string;
}

/** Null where nothing is left that anybody could do. */
export function nextNow(job: Job, now: string): NextNow | null {
  return atTime(job, now, 'next', () => find(job, now));
}

function find(job: Job, now: string): NextNow | null {
  const step = nextWork(job);
  const waits = step && isStillOff(job, step.piece) ? waitsFor(job, `${step.piece} on`, now) : '';
  if (step && waits === '') return { rung: step.piece, say: step.say };
  const task = planNow(job, now).canDo.find((c) => job.tasks.has(c.step));
  if (task) return { rung: taskName(task.step), say: task.say };
  if (!step) return null;
  const name = job.pieces.get(step.piece)?.spec.name ?? step.piece;
  return { rung: step.piece, say: `${name} waits for ${waits}.` };
}

/** Nothing of it went back yet. */
function isStillOff(job: Job, key: string): boolean {
  return job.pieces.get(key)?.where === 'open';
}

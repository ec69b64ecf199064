/** A step, or what else holds one, as one says it: `Alternator cover on` for `alternator on`, the words of a task for its name. */
import type { Job } from '../../job/types.ts';

export function sayStepName(job: Job, step: string): string {
  const task = job.tasks.get(step);
  if (task) return task.spec.say;
  // What else may be waited for, a thing left inside or a distance, stands as it is.
  const [, key = '', way = ''] = /^(\S+)( off| on|)$/.exec(step) ?? [];
  const piece = job.pieces.get(key);
  return piece ? `${piece.spec.name}${way}` : step;
}

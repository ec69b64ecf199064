/** A step as one says it: `Alternator cover on` for `alternator on`, the words of a task for its name. */
import type { Job } from '../../job/types.ts';

export function sayStepName(job: Job, step: string): string {
  const task = job.tasks.get(step);
  if (task) return task.spec.say;
  const [key = '', way] = step.split(' ');
  const name = job.pieces.get(key)?.spec.name ?? key;
  return way === undefined ? name : `${name} ${way}`;
}

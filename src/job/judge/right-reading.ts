/** A figure that was given where a reason was asked for is the reading: what is asked next is about that one. */
import type { Job, Wish } from '../../model/types.ts';
import { rightCounter } from './person/take.ts';
import { rightDone } from './tasks/done.ts';
import { rightLook } from './tasks/trace.ts';

/** The wish with that figure as its reading, and without a reason; as it was, where its reason is one. */
export function withRightReading(job: Job, wish: Wish): Wish {
  return rightOf(job, wish)?.wish ?? wish;
}

function rightOf(job: Job, wish: Wish): { wish: Wish } | null {
  if (wish.do === 'reading') return rightCounter(wish);
  if (wish.do === 'done') {
    const task = job.tasks.get(wish.task);
    return task ? rightDone(task.spec, wish) : null;
  }
  const check = wish.do === 'look' ? job.upper.checks.get(wish.check) : undefined;
  // Nothing is written here: no time and no id are needed.
  return wish.do === 'look' && check ? rightLook(job, check, wish, { at: '', id: '' }) : null;
}

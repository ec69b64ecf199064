/** May this task be noted as done? Out of its turn it is told, never refused. */

import type { Edit, Job, NewTask, Verdict } from '../../model/types.ts';
import { NAME } from '../diary/entry.ts';
import { already, list, meant, type Stamp, type Wished, write, wrong } from './parts.ts';

export function judgeDone(job: Job, wish: Wished<'done'>, stamp: Stamp): Verdict {
  const { task: key } = wish;
  const task = job.tasks.get(key);
  if (!task && wish.add && NAME.test(key)) return newTask(wish, wish.add, stamp);
  if (!task) {
    const say = `No task ${key} in this job.${meant(key, job.tasks.keys())}`;
    return wrong('no-such-task', say, { task: key });
  }
  const value = doneWord(wish.result);
  const same =
    task.done === value &&
    (wish.was ?? task.was) === task.was &&
    (wish.set ?? task.set) === task.set &&
    (wish.result ?? task.result) === task.result;
  if (same) return already();
  const early = task.spec.after.filter((step) => !stepDone(job, step));
  const warnings =
    early.length === 0 ? [] : [{ code: 'early', say: `Before this comes ${list(early)}.` }];
  const what = { verb: 'done', value, task: key, ...beside(wish) } as const;
  return write(stamp, wish, what, { warnings });
}

/** A task that the file does not have yet is written into it with its first mark. */
function newTask(wish: Wished<'done'>, { verb, say, after }: NewTask, stamp: Stamp): Verdict {
  const edit: Edit = {
    edit: 'named',
    section: 'tasks',
    key: wish.task,
    fields: { [verb]: say, after },
  };
  const value = doneWord(wish.result);
  const what = { verb: 'done', value, task: wish.task, ...beside(wish) } as const;
  return write(stamp, wish, what, { edits: [edit] });
}

function doneWord(result: string | undefined): string {
  return result !== undefined && /^(passed|failed)$/.test(result) ? result : 'done';
}

function beside({ was, set, result }: Wished<'done'>) {
  return {
    ...(was === undefined ? {} : { was }),
    ...(set === undefined ? {} : { set }),
    ...(result === undefined ? {} : { result }),
  };
}

/**
 * Whether a step is done: `alternator off`, `alternator on`, `drain`. What the job does not know, and a wait that
 * runs by itself, is not waited for.
 */
export function stepDone(job: Job, step: string): boolean {
  const [key = '', way] = step.split(' ');
  if (way === undefined) {
    const task = job.tasks.get(key);
    return !task || task.spec.verb === 'wait' || (task.done !== null && task.done !== 'failed');
  }
  const piece = job.pieces.get(key);
  if (!piece) return true;
  if (way === 'off') return piece.away !== 'no' || piece.where === 'open' || piece.fitted;
  if (piece.holes.length === 0) return piece.fitted;
  return piece.where === 'tight' || piece.where === 'tested';
}

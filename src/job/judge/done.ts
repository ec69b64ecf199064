/** May this task be noted as done? Out of its turn it is told, never refused; out of limit it is. */

import { holdAgainst, looksLikeLimit, readLimit } from '../../bolt/reading.ts';
import type { Edit, Job, NewTask, TaskSpec, Verdict, Warning } from '../../model/types.ts';
import { NAME } from '../diary/entry.ts';
import { already, list, meant, refuse, type Stamp, type Wished, write, wrong } from './parts.ts';

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
  const held = heldAgainst(task.spec, wish);
  const failed = value === 'failed';
  if (held?.refuse && !failed && wish.because === undefined) {
    const { code, say } = held.refuse;
    return refuse(code, say, { limit: held.limit });
  }
  const early = task.spec.after.filter((step) => !stepDone(job, step));
  const warnings = [
    ...(early.length === 0 ? [] : [{ code: 'early', say: `Before this comes ${list(early)}.` }]),
    ...(held?.warn && !failed ? [held.warn] : []),
  ];
  const judged = held ? { limit: held.limit, judged: held.judged } : {};
  const advised = wish.advised === undefined ? {} : { advised: wish.advised };
  const what = { verb: 'done', value, task: key, ...beside(wish), ...judged, ...advised } as const;
  return write(stamp, wish, what, { warnings });
}

export interface HeldAgainst {
  /** As the file has it. */
  limit: string;
  /** `within`, `beyond`: as the figures say; `by hand`: the program could not tell. */
  judged: 'within' | 'beyond' | 'by hand';
  refuse?: { code: string; say: string };
  warn?: Warning;
}

/** What was measured, held against the limit of the file; null where that is no figure. */
function heldAgainst({ limit, verb }: TaskSpec, wish: Wished<'done'>): HeldAgainst | null {
  if (limit === null || !looksLikeLimit(limit)) return null;
  const read = readLimit(limit);
  const hand = { limit, judged: 'by hand' } as const;
  if (!read) {
    const say = `The limit “${limit}” was not read whole: hold the reading against it yourself.`;
    return { ...hand, warn: { code: 'unread-limit', say } };
  }
  const { set, result, says } = wish;
  const word = result === undefined || result === 'passed' || result === 'failed';
  // Beside what was set, the result is words.
  const said = set !== undefined ? [set] : word ? [] : [result];
  // A word beside a test may be its reading, or any other.
  const spoken = says !== undefined && verb === 'test' ? holdAgainst(says, read) : null;
  const all = said.map((text) => holdAgainst(text, read));
  if (spoken && spoken.is !== 'unread') all.push(spoken);
  const beyond = all.find((held) => held.is === 'beyond');
  if (beyond) {
    const say = `${beyond.say}.`;
    return { limit, judged: 'beyond', refuse: { code: 'out-of-limit', say } };
  }
  const unread = all.find((held) => held.is === 'unread');
  if (unread) {
    const say = `${unread.say}. Give the figure.`;
    return { ...hand, refuse: { code: 'unread-reading', say } };
  }
  if (all.length > 0) return { limit, judged: 'within' };
  const say = `Nothing measured to hold against ${limit}.`;
  return { ...hand, warn: { code: 'no-reading', say } };
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

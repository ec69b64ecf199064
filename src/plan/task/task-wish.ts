/** A mark about a task; a test that follows from what was disturbed is written into the file with it. */
import type { Wish } from '../../model/types.ts';
import { type Result, readResult } from '../typed/result.ts';
import type { TaskHere } from './task-now.ts';

export function doneWish(now: TaskHere, result: Result): Extract<Wish, { do: 'done' }> {
  const piece = now.test?.pieces[0];
  const add =
    now.listed || piece === undefined
      ? {}
      : { add: { verb: 'test' as const, say: now.say, after: `${piece} on` } };
  return { do: 'done', task: now.key, ...result, ...add };
}

/** What was typed about it, as a mark. */
export function resultWish(now: TaskHere, how: 'done' | 'failed', text: string): Wish {
  const says = text === '' ? {} : { says: text };
  if (how === 'failed') return { ...doneWish(now, { result: 'failed' }), ...says };
  if (now.verb === 'test') return { ...doneWish(now, { result: 'passed' }), ...says };
  return doneWish(now, readResult(text));
}

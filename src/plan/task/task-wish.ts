/** A mark about a task; a test that follows from what was disturbed is written into the file with it. */
import { looksLikeLimit, readLimit } from '../../bolt/read/reading-limit.ts';
import { readTestWord } from '../../model/test-word.ts';
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

/** What was typed about it, as a mark; null of a test where neither a word nor a reading says whether it passed. */
export function resultWish(now: TaskHere, how: 'done' | 'failed', text: string): Wish | null {
  const says = text === '' ? {} : { says: text };
  if (how === 'failed') return { ...doneWish(now, { result: 'failed' }), ...says };
  if (now.verb === 'test') {
    const word = readTestWord(text);
    const more = word?.says == null ? {} : { says: word.says };
    if (word) return { ...doneWish(now, { result: word.is }), ...more };
    return isJudged(now) ? { ...doneWish(now, { result: 'passed' }), ...says } : null;
  }
  return doneWish(now, readResult(text));
}

/** Its limit tells of a reading whether it is kept. */
export const isJudged = ({ limit }: TaskHere): boolean =>
  limit !== null && looksLikeLimit(limit) && readLimit(limit) !== null;

/** What was typed where a reason is asked for, and is none. */
import type { Refusal, Wish } from '../../model/types.ts';
import { readResult } from '../../plan/typed/result.ts';

/** Refusals of a reading: a figure is the answer as well as a reason is. */
const OF_READINGS: readonly string[] = [
  'out-of-limit',
  'no-reading',
  'unread-reading',
  'unread-limit',
  'against-limit',
  'runs-back',
];

export const isOfReading = ({ code }: Refusal): boolean => OF_READINGS.includes(code);

/** `was 35, set 14.5` is what was measured and no reason, as in the question that was answered before this one. */
export function measuredAnew(wish: Wish, refused: Refusal, text: string): Wish | null {
  if (wish.do !== 'done' || !isOfReading(refused)) return null;
  const { was, set } = readResult(text);
  if (was === undefined && set === undefined) return null;
  const { was: _, set: __, result: ___, because: ____, ...rest } = wish;
  return { ...rest, ...readResult(text) };
}

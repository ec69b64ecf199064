/** Whether a piece written under, along or across others would make them wait for each other. */

import type { Upper, Writable } from '../../../model/types.ts';
import { oversOf } from '../../fold/overs.ts';

/** The circle that this would close, each off before the next; null when there is none. */
export function circleBy(
  upper: Upper,
  piece: string,
  key: Writable,
  other: string,
): string[] | null {
  const next = new Map<string, Set<string>>();
  const add = (first: string, then: string): void => {
    next.set(first, (next.get(first) ?? new Set()).add(then));
  };
  for (const [below, overs] of oversOf([...upper.pieces.values()])) {
    for (const over of overs) add(over, below);
  }
  const [first, then] = key === 'bridges' ? [piece, other] : [other, piece];
  const back = way(next, then, first);
  return back && [...back, then];
}

/** A shortest way from one piece to another; null when there is none. */
function way(
  next: ReadonlyMap<string, ReadonlySet<string>>,
  from: string,
  to: string,
): string[] | null {
  const before = new Map<string, string | null>([[from, null]]);
  for (const key of before.keys()) {
    if (key === to) break;
    for (const then of next.get(key) ?? []) if (!before.has(then)) before.set(then, key);
  }
  if (!before.has(to)) return null;
  const found: string[] = [];
  for (let key: string | null = to; key !== null; key = before.get(key) ?? null) found.unshift(key);
  return found;
}

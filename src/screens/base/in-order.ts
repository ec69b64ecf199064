/** Rows of a list keep their places while one is in it, whatever becomes of them. */
import type { View } from './state.ts';

/** Those that stood there first, in that order; what is new behind what it follows now. */
export function inOrder<T>(
  { order }: View,
  rows: readonly T[],
  nameOf: (row: T) => string,
): readonly T[] {
  if (order === undefined) return rows;
  const place = new Map(order.map((name, i) => [name, i]));
  const known = rows.filter((row) => place.has(nameOf(row)));
  const placed = known.toSorted(
    (a, b) => (place.get(nameOf(a)) ?? 0) - (place.get(nameOf(b)) ?? 0),
  );
  for (const [i, row] of rows.entries()) {
    if (place.has(nameOf(row))) continue;
    const before = rows[i - 1];
    placed.splice(before === undefined ? 0 : placed.indexOf(before) + 1, 0, row);
  }
  return placed;
}

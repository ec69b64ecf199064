/** Counts and lists as one says them. */
import type { RowItem } from '../../model/types.ts';

export { sayItem, sayUnder } from '../../job/fold/say-hole.ts';
export { capital, list, many } from '../../model/words.ts';

/** Kinds counted: `6 S, 1 M, 1 L`, in the order in which they first come. */
export function sayCounts(items: readonly (RowItem | null)[]): string {
  const counts = new Map<string, number>();
  for (const item of items) {
    const letter = item === null ? 'unknown' : item.kind;
    counts.set(letter, (counts.get(letter) ?? 0) + 1);
  }
  return [...counts].map(([letter, n]) => `${n} ${letter}`).join(', ');
}

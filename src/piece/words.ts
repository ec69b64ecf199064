import type { RowItem } from '../model/types.ts';
import { many } from '../model/words.ts';
import { UNKNOWN } from './row.ts';

/** Letters as one sorts them, the same on every machine. */
export function byLetter(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** `1st`, `2nd`, `3rd`, `4th`, `11th`. */
export function ordinal(n: number): string {
  const teen = n % 100 > 10 && n % 100 < 14;
  const end = teen ? 'th' : (['th', 'st', 'nd', 'rd'][n % 10] ?? 'th');
  return `${n}${end}`;
}

/** Kinds counted, and what lies under their heads: `6 S, 1 M; under the heads 1 clip`, in the order in which they first come. */
export function sayCounts(items: readonly (RowItem | null)[]): string {
  const named = items.flatMap((item) =>
    item === null || item.kind === UNKNOWN ? [] : [item.kind],
  );
  const others = items.length - named.length;
  const said = [
    ...(named.length > 0 ? [counted(named)] : []),
    ...(others > 0 ? [`${many(others, 'bolt')} that nobody has named`] : []),
  ].join(', ');
  const under = sayUnderHeads(items);
  return under === null ? said : `${said}; ${under}`;
}

/** `under the heads 1 clip, 2 copper washer`; null where nothing lies there. */
export function sayUnderHeads(items: readonly (RowItem | null)[]): string | null {
  const words = items.flatMap((item) => item?.with ?? []).map((word) => word.replace(/-+/g, ' '));
  return words.length === 0 ? null : `under the heads ${counted(words)}`;
}

function counted(words: readonly string[]): string {
  const counts = Map.groupBy(words, (word) => word);
  return [...counts].map(([word, all]) => `${all.length} ${word}`).join(', ');
}

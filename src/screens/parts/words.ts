/** Counts and lists as one says them. */
import type { RowItem } from '../../job/types.ts';

/** `1 bolt`, `4 bolts`. */
export function many(n: number, one: string, more = `${one}s`): string {
  return `${n} ${n === 1 ? one : more}`;
}

/** With a large first letter. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** `1`, `1 and 2`, `1, 2 and 3`. */
export function list(words: readonly string[]): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

/** `1st`, `2nd`, `3rd`, `4th`, `11th`. */
export function ordinal(n: number): string {
  const teen = n % 100 > 10 && n % 100 < 14;
  const end = teen ? 'th' : (['th', 'st', 'nd', 'rd'][n % 10] ?? 'th');
  return `${n}${end}`;
}

/** `M clip`, `S copper washer`: the kind and what lies under its head. */
export function sayItem(item: RowItem): string {
  return [item.kind, ...item.with.map(sayUnder)].join(' ');
}

/** `copper washer` for `copper-washer`. */
export function sayUnder(word: string): string {
  return word.replace(/-+/g, ' ');
}

/** Kinds counted: `6 S, 1 M, 1 L`, in the order in which they first come. */
export function sayCounts(items: readonly (RowItem | null)[]): string {
  const counts = new Map<string, number>();
  for (const item of items) {
    const letter = item === null ? 'unknown' : item.kind;
    counts.set(letter, (counts.get(letter) ?? 0) + 1);
  }
  return [...counts].map(([letter, n]) => `${n} ${letter}`).join(', ');
}

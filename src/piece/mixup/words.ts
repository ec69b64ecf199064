/** Counts and kinds in words. */
import { printNumber } from '../../bolt/numbers.ts';
import type { Kind } from '../../model/types.ts';
import type { Counts } from './types.ts';

/** `S, M and L`. */
export function list(words: readonly string[], joined = 'and'): string {
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} ${joined} ${last}`;
}

/** `12.5 mm`. */
export function mm(value: number): string {
  return `${printNumber(value, 3)} mm`;
}

/** `S (25 mm)`; the letter alone where the length is not known. */
export function sayKind(letter: string, kinds: ReadonlyMap<string, Kind>): string {
  const length = kinds.get(letter)?.length ?? null;
  return length === null ? letter : `${letter} (${printNumber(length)} mm)`;
}

/** `7 S (25 mm), 3 M (35 mm) and 1 L (55 mm)`. */
export function sayCounts(counts: Counts, kinds: ReadonlyMap<string, Kind>): string {
  return list(Object.entries(counts).map(([letter, n]) => `${n} ${sayKind(letter, kinds)}`));
}

/** `1 bolt`, `3 bolts`. */
export function bolts(n: number): string {
  return n === 1 ? '1 bolt' : `${n} bolts`;
}

/** Letters as one sorts them, the same on every machine. */
export function byLetter(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

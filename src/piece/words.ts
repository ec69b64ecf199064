/** Lengths, places and letters in words. */
import { printNumber } from '../bolt/read/numbers.ts';

/** `12.5 mm`. */
export function mm(value: number): string {
  return `${printNumber(value, 3)} mm`;
}

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

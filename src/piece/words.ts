/** Lengths and letters in words. */
import { printNumber } from '../bolt/read/numbers.ts';

/** `12.5 mm`. */
export function mm(value: number): string {
  return `${printNumber(value, 3)} mm`;
}

/** Letters as one sorts them, the same on every machine. */
export function byLetter(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

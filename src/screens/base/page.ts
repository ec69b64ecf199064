/** How every screen is laid out: a head, the piece in the middle, what the hand should do, the keys. */
import type { Line } from '../kit/text.ts';
import type { State } from './state.ts';

export interface Page {
  /** What this is about. */
  left: Line;
  /** Where it stands. */
  right?: Line;
  /** A second line at the right, under the first. */
  under?: Line;
  /** Fills what is left in the middle; lines that do not fit are not shown. */
  middle: (columns: number, rows: number) => readonly Line[];
  /** One thing at a time, under the middle; at most six lines, or `most` where the screen is high enough. */
  say?: readonly Line[];
  most?: number;
  /** Where the cursor of a field is: a line of `say` or of the middle, and its column. */
  cursor?: { part: 'say' | 'middle'; line: number; column: number };
}

/** Lines under the middle, quiet ones among them: the middle stays where it is whatever is said. */
export const SAY = 6;
/** Head, its second line, and the foot. */
export const AROUND = 3;

/** Rows that the middle has. */
export function middleRows(rows: number): number {
  return Math.max(1, rows - SAY - AROUND);
}

/** Below this nothing sensible can be shown. */
export const LEAST = { columns: 60, rows: 16 } as const;

export function isTooSmall(state: State): boolean {
  return state.columns < LEAST.columns || state.rows < LEAST.rows;
}

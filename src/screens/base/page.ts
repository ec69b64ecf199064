/** What a screen shows: a head, the middle, what the hand should do. How it is laid on the rows is in lay.ts. */
import type { Line } from '../kit/text.ts';
import type { State } from './state.ts';

interface Around {
  /** What this is about. */
  left: Line;
  /** Where it stands. */
  right?: Line;
  /** A second line at the right, under the first. */
  under?: Line;
  /** Lines of the middle that stay at its top, whatever is moved. */
  above?: readonly Line[];
  /** Lines that stay right under the middle: a text that is typed. */
  below?: readonly Line[];
  /** What to do, under the middle: six lines, or `most` where the screen is high enough. */
  say?: readonly Line[];
  most?: number;
  /** The middle in words, where it is a picture: for who has the screen read out. */
  spoken?: () => readonly Line[];
  /** Where the cursor of a field is: one of the lines above, and a column of it. */
  cursor?: { line: Line; column: number };
}

/** A text: Up and Down move it where it does not fit. */
interface Text extends Around {
  kind: 'page';
  middle: (columns: number, rows: number) => readonly Line[];
}

/** Rows of which one is marked: Up and Down mark another, and the marked one stays in sight. */
interface List extends Around {
  kind: 'list';
  middle: (columns: number) => readonly ListLine[];
  /** Where not all rows are in sight, the head says how many there are. */
  counted?: true;
}

/** A picture, a question, a frame: laid out for the room there is. What does not fit moves as a text does. */
interface Plain extends Around {
  kind: 'plain';
  middle: (columns: number, rows: number) => readonly Line[];
}

export type Page = Text | List | Plain;

export interface ListLine {
  line: Line;
  /** Its row, counted from 0; null for what stands between rows. */
  row: number | null;
  marked: boolean;
}

/** The lines of one row of a list. */
export function listLines(lines: readonly Line[], row: number, marked: boolean): ListLine[] {
  return lines.map((line) => ({ line, row, marked }));
}

/** Where nothing can be shown. */
export const EMPTY_PAGE: Page = { kind: 'plain', left: [], middle: () => [] };

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

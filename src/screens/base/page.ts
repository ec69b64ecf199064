/** How every screen is laid out: a head, the piece in the middle, what the hand should do, the keys. */

import { cut, hanging, type Line, line, pad, spread } from '../kit/text.ts';
import { foot } from '../show/foot.ts';
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

export interface Picture {
  /** Exactly as many as the screen has rows, none wider than its columns. */
  lines: Line[];
  cursor: { x: number; y: number } | null;
}

/** Lines under the middle, quiet ones among them: the middle stays where it is whatever is said. */
const SAY = 6;
/** Head, its second line, and the foot. */
const AROUND = 3;
/** Lines of something said quietly. */
const QUIET = 3;

/** Rows that the middle has. */
export function middleRows(rows: number): number {
  return Math.max(1, rows - SAY - AROUND);
}

/** Rows from which more may be said than six lines. */
const HIGH = 22;

/** Rows under the middle. What is said in more lines takes them from the middle where there are enough. */
function sayRows({ say = [], most = SAY }: Page, rows: number): number {
  return rows < HIGH ? SAY : Math.max(SAY, Math.min(most, say.length));
}

/** Below this nothing sensible can be shown. */
export const LEAST = { columns: 60, rows: 16 } as const;

export function isTooSmall(state: State): boolean {
  return state.columns < LEAST.columns || state.rows < LEAST.rows;
}

export function layPage(state: State, page: Page): Picture {
  const { columns, rows } = state;
  const quiet = hanging(line('- '), state.quiet ?? '', columns).slice(0, QUIET);
  // Where nothing is said under it, the middle goes down to the quiet line.
  const below = page.say ? sayRows(page, rows) - quiet.length : 0;
  const room = Math.max(1, rows - AROUND - quiet.length - below);
  const middle = page.middle(columns, room).slice(0, room);
  const said = fill(shortened(page.say ?? [], below), below);
  const lines: Line[] = [
    spread(page.left, page.right ?? [], columns),
    spread([], page.under ?? [], columns),
    ...fill(middle, room),
    ...said,
    ...quiet,
    foot(state, columns),
  ].map((l) => pad(cut(l, columns), columns));
  return { lines, cursor: cursorOf(page, columns, room) };
}

/** Nothing is left out without a word: a quiet line goes with the next press, a low screen can be made higher. */
function shortened(lines: readonly Line[], rows: number): readonly Line[] {
  if (lines.length <= rows) return lines;
  const room = Math.max(0, rows - 1);
  return [...lines.slice(0, room), line(`(${lines.length - room} lines more)`)];
}

function fill(lines: readonly Line[], rows: number): Line[] {
  return Array.from({ length: rows }, (_, i) => lines[i] ?? []);
}

function cursorOf(page: Page, columns: number, room: number): Picture['cursor'] {
  if (!page.cursor) return null;
  const { part, line: at, column } = page.cursor;
  const y = 2 + (part === 'say' ? room + at : at);
  return { x: Math.min(column, columns - 1), y };
}

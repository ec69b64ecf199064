/** A page laid out on the rows of the screen. */
import { AROUND, type Page, SAY } from '../base/page.ts';
import type { State } from '../base/state.ts';
import { cut, hanging, type Line, line, pad, spread } from '../kit/text.ts';
import { foot } from './foot.ts';

export interface Picture {
  /** Exactly as many as the screen has rows, none wider than its columns. */
  lines: Line[];
  cursor: { x: number; y: number } | null;
}

/** Lines of something said quietly. */
const QUIET = 3;

/** Rows from which more may be said than six lines. */
const HIGH = 22;

/** Rows under the middle. What is said in more lines takes them from the middle where there are enough. */
function sayRows({ say = [], most = SAY }: Page, rows: number): number {
  return rows < HIGH ? SAY : Math.max(SAY, Math.min(most, say.length));
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

/**
 * A page laid out on the rows of the screen. Nothing is left out without a word: what does not fit is counted, and
 * is moved, the middle first and then what is said under it.
 */
import { countLine, type MovedBy, window } from '../kit/scroll.ts';
import { hanging, type Line, line, spread } from '../kit/text.ts';
import { AROUND, type ListLine, type Page, SAY } from './page.ts';
import type { State } from './state.ts';

/** One part of a page that may be longer than its room. */
interface Part {
  lines: readonly Line[];
  /** Lines that it can be moved by. */
  over: number;
  /** Lines of it in sight. */
  room: number;
}

export interface Laid {
  /** One for each row but the last, which is the foot. */
  lines: readonly Line[];
  cursor: { x: number; y: number } | null;
  /** By how much it is moved, and by how much it can be. */
  top: number;
  over: number;
  /** Where a step of a page's length leads to, down (1) or up (-1). */
  paged(by: 1 | -1): number;
}

/** Rows from which more may be said than six lines. */
const HIGH = 22;
/** Lines of something said quietly; on a high screen. */
const QUIET = 4;
const HIGH_QUIET = 8;
/** Lines that are left for what is said: one of them, and how many there are more. */
const LEAST_SAID = 2;

/** Rows under the middle. What is said in more lines takes them from the middle where there are enough. */
function sayRows({ say = [], most = SAY }: Page, rows: number): number {
  return rows < HIGH ? SAY : Math.max(SAY, Math.min(most, say.length));
}

/** `top`: by how many lines it was moved. */
export function layPage(state: State, page: Page, top: number, by: MovedBy): Laid {
  const { columns, rows } = state;
  const quiet = shortened(
    hanging(line('- '), state.quiet ?? '', columns),
    rows < HIGH ? QUIET : HIGH_QUIET,
  );
  const { above = [], below = [] } = page;
  // Where nothing is said under it, the middle goes down to the quiet line.
  const saying = page.say ? Math.max(LEAST_SAID, sayRows(page, rows) - quiet.length) : 0;
  const all = Math.max(1, rows - AROUND - quiet.length - saying);
  const room = Math.max(1, all - above.length - below.length);
  const middle = laidMiddle(page, columns, room, top, by);
  // In a list the arrows move the mark: what is said under it is moved by pages, and its count says so.
  const sayBy = page.kind === 'list' ? 'pages' : by;
  const said = moved(page.say ?? [], saying, Math.max(0, top - middle.over), sayBy);
  const lines: Line[] = [
    spread(page.left, page.right ?? [], columns),
    spread([], page.under ?? [], columns),
    ...filled([...above, ...middle.lines, ...below], all),
    ...filled(said.lines, saying),
    ...quiet,
  ];
  const over = middle.over + said.over;
  const now = Math.min(top, over);
  return {
    lines,
    cursor: cursorOf(page, lines, columns),
    top: now,
    over,
    paged: (by) => paged([middle, said], now, by),
  };
}

/** Rows that no page fills: read out, nothing has to fit. */
const ALL_ROWS = 10_000;

/** The whole page in the order in which it is read, one line after the other and none left out. */
export function readPage({ columns, quiet }: State, page: Page): readonly Line[] {
  const { left, right = [], under = [], above = [], below = [], say = [] } = page;
  const middle = page.spoken?.() ?? middleOf(page, columns);
  const said = quiet === null ? [] : [line(quiet)];
  const typed = page.cursor?.line;
  return [left, right, under, ...above, ...middle, ...below, ...say, ...said].map((l) =>
    l === typed ? l : markSaid(l),
  );
}

/** The mark before a row in words. */
export const MARKED = 'Marked: ';

function markSaid(row: Line): Line {
  const [mark, ...rest] = row;
  return mark?.text === '> ' ? line(MARKED, rest) : row;
}

function middleOf(page: Page, columns: number): readonly Line[] {
  if (page.kind !== 'list') return page.middle(columns, ALL_ROWS);
  return page.middle(columns).map((row) => row.line);
}

/** Not across the end of a part: what comes next would be passed unseen. */
function paged([middle, said]: readonly [Part, Part], top: number, by: 1 | -1): number {
  const inMiddle = by > 0 ? top < middle.over : top <= middle.over;
  const part = inMiddle ? middle : said;
  const [from, to] = inMiddle ? [0, middle.over] : [middle.over, middle.over + said.over];
  const step = Math.max(1, part.room - 1);
  return Math.max(from, Math.min(to, top + by * step));
}

function laidMiddle(page: Page, columns: number, room: number, top: number, by: MovedBy): Part {
  if (page.kind !== 'list') return moved(page.middle(columns, room), room, top, by);
  return listed(page.middle(columns), room, top, page.counted === true);
}

/** The lines from `top` on that fit; what is above and below is counted. */
function moved(lines: readonly Line[], rows: number, top: number, by: MovedBy): Part {
  if (lines.length <= rows) return { lines, over: 0, room: rows };
  const room = Math.max(1, rows - 1);
  const over = lines.length - room;
  const first = Math.min(top, over);
  const counted = countLine(first, over - first, by);
  return { lines: [...lines.slice(first, first + room), counted], over, room };
}

/** The rows around the marked one, as many as fit. One that is longer than the screen moves as a text does. */
function listed(all: readonly ListLine[], rows: number, top: number, counted: boolean): Part {
  const lines = all.map((l) => l.line);
  if (lines.length <= rows) return { lines, over: 0, room: rows };
  const marked = all.findIndex((l) => l.marked);
  const end = all.findLastIndex((l) => l.marked) + 1;
  const room = counted && end - marked <= rows ? rows : Math.max(1, rows - 1);
  const begin = end - marked > room ? marked : window(lines.length, room, marked);
  const over = Math.max(0, end - begin - room);
  const first = begin + Math.min(top, over);
  const shown = lines.slice(first, first + room);
  if (room === rows) return { lines: shown, over, room };
  const count =
    over > 0
      ? countLine(first - begin, over - (first - begin), 'pages')
      : countLine(rowsIn(all.slice(0, first)), rowsIn(all.slice(first + room)), 'arrows');
  return { lines: [...shown, count], over, room };
}

function rowsIn(lines: readonly ListLine[]): number {
  return new Set(lines.flatMap((l) => l.row ?? [])).size;
}

/** A quiet line goes with the next press: what of it does not fit is counted. */
function shortened(lines: readonly Line[], rows: number): readonly Line[] {
  if (lines.length <= rows) return lines;
  return [...lines.slice(0, rows - 1), line(`(${lines.length - rows + 1} lines more)`)];
}

function filled(lines: readonly Line[], rows: number): Line[] {
  return Array.from({ length: rows }, (_, i) => lines[i] ?? []);
}

function cursorOf({ cursor }: Page, lines: readonly Line[], columns: number): Laid['cursor'] {
  const y = cursor ? lines.indexOf(cursor.line) : -1;
  return cursor && y >= 0 ? { x: Math.min(cursor.column, columns - 1), y } : null;
}

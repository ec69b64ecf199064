/**
 * Holes drawn by walking round the piece: a mark goes from spot to spot of a field without edges, and each
 * hole stands on one spot. What it makes is the text of `map:`; only how the holes lie to each other counts.
 */
import { readMap } from './map.ts';
import { compareHoles } from './names.ts';

/** A spot of the field: `column` to the right, `row` down, whole numbers on both sides of 0. */
export interface DrawnSpot {
  column: number;
  row: number;
}

export interface Drawn extends DrawnSpot {
  name: string;
}

export interface Drawing {
  /** In the order in which they were put. */
  holes: readonly Drawn[];
  /** Where the finger is. */
  mark: DrawnSpot;
}

/**
 * Spots in sight from the start, on columns and rows from 0. Odd, so that 12 o'clock has a spot of its own;
 * a walk round all of its edge is 44 steps.
 */
export const FIELD = { columns: 15, rows: 9 } as const;
/** A picture grows up to this: more rows than 15 do not stand apart in the middle of 80 by 24. */
export const MOST = { columns: 21, rows: 15 } as const;

/** Nothing drawn, the finger at 12 o'clock. */
export const NOTHING_DRAWN: Drawing = {
  holes: [],
  mark: { column: (FIELD.columns - 1) / 2, row: 0 },
};

/** A picture as `map:` has it, in the middle of the field; words that are no holes are left out. */
export function drawingOf(text: string): Drawing {
  const { cells } = readMap(text);
  const box = boxOf(cells);
  if (box === null) return NOTHING_DRAWN;
  const right = Math.floor((FIELD.columns - box.columns) / 2) - box.column;
  const down = Math.floor((FIELD.rows - box.rows) / 2) - box.row;
  const holes = cells
    .map(({ name, column, row }) => ({ name, column: column + right, row: row + down }))
    .sort((a, b) => compareHoles(a.name, b.name));
  return { holes, mark: spotOf(holes[0] ?? NOTHING_DRAWN.mark) };
}

/** The text of `map:`: what was drawn and no row or column around it, words of one width. Empty: no hole. */
export function drawnText({ holes }: Drawing): string {
  const box = boxOf(holes);
  if (box === null) return '';
  const room = Math.max(...holes.map((h) => h.name.length));
  const rows = Array.from({ length: box.rows }, () => Array<string>(box.columns).fill('.'));
  for (const h of holes) rows[h.row - box.row]?.splice(h.column - box.column, 1, h.name);
  return rows
    .map((words) =>
      words
        .map((w) => w.padEnd(room))
        .join(' ')
        .trimEnd(),
    )
    .join('\n');
}

/** Whether the mark may stand there: the picture with this spot in it is no larger than it may be. */
export function canStand({ holes }: Drawing, spot: DrawnSpot): boolean {
  const box = boxOf(holes);
  if (box === null) {
    return isWithin({ column: 0, row: 0, ...FIELD }, spot);
  }
  const more = boxOf([...holes, spot]);
  const fits = more !== null && more.columns <= MOST.columns && more.rows <= MOST.rows;
  // A picture of the file may be larger already.
  return fits || isWithin(box, spot);
}

/** One step; null at the edge. */
export function walkHoles(drawing: Drawing, by: DrawnSpot): Drawing | null {
  const { column, row } = drawing.mark;
  const mark = { column: column + by.column, row: row + by.row };
  return canStand(drawing, mark) ? { ...drawing, mark } : null;
}

export function holeAt({ holes }: Drawing, spot: DrawnSpot): string | null {
  return holes.find((h) => isSame(h, spot))?.name ?? null;
}

/** This hole under the mark, where there is none yet. */
export function put(drawing: Drawing, name: string): Drawing {
  return { ...drawing, holes: [...drawing.holes, { name, ...drawing.mark }] };
}

/** The hole under the mark taken away, else the last one put; the mark stands where it was. Null: there is none. */
export function lift({ holes, mark }: Drawing): { drawing: Drawing; name: string } | null {
  const gone = holes.find((h) => isSame(h, mark)) ?? holes.at(-1);
  if (!gone) return null;
  return {
    drawing: { holes: holes.filter((h) => h !== gone), mark: spotOf(gone) },
    name: gone.name,
  };
}

/**
 * The hole to put next. `names` in their order must all be there; where the number of holes is `open`, the
 * numbers between and after them may be too. Null when all are there.
 */
export function nextDrawn(
  there: readonly string[],
  names: readonly string[],
  open: boolean,
): string | null {
  const must = names.find((name) => !there.includes(name)) ?? null;
  if (!open) return must;
  let free = 1;
  while (there.includes(`${free}`)) free += 1;
  return must !== null && compareHoles(must, `${free}`) < 0 ? must : `${free}`;
}

function spotOf({ column, row }: DrawnSpot): DrawnSpot {
  return { column, row };
}

function isSame(a: DrawnSpot, b: DrawnSpot): boolean {
  return a.column === b.column && a.row === b.row;
}

/** A spot and how many columns and rows from it on. */
interface Box extends DrawnSpot {
  columns: number;
  rows: number;
}

function boxOf(spots: readonly DrawnSpot[]): Box | null {
  if (spots.length === 0) return null;
  const [columns, rows] = [spots.map((s) => s.column), spots.map((s) => s.row)];
  const [column, row] = [Math.min(...columns), Math.min(...rows)];
  return {
    column,
    row,
    columns: Math.max(...columns) - column + 1,
    rows: Math.max(...rows) - row + 1,
  };
}

function isWithin(box: Box, { column, row }: DrawnSpot): boolean {
  const across = column >= box.column && column < box.column + box.columns;
  return across && row >= box.row && row < box.row + box.rows;
}

/** Where each hole goes on the screen: as large as there is room, never one over the other. */
import type { Layout } from './map.ts';

/** What is drawn for a hole: `before` columns left of the middle of its brackets, `columns` in all. */
export interface Cell {
  name: string;
  columns: number;
  before: number;
}

export interface PlacedCell {
  name: string;
  row: number;
  column: number;
}

/** A row is about twice as high as a column is wide. */
const ROW_PER_COLUMN = 2;
/** How far from its true shape a piece may be stretched: little if possible, else as far as need be. */
const STRETCHES = [1.3, 2, 4, Number.POSITIVE_INFINITY] as const;
/** Columns that a cell may be moved aside to clear its neighbour. */
const ASIDE = 5;
const GAP = 1;

/** The cells in an area of `columns` × `rows`, from 0; null when there is no room for all of them. */
export function place(
  layout: Layout,
  cells: readonly Cell[],
  columns: number,
  rows: number,
): PlacedCell[] | null {
  for (const stretch of STRETCHES) {
    const placed = tryPlace(layout, cells, columns, rows, stretch);
    if (placed) return placed;
  }
  return null;
}

function tryPlace(
  layout: Layout,
  cells: readonly Cell[],
  columns: number,
  rows: number,
  stretch: number,
): PlacedCell[] | null {
  const byName = new Map(layout.places.map((p) => [p.name, p]));
  const points = cells.flatMap((cell) => {
    const p = byName.get(cell.name);
    return p ? [{ cell, x: p.x, y: p.y }] : [];
  });
  if (points.length < cells.length || points.length === 0) return null;
  const left = Math.max(...cells.map((c) => c.before));
  const right = Math.max(...cells.map((c) => c.columns - c.before));
  const [x, y] = [span(points.map((p) => p.x)), span(points.map((p) => p.y))];
  const scale = scales(x.size, y.size, columns - left - right, rows - 1, stretch, layout.unit);
  if (!scale) return null;
  const used = Math.round(x.size * scale.x) + left + right;
  const shift = left + Math.floor((columns - used) / 2);
  const lines = new Map<number, { cell: Cell; middle: number }[]>();
  for (const { cell, x: px, y: py } of points) {
    const row = Math.round((py - y.from) * scale.y);
    const middle = shift + (px - x.from) * scale.x;
    lines.set(row, [...(lines.get(row) ?? []), { cell, middle }]);
  }
  const tall = Math.round(y.size * scale.y);
  const down = Math.floor((rows - 1 - tall) / 2);
  const placed: PlacedCell[] = [];
  for (const [row, there] of lines) {
    const clear = clearLine(there, columns);
    if (!clear) return null;
    placed.push(...clear.map((c) => ({ name: c.name, column: c.column, row: row + down })));
  }
  return placed;
}

function span(values: readonly number[]): { from: number; size: number } {
  const from = Math.min(...values);
  return { from, size: Math.max(...values) - from };
}

/** Columns and rows for one unit of the layout. */
function scales(
  width: number,
  height: number,
  columns: number,
  rows: number,
  stretch: number,
  unit: Layout['unit'],
): { x: number; y: number } | null {
  if (columns < 0 || rows < 0) return null;
  let x = width > 0 ? columns / width : Number.POSITIVE_INFINITY;
  let y = height > 0 ? rows / height : Number.POSITIVE_INFINITY;
  if (x === Number.POSITIVE_INFINITY && y === Number.POSITIVE_INFINITY) return { x: 0, y: 0 };
  x = Math.min(x, y * ROW_PER_COLUMN * stretch);
  y = Math.min(y, (x / ROW_PER_COLUMN) * stretch);
  // Rows of a drawn map stay evenly apart.
  if (unit === 'cell' && y > 1) y = Math.floor(y);
  return { x: width > 0 ? x : 0, y: height > 0 ? y : 0 };
}

/** The cells of one line, moved aside as little as clears them; null when that is too far. */
function clearLine(
  there: readonly { cell: Cell; middle: number }[],
  columns: number,
): { name: string; column: number }[] | null {
  const sorted = [...there].sort((a, b) => a.middle - b.middle);
  const wanted = sorted.map((c) => Math.round(c.middle) - c.cell.before);
  const at = [...wanted];
  for (let i = 1; i < at.length; i += 1) {
    const end = (at[i - 1] ?? 0) + (sorted[i - 1]?.cell.columns ?? 0) + GAP;
    at[i] = Math.max(at[i] ?? 0, end);
  }
  let limit = columns;
  for (let i = at.length - 1; i >= 0; i -= 1) {
    const middle = Math.min(at[i] ?? 0, limit - (sorted[i]?.cell.columns ?? 0));
    at[i] = middle;
    limit = middle - GAP;
  }
  if ((at[0] ?? 0) < 0) return null;
  const far = at.some((a, i) => Math.abs(a - (wanted[i] ?? 0)) > ASIDE);
  if (far) return null;
  return sorted.map((c, i) => ({ name: c.cell.name, column: at[i] ?? 0 }));
}

/** The field on which holes are drawn: a dot where the mark may go, a number in brackets where a hole is. */
import { canStand, type Drawing, type DrawnSpot, FIELD, holeAt } from '../../piece/drawing.ts';
import { SIGNS } from './map.ts';
import { indent, type Line, type Span, span } from './text.ts';

/** A spot on the screen, in columns and rows of it. */
interface Cell {
  columns: number;
  rows: number;
}

/** Rows of a spot at most: more would only set the numbers further apart. */
const HIGHEST = 4;
/** The brackets around a name. */
const BRACKETS = 2;
const DOT = '.';

/**
 * As large as lets the whole field be seen. A row is about twice as high as a column is wide, so 2h + 1
 * columns by h rows are nearly a square; in one row, where there is no room for that, as narrow as names let.
 */
function cellFor(columns: number, rows: number, room: number): Cell {
  for (let h = HIGHEST; h > 1; h -= 1) {
    const cell = { columns: Math.max(2 * h + 1, room + BRACKETS), rows: h };
    const seen = spotsIn(columns, rows, cell);
    if (seen.columns >= FIELD.columns && seen.rows >= FIELD.rows) return cell;
  }
  return { columns: room + BRACKETS, rows: 1 };
}

/** Spots that fit; an odd number of columns, so that the field stays in the middle. */
function spotsIn(columns: number, rows: number, cell: Cell): { columns: number; rows: number } {
  const across = Math.max(1, Math.floor(columns / cell.columns));
  return {
    columns: across - (across % 2 === 0 ? 1 : 0),
    rows: Math.max(1, Math.floor(rows / cell.rows)),
  };
}

/** The first of `count` spots in sight: as at the start, moved as little as shows all that is drawn, or the mark. */
function firstOf(field: number, count: number, drawn: readonly number[], mark: number): number {
  const start = Math.floor((field - count) / 2);
  const all = [...drawn, mark];
  const [low, high] = [Math.min(...all), Math.max(...all)];
  const [from, to] = high - low < count ? [low, high] : [mark, mark];
  return Math.max(to - count + 1, Math.min(start, from));
}

/** Lines of the field in an area of `columns` × `rows`; `room`: columns of the longest name. */
export function drawGround(drawing: Drawing, columns: number, rows: number, room: number): Line[] {
  const cell = cellFor(columns, rows, room);
  const seen = spotsIn(columns, rows, cell);
  const { holes, mark } = drawing;
  const left = firstOf(
    FIELD.columns,
    seen.columns,
    holes.map((h) => h.column),
    mark.column,
  );
  const top = firstOf(
    FIELD.rows,
    seen.rows,
    holes.map((h) => h.row),
    mark.row,
  );
  const edge = Math.floor((columns - seen.columns * cell.columns) / 2);
  const lines: Line[] = [];
  for (let row = top; row < top + seen.rows; row += 1) {
    const spots = Array.from({ length: seen.columns }, (_, i) => ({ column: left + i, row }));
    lines.push(
      indent(
        spots.flatMap((s) => drawSpot(drawing, s, cell.columns, room)),
        edge,
      ),
    );
    for (let i = 1; i < cell.rows && lines.length < rows; i += 1) lines.push([]);
  }
  return lines;
}

function drawSpot(drawing: Drawing, spot: DrawnSpot, columns: number, room: number): Span[] {
  const name = holeAt(drawing, spot);
  const { mark } = drawing;
  const here = mark.column === spot.column && mark.row === spot.row;
  const before = Math.floor((columns - room - BRACKETS) / 2);
  const after = columns - room - BRACKETS - before;
  if (name === null && !here) {
    const dot = (canStand(drawing, spot) ? DOT : '').padStart(room + 1);
    return [span(`${' '.repeat(before)}${dot} ${' '.repeat(after)}`)];
  }
  const [open, close] = SIGNS[here ? 'here' : 'out'];
  return [
    span(' '.repeat(before)),
    span(`${open}${(name ?? '').padStart(room)}${close}`, { bold: true, inverse: here }),
    span(' '.repeat(after)),
  ];
}

/** A dotted line between two cells of the screen: which columns of which rows. */

interface CellAt {
  row: number;
  column: number;
}

/** Columns from one dot to the next, so that the line stays quiet. */
const EVERY = 2;

/** Ends are left out; empty where one of them is missing. */
export function dotted(
  from: CellAt | null | undefined,
  to: CellAt | null | undefined,
): ReadonlyMap<number, number[]> {
  const dots = new Map<number, number[]>();
  if (!from || !to) return dots;
  const [down, right] = [to.row - from.row, to.column - from.column];
  // A row is about as high as two columns are wide.
  const steps = Math.max(Math.abs(down), Math.round(Math.abs(right) / EVERY));
  for (let i = 1; i < steps; i += 1) {
    const row = Math.round(from.row + (down * i) / steps);
    const column = Math.round(from.column + (right * i) / steps);
    dots.set(row, [...(dots.get(row) ?? []), column]);
  }
  return dots;
}

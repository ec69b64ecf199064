/**
 * From the middle outward, crosswise: for two rows of holes, and for long pieces. Common practice (cylinder
 * heads, sumps, manifolds), no source for one exact list: the middle first, no step back inward, each next one
 * across from the one before. Holes inside come before those on the rim.
 */
import { insideHull } from './hull.ts';
import { EPSILON, type Task, type Vectors } from './vectors.ts';

/** Long: clearly more than twice as long as wide; a plain triangle of bolts is just twice. */
const LONG = 2.2;
/** Two rows: neither wider than this share of the distance between them. */
const ROW_WIDTH = 0.15;
const LEAST_IN_ROW = 3;
/** Distances along the piece that differ by less than this share of a column are one step outward. */
const SAME_STEP = 0.3;
/** Inside: farther from the rim than this share of the width, and of the length: a row that is drawn a little askew has no inside. */
const INSIDE = 0.15;
const INSIDE_LONG = 0.03;

export interface Elongated {
  /** As one would say it: `two rows`, `long`. */
  shape: string;
  /** Distance from the middle along the piece. */
  out: Float64Array;
  /** Length of one column. */
  column: number;
  inside: boolean[];
}

/** The holes along the axis in which they spread most, and across it. */
function extent(v: Vectors) {
  let [xx, yy, xy] = [0, 0, 0];
  for (let i = 0; i < v.n; i += 1) {
    const [x, y] = [v.x[i] ?? 0, v.y[i] ?? 0];
    xx += x * x;
    yy += y * y;
    xy += x * y;
  }
  const axis = Math.atan2(2 * xy, xx - yy) / 2;
  const [cos, sin] = [Math.cos(axis), Math.sin(axis)];
  const along = v.x.map((x, i) => x * cos + (v.y[i] ?? 0) * sin);
  const across = v.x.map((x, i) => (v.y[i] ?? 0) * cos - x * sin);
  const [from, to] = [Math.min(...along), Math.max(...along)];
  const length = to - from;
  const width = Math.max(...across) - Math.min(...across);
  return { along, across, from, length, width };
}

/** How the piece lies along its long axis; null where it is neither long nor in two rows. */
export function elongated(v: Vectors): Elongated | null {
  if (v.n < 3) return null;
  const { along, across, from, length, width } = extent(v);
  if (length <= EPSILON) return null;
  const rows = twoRows(across);
  const columns = rows === null ? Math.ceil(v.n / 2) : rows;
  const shape =
    rows !== null && length >= width
      ? 'two rows'
      : length >= LONG * width - EPSILON
        ? 'long'
        : null;
  if (shape === null) return null;
  const middle = from + length / 2;
  return {
    shape,
    out: along.map((u) => Math.abs(u - middle)),
    column: length / Math.max(1, columns - 1),
    inside: insideHull(v, Math.max(INSIDE * width, INSIDE_LONG * length)),
  };
}

/** Holes in the longer of two rows; null where they do not lie in two rows. */
function twoRows(across: Float64Array): number | null {
  const sorted = [...across].sort((a, b) => a - b);
  let [cut, gap] = [0, 0];
  for (let k = 1; k < sorted.length; k += 1) {
    const step = (sorted[k] ?? 0) - (sorted[k - 1] ?? 0);
    if (step > gap) [cut, gap] = [k, step];
  }
  const rows = [sorted.slice(0, cut), sorted.slice(cut)];
  const narrow = rows.every(
    (row) => row.length >= LEAST_IN_ROW && (row.at(-1) ?? 0) - (row[0] ?? 0) <= ROW_WIDTH * gap,
  );
  return narrow ? Math.max(...rows.map((row) => row.length)) : null;
}

/** The order of the holes that are left: rank, inside, step outward; within a step crosswise. */
export function centreOut(task: Task, lie: Elongated): number[] {
  const { v, rank, done, left } = task;
  const sorted = [...left].sort(
    (a, b) =>
      (rank[a] ?? 0) - (rank[b] ?? 0) ||
      Number(lie.inside[b]) - Number(lie.inside[a]) ||
      (lie.out[a] ?? 0) - (lie.out[b] ?? 0) ||
      a - b,
  );
  const steps: number[][] = [];
  for (const hole of sorted) {
    const step = steps.at(-1);
    const first = step?.[0];
    const same =
      first !== undefined &&
      rank[first] === rank[hole] &&
      lie.inside[first] === lie.inside[hole] &&
      (lie.out[hole] ?? 0) - (lie.out[first] ?? 0) <= SAME_STEP * lie.column;
    if (same) step?.push(hole);
    else steps.push([hole]);
  }
  const at = { x: 0, y: 0 };
  for (const i of done) {
    at.x += v.x[i] ?? 0;
    at.y += v.y[i] ?? 0;
  }
  const order: number[] = [];
  for (const step of steps) {
    const open = new Set([...step].sort((a, b) => a - b));
    while (open.size > 0) {
      const hole = crosswise(v, at, order.at(-1), open);
      open.delete(hole);
      order.push(hole);
      at.x += v.x[hole] ?? 0;
      at.y += v.y[hole] ?? 0;
    }
  }
  return order;
}

/** The hole that leaves the least imbalance; of equal ones the farthest from the last, then the file's first. */
function crosswise(
  v: Vectors,
  at: { x: number; y: number },
  last: number | undefined,
  open: Set<number>,
) {
  let [best, least, farthest] = [-1, Number.POSITIVE_INFINITY, 0];
  for (const i of open) {
    const [x, y] = [v.x[i] ?? 0, v.y[i] ?? 0];
    const b = Math.hypot(at.x + x, at.y + y);
    const far = last === undefined ? 0 : Math.hypot(x - (v.x[last] ?? 0), y - (v.y[last] ?? 0));
    if (b < least - EPSILON || (b <= least + EPSILON && far > farthest + EPSILON)) {
      [best, least, farthest] = [i, b, far];
    }
  }
  return best;
}

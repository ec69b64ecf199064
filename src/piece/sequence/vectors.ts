/**
 * Holes as pulls on a piece. With holes at p, each with its force f, centroid c = Σ f p / Σ f, v = f (p − c) and
 * R = max|v|, the state after k bolts is
 * the imbalance b_k = |Σ v|/R (where the clamping pulls to one side) and the spread s_k = |Σ v²|/R², v² as of
 * complex numbers (where it lies along one line). All figures here are of v/R and so without a unit.
 */

/** Comparisons of figures that come from sums of coordinates. */
export const EPSILON = 1e-9;

export interface Point {
  x: number;
  y: number;
}

export interface Vectors {
  n: number;
  /** v/R; all zero where the holes coincide (R = 0). */
  x: Float64Array;
  y: Float64Array;
  /** Classes of equal angle round the centroid, counted round; −1 for a hole in the centroid itself. */
  sector: Int32Array;
  sectors: number;
}

/** Pulls of the holes, with the centroid of all of them in the middle; `forces` in any unit, none: all alike. */
export function vectors(points: readonly Point[], forces?: readonly number[]): Vectors {
  const n = points.length;
  const f = (i: number) => forces?.[i] ?? 1;
  const all = points.reduce((sum, _, i) => sum + f(i), 0) || 1;
  const mean = (of: (p: Point) => number) =>
    points.reduce((sum, p, i) => sum + f(i) * of(p), 0) / all;
  const [cx, cy] = [mean((p) => p.x), mean((p) => p.y)];
  const R = points.reduce((most, p, i) => Math.max(most, f(i) * Math.hypot(p.x - cx, p.y - cy)), 0);
  // What the centroid is rounded off by is no radius: holes on one spot far from the origin stay on one spot.
  const size = points.reduce((most, p) => Math.max(most, Math.abs(p.x), Math.abs(p.y)), 0);
  const strongest = points.reduce((most, _, i) => Math.max(most, f(i)), 0);
  const scale = R > size * strongest * 1e-12 ? 1 / R : 0;
  const x = Float64Array.from(points, (p, i) => f(i) * (p.x - cx) * scale);
  const y = Float64Array.from(points, (p, i) => f(i) * (p.y - cy) * scale);
  return { n, x, y, ...sectorsOf(x, y) };
}

function sectorsOf(x: Float64Array, y: Float64Array): { sector: Int32Array; sectors: number } {
  const sector = new Int32Array(x.length).fill(-1);
  const around = [...x.keys()]
    .map((i) => ({
      i,
      r: Math.hypot(x[i] ?? 0, y[i] ?? 0),
      turn: Math.atan2(y[i] ?? 0, x[i] ?? 0),
    }))
    .filter((hole) => hole.r > EPSILON)
    .sort((a, b) => a.turn - b.turn || a.i - b.i);
  const first = around[0]?.turn ?? 0;
  const last = around.at(-1)?.turn ?? 0;
  // −π and π are one angle: what ends within rounding of a full turn from the first belongs to the first.
  const closes = last - first > Math.PI && first + 2 * Math.PI - last <= EPSILON;
  let sectors = 0;
  let before = Number.NEGATIVE_INFINITY;
  for (const { i, turn } of around) {
    if (turn - before > EPSILON) sectors += 1;
    sector[i] = sectors - 1;
    before = turn;
  }
  if (closes && sectors > 1) {
    const top = sectors - 1;
    for (const { i } of around) if (sector[i] === top) sector[i] = 0;
    sectors = top;
  }
  return { sector, sectors };
}

/** Next to each other in angle round the centroid, or at the same angle. */
export function adjacent(v: Pick<Vectors, 'sector' | 'sectors'>, i: number, j: number): boolean {
  const [a, b] = [v.sector[i] ?? -1, v.sector[j] ?? -1];
  if (a < 0 || b < 0) return false;
  const apart = Math.abs(a - b);
  return apart <= 1 || apart === v.sectors - 1;
}

/** What is asked: an order of the holes that are left, those of a lower rank first. Holes are indices. */
export interface Task {
  v: Vectors;
  /** Where the holes are, whatever they pull; `v` where all pull alike. */
  at?: Vectors;
  rank: readonly number[];
  /** Tight already. */
  done: readonly number[];
  /** To be ordered, in the order of the file. */
  left: readonly number[];
}

interface Measure {
  /** Largest b_k over the steps of the order. */
  peak: number;
  /** Mean of b_k over the steps of the order. */
  mean: number;
  /** Σ over even k of 4 b_k² + s_k², k counting what was done before. */
  cost: number;
  /** Steps from a hole to one next to it. */
  neighbours: number;
}

export function measure({ v, done }: Pick<Task, 'v' | 'done'>, order: readonly number[]): Measure {
  const at = { x: 0, y: 0, qx: 0, qy: 0 };
  const add = (i: number) => {
    const [x, y] = [v.x[i] ?? 0, v.y[i] ?? 0];
    at.x += x;
    at.y += y;
    at.qx += x * x - y * y;
    at.qy += 2 * x * y;
  };
  for (const i of done) add(i);
  const sum = { peak: 0, mean: 0, cost: 0, neighbours: 0 };
  for (const [k, i] of order.entries()) {
    add(i);
    const bb = at.x * at.x + at.y * at.y;
    sum.peak = Math.max(sum.peak, Math.sqrt(bb));
    sum.mean += Math.sqrt(bb) / order.length;
    if ((done.length + k + 1) % 2 === 0) sum.cost += 4 * bb + at.qx * at.qx + at.qy * at.qy;
    const before = order[k - 1];
    if (before !== undefined && adjacent(v, before, i)) sum.neighbours += 1;
  }
  return sum;
}

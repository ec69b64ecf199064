/** The holes that are left, laid out for the search: by rank, long pulls first. */
import { EPSILON, type Task } from './vectors.ts';

export interface Field {
  n: number;
  /** Index of each in the task. */
  hole: Int32Array;
  x: Float64Array;
  y: Float64Array;
  /** As in Vectors. */
  sector: Int32Array;
  sectors: number;
  /** v². */
  qx: Float64Array;
  qy: Float64Array;
  /** |v|³: how hard it will be to fit in. */
  hard: Float64Array;
  /** 1 where the pull is that of the one before: of such, the earlier goes first. */
  same: Uint8Array;
  /** For each step: where the rank that is due begins and ends. */
  from: Int32Array;
  to: Int32Array;
  /** With what is done: Σ v and Σ v² at the start, how many, and Σ v² at the end. */
  start: { x: number; y: number; qx: number; qy: number; count: number };
  end: { qx: number; qy: number };
}

export function pullField({ v, rank, done, left }: Task): Field {
  const pull = (i: number) => ({ x: v.x[i] ?? 0, y: v.y[i] ?? 0 });
  const long = (i: number) => Math.hypot(v.x[i] ?? 0, v.y[i] ?? 0);
  // Lengths within rounding of each other are one length, so that a turned layout is searched the same way.
  const length = left.map((i) => Math.round(long(i) / EPSILON) * EPSILON);
  const sorted = left
    .map((i, k) => ({ i, r: rank[i] ?? 0, length: length[k] ?? 0, ...pull(i) }))
    .sort((a, b) => a.r - b.r || b.length - a.length || a.x - b.x || a.y - b.y || a.i - b.i);
  const n = sorted.length;
  const take = (of: (hole: (typeof sorted)[number]) => number) => Float64Array.from(sorted, of);
  const same = Uint8Array.from(sorted, (hole, k) => {
    const before = sorted[k - 1];
    if (before === undefined || before.r !== hole.r) return 0;
    return Math.hypot(before.x - hole.x, before.y - hole.y) <= EPSILON ? 1 : 0;
  });
  const from = new Int32Array(n);
  const to = new Int32Array(n);
  for (let k = 0, first = 0; k < n; k += 1) {
    if (sorted[k]?.r !== sorted[first]?.r) first = k;
    from[k] = first;
    for (let j = first; j <= k; j += 1) to[j] = k + 1;
  }
  const start = { x: 0, y: 0, qx: 0, qy: 0, count: done.length };
  for (const { x, y } of done.map(pull)) {
    start.x += x;
    start.y += y;
    start.qx += x * x - y * y;
    start.qy += 2 * x * y;
  }
  const qx = take(({ x, y }) => x * x - y * y);
  const qy = take(({ x, y }) => 2 * x * y);
  return {
    ...{ n, same, from, to, start, qx, qy },
    hole: Int32Array.from(sorted, (hole) => hole.i),
    sector: Int32Array.from(sorted, (hole) => v.sector[hole.i] ?? -1),
    sectors: v.sectors,
    x: take((hole) => hole.x),
    y: take((hole) => hole.y),
    hard: take((hole) => hole.length ** 3),
    end: {
      qx: qx.reduce((sum, q) => sum + q, start.qx),
      qy: qy.reduce((sum, q) => sum + q, start.qy),
    },
  };
}

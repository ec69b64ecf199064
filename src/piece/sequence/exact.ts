/**
 * The computed order for up to 16 holes, exact, by dynamic programming over sets of holes.
 *
 * b and s depend on which bolts are tight, not on how they came to be; so the least peak P* of an order that
 * fills a set is the larger of the set's own imbalance and the least P* of the set without its last hole. Among
 * the orders that keep to 1.05 P*: fewest steps between neighbours, then least cost, then the order of the file.
 */
import { limitOf } from './bound.ts';
import { adjacent, EPSILON, type Task } from './vectors.ts';

/** 2^16 sets × 16 last holes: some 25 ms. */
export const MOST_EXACT = 16;

export interface Computed {
  /** The holes that were left. */
  order: number[];
  /** P*, or the least peak known. */
  best: number;
  /** `best` is P* itself. */
  exact: boolean;
}

interface Sets {
  free: readonly number[];
  /** Imbalance of each set, with what is done. */
  b: Float64Array;
  /** 4 b² + s² where the number of tight bolts is even, else 0. */
  weight: Float64Array;
  /** For each free hole: the set of those that go before it by rank. */
  need: number[];
}

function setsOf(task: Task): Sets {
  const { v, rank, done, left: free } = task;
  const size = 2 ** free.length;
  const [sx, sy, qx, qy] = [0, 0, 0, 0].map(() => new Float64Array(size));
  const b = new Float64Array(size);
  const weight = new Float64Array(size);
  if (!sx || !sy || !qx || !qy) return { free, b, weight, need: [] };
  for (const i of done) {
    const [x, y] = [v.x[i] ?? 0, v.y[i] ?? 0];
    sx[0] = (sx[0] ?? 0) + x;
    sy[0] = (sy[0] ?? 0) + y;
    qx[0] = (qx[0] ?? 0) + x * x - y * y;
    qy[0] = (qy[0] ?? 0) + 2 * x * y;
  }
  const count = new Uint8Array(size);
  count[0] = done.length % 2;
  for (let set = 1; set < size; set += 1) {
    const hole = free[31 - Math.clz32(set & -set)] ?? 0;
    const rest = set & (set - 1);
    const [x, y] = [v.x[hole] ?? 0, v.y[hole] ?? 0];
    const [px, py] = [(sx[rest] ?? 0) + x, (sy[rest] ?? 0) + y];
    const [rx, ry] = [(qx[rest] ?? 0) + x * x - y * y, (qy[rest] ?? 0) + 2 * x * y];
    sx[set] = px;
    sy[set] = py;
    qx[set] = rx;
    qy[set] = ry;
    b[set] = Math.sqrt(px * px + py * py);
    count[set] = 1 - (count[rest] ?? 0);
    if (count[set] === 0) weight[set] = 4 * (px * px + py * py) + rx * rx + ry * ry;
  }
  const need = free.map((i) =>
    free.reduce((set, j, bit) => ((rank[j] ?? 0) < (rank[i] ?? 0) ? set | (1 << bit) : set), 0),
  );
  return { free, b, weight, need };
}

/** P* of the full set. */
function leastPeak({ free, b, need }: Sets): number {
  const least = new Float64Array(b.length).fill(Number.POSITIVE_INFINITY);
  least[0] = 0;
  for (let set = 1; set < b.length; set += 1) {
    let best = Number.POSITIVE_INFINITY;
    for (let bit = 0; bit < free.length; bit += 1) {
      const without = set & ~(1 << bit);
      if (without === set || ((need[bit] ?? 0) & ~without) !== 0) continue;
      const peak = least[without] ?? best;
      if (peak < best) best = peak;
    }
    least[set] = Math.max(b[set] ?? 0, best);
  }
  return least[b.length - 1] ?? 0;
}

const NEVER = 255;

/** Best way on from each set and last hole: steps between neighbours, and cost. */
function waysOn(task: Task, sets: Sets, limit: number) {
  const { free, b, weight, need } = sets;
  const n = free.length;
  const full = b.length - 1;
  const steps = new Uint8Array(b.length * n).fill(NEVER);
  const cost = new Float64Array(b.length * n);
  for (let last = 0; last < n; last += 1) steps[full * n + last] = 0;
  const near = free.map((i) => Uint8Array.from(free, (j) => (adjacent(task.v, i, j) ? 1 : 0)));
  const none = new Uint8Array(n);
  for (let set = full - 1; set >= 0; set -= 1) {
    if (set > 0 && (b[set] ?? 0) > limit) continue;
    for (let last = 0; last < n; last += 1) {
      if (set > 0 && (set & (1 << last)) === 0) continue;
      const row = (set > 0 ? near[last] : none) ?? none;
      let fewest = NEVER;
      let least = Number.POSITIVE_INFINITY;
      for (let bit = 0; bit < n; bit += 1) {
        const next = set | (1 << bit);
        if (next === set || ((need[bit] ?? 0) & ~set) !== 0 || (b[next] ?? 0) > limit) continue;
        const on = steps[next * n + bit] ?? NEVER;
        if (on === NEVER) continue;
        const s = on + (row[bit] ?? 0);
        const c = (cost[next * n + bit] ?? 0) + (weight[next] ?? 0);
        if (s < fewest || (s === fewest && c < least)) {
          fewest = s;
          least = c;
        }
      }
      steps[set * n + last] = fewest;
      cost[set * n + last] = least;
      if (set === 0) break;
    }
  }
  return { steps, cost, near, none };
}

/** The computed order of at most 16 holes. */
export function exactOrder(task: Task): Computed {
  const sets = setsOf(task);
  const { free, b, weight, need } = sets;
  const n = free.length;
  const full = b.length - 1;
  const best = leastPeak(sets);
  const limit = limitOf(task, best);
  const { steps, cost, near, none } = waysOn(task, sets, limit);
  const order: number[] = [];
  for (let set = 0, last = 0; set !== full; ) {
    const row = (set > 0 ? near[last] : none) ?? none;
    const at = set * n + last;
    const next = free.findIndex((_, bit) => {
      const to = set | (1 << bit);
      if (to === set || ((need[bit] ?? 0) & ~set) !== 0 || (b[to] ?? 0) > limit) return false;
      const on = steps[to * n + bit] ?? NEVER;
      const c = (cost[to * n + bit] ?? 0) + (weight[to] ?? 0);
      return on !== NEVER && on + (row[bit] ?? 0) === steps[at] && c <= (cost[at] ?? 0) + EPSILON;
    });
    const hole = free[next];
    if (hole === undefined) break;
    order.push(hole);
    set |= 1 << next;
    last = next;
  }
  return { order, best, exact: true };
}

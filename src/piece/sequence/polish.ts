/** Swaps of two holes, as long as one makes an order better: fewer steps between neighbours, then less cost. */
import { adjacent, EPSILON, type Task } from './vectors.ts';

/** Sums looked at in all, so that many holes take no longer than a few: some 10 ms. */
const MOST = 1_500_000;

/** Σ v and Σ v² after each step, the start first. */
class Sums {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly qx: Float64Array;
  readonly qy: Float64Array;
  /** 1 where the number of tight bolts is even, and so counts. */
  readonly even: Uint8Array;

  constructor({ v, done }: Task, order: Int32Array) {
    const n = order.length;
    this.x = new Float64Array(n + 1);
    this.y = new Float64Array(n + 1);
    this.qx = new Float64Array(n + 1);
    this.qy = new Float64Array(n + 1);
    this.even = Uint8Array.from({ length: n + 1 }, (_, k) => ((done.length + k) % 2 === 0 ? 1 : 0));
    for (const i of done) this.shift(0, 0, v.x[i] ?? 0, v.y[i] ?? 0, 0, 0);
    for (const [k, i] of order.entries()) this.shift(k + 1, k, v.x[i] ?? 0, v.y[i] ?? 0, 0, 0);
  }

  /** The sums at `k` are those at `from` with the pull (ax, ay) added and (bx, by) taken away. */
  shift(k: number, from: number, ax: number, ay: number, bx: number, by: number): void {
    this.x[k] = (this.x[from] ?? 0) + ax - bx;
    this.y[k] = (this.y[from] ?? 0) + ay - by;
    this.qx[k] = (this.qx[from] ?? 0) + ax * ax - ay * ay - bx * bx + by * by;
    this.qy[k] = (this.qy[from] ?? 0) + 2 * ax * ay - 2 * bx * by;
  }

  /** Change of cost by adding (dx, dy) and (du, dw) to the sums of places p + 1 to q; infinite beyond `most`. */
  change(
    p: number,
    q: number,
    dx: number,
    dy: number,
    du: number,
    dw: number,
    most: number,
  ): number {
    const { x, y, qx, qy, even } = this;
    let cost = 0;
    for (let k = p + 1; k <= q; k += 1) {
      const [sx, sy] = [x[k] ?? 0, y[k] ?? 0];
      const bb = (sx + dx) * (sx + dx) + (sy + dy) * (sy + dy);
      if (bb > most) return Number.POSITIVE_INFINITY;
      if (even[k] === 1) {
        cost += 4 * (bb - sx * sx - sy * sy);
        cost += du * (2 * (qx[k] ?? 0) + du) + dw * (2 * (qy[k] ?? 0) + dw);
      }
    }
    return cost;
  }
}

/** A better order of the same holes whose imbalances stay within `limit`; ranks are kept. */
export function polish(task: Task, order: readonly number[], limit: number): number[] {
  const { v, rank } = task;
  const at = Int32Array.from(order);
  const n = at.length;
  const sums = new Sums(task, at);
  const most = (limit + EPSILON) ** 2;
  let work = 0;
  for (let better = true; better && work < MOST; ) {
    better = false;
    for (let p = 0; p < n - 1; p += 1) {
      for (let q = p + 1; q < n && work < MOST; q += 1) {
        const [a, b] = [at[p] ?? 0, at[q] ?? 0];
        if (rank[a] !== rank[b]) break;
        work += 4 + q - p;
        const steps = stepsAround(p, q, b, a) - stepsAround(p, q, a, b);
        if (steps > 0) continue;
        const [ax, ay, bx, by] = [v.x[a] ?? 0, v.y[a] ?? 0, v.x[b] ?? 0, v.y[b] ?? 0];
        const du = bx * bx - by * by - ax * ax + ay * ay;
        const cost = sums.change(p, q, bx - ax, by - ay, du, 2 * (bx * by - ax * ay), most);
        const earlier = cost <= EPSILON && b < a;
        if (cost === Number.POSITIVE_INFINITY) continue;
        if (steps === 0 && cost >= -EPSILON && !earlier) continue;
        for (let k = p + 1; k <= q; k += 1) sums.shift(k, k, bx, by, ax, ay);
        at[p] = b;
        at[q] = a;
        better = true;
      }
    }
  }
  return [...at];

  /** Steps between neighbours into and out of places p and q, with holes i and j there. */
  function stepsAround(p: number, q: number, i: number, j: number): number {
    let steps = near(at[p - 1], i) + near(j, at[q + 1]);
    steps += q === p + 1 ? near(i, j) : near(i, at[p + 1]) + near(at[q - 1], j);
    return steps;
  }

  function near(i: number | undefined, j: number | undefined): number {
    return i !== undefined && j !== undefined && adjacent(v, i, j) ? 1 : 0;
  }
}

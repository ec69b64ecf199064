/**
 * The computed order by trying all orders, written apart from the program: from the definition, on points.
 */
import type { Point } from '../../../src/piece/sequence/vectors.ts';

const NEAR = 1e-9;

export interface Brute {
  /** P*. */
  best: number;
  neighbours: number;
  cost: number;
  /** The first in the order of the file of those that are equally good. */
  order: number[];
}

interface Given {
  done?: readonly number[];
  rank?: readonly number[];
  /** How hard each bolt pulls; none: all alike. */
  force?: readonly number[];
}

class Trial {
  readonly n: number;
  readonly v: Point[];
  readonly free: number[];
  readonly rank: readonly number[];
  readonly done: readonly number[];
  private readonly beside: boolean[][];

  constructor(points: readonly Point[], { done = [], rank, force }: Given) {
    this.n = points.length;
    const f = force ?? points.map(() => 1);
    const all = f.reduce((sum, one) => sum + one, 0);
    const c = { x: 0, y: 0 };
    for (const [i, p] of points.entries()) {
      c.x += (p.x * (f[i] ?? 0)) / all;
      c.y += (p.y * (f[i] ?? 0)) / all;
    }
    const v = points.map((p, i) => ({
      x: (p.x - c.x) * (f[i] ?? 0),
      y: (p.y - c.y) * (f[i] ?? 0),
    }));
    const R = Math.max(...v.map((p) => Math.hypot(p.x, p.y)));
    this.v = v.map((p) => ({ x: p.x / (R || 1), y: p.y / (R || 1) }));
    this.done = done;
    this.rank = rank ?? points.map(() => 0);
    this.free = points.map((_, i) => i).filter((i) => !done.includes(i));
    this.beside = points.map((_, i) => points.map((_, j) => i !== j && this.areBeside(i, j)));
  }

  /** No third direction lies strictly between those of i and j, one way round or the other. */
  private areBeside(i: number, j: number): boolean {
    const angle = (p: Point) => Math.atan2(p.y, p.x);
    const far = this.v.filter((p) => Math.hypot(p.x, p.y) > NEAR);
    const [a, b] = [this.v[i], this.v[j]];
    if (!a || !b || !far.includes(a) || !far.includes(b)) return false;
    const between = (from: number, to: number) => {
      const width = ahead(from, to);
      if (width < NEAR) return false;
      return far.some((p) => ahead(from, angle(p)) > NEAR && ahead(from, angle(p)) < width - NEAR);
    };
    return !between(angle(a), angle(b)) || !between(angle(b), angle(a));
  }

  /** Visits all orders whose imbalances stay within `limit()`, which may fall meanwhile. */
  walk(limit: () => number, visit: (order: readonly number[], now: Sums) => void): void {
    const used = new Array<boolean>(this.n).fill(false);
    const order: number[] = [];
    const step = (now: Sums) => {
      if (order.length === this.free.length) return visit(order, now);
      const due = Math.min(...this.free.filter((i) => !used[i]).map((i) => this.rank[i] ?? 0));
      for (const i of this.free) {
        if (used[i] || this.rank[i] !== due) continue;
        const next = this.add(now, i, order.at(-1));
        if (next.peak > limit() + NEAR) continue;
        used[i] = true;
        order.push(i);
        step(next);
        order.pop();
        used[i] = false;
      }
    };
    let start: Sums = { x: 0, y: 0, u: 0, w: 0, k: 0, peak: 0, neighbours: 0, cost: 0 };
    for (const i of this.done) start = { ...this.add(start, i, undefined), peak: 0, cost: 0 };
    step(start);
  }

  private add(now: Sums, i: number, before: number | undefined): Sums {
    const { x, y } = this.v[i] ?? { x: 0, y: 0 };
    const [sx, sy] = [now.x + x, now.y + y];
    const [u, w] = [now.u + x * x - y * y, now.w + 2 * x * y];
    const b = Math.hypot(sx, sy);
    const k = now.k + 1;
    const cost = now.cost + (k % 2 === 0 ? 4 * b * b + u * u + w * w : 0);
    const neighbours = now.neighbours + (before !== undefined && this.beside[before]?.[i] ? 1 : 0);
    return { x: sx, y: sy, u, w, k, peak: Math.max(now.peak, b), neighbours, cost };
  }
}

interface Sums {
  x: number;
  y: number;
  u: number;
  w: number;
  k: number;
  peak: number;
  neighbours: number;
  cost: number;
}

/** Angle from one direction on to another, from 0 to 2π; a hair less than a turn is none. */
function ahead(from: number, to: number): number {
  const turn = (to - from + 4 * Math.PI) % (2 * Math.PI);
  return turn > 2 * Math.PI - NEAR ? 0 : turn;
}

export function leastPeak(points: readonly Point[], given: Given = {}): number {
  let best = Number.POSITIVE_INFINITY;
  const trial = new Trial(points, given);
  trial.walk(
    () => best - 2 * NEAR,
    (_, { peak }) => {
      best = Math.min(best, peak);
    },
  );
  return best;
}

export function brute(points: readonly Point[], given: Given = {}): Brute {
  const best = leastPeak(points, given);
  const found: { order: number[]; neighbours: number; cost: number }[] = [];
  let fewest = Number.POSITIVE_INFINITY;
  let least = Number.POSITIVE_INFINITY;
  new Trial(points, given).walk(
    () => 1.05 * best,
    (order, { neighbours, cost }) => {
      if (neighbours > fewest || (neighbours === fewest && cost > least + NEAR)) return;
      if (neighbours < fewest || cost < least - NEAR) found.length = 0;
      least = neighbours < fewest ? cost : Math.min(least, cost);
      fewest = neighbours;
      found.push({ order: [...order], neighbours, cost });
    },
  );
  // Visited in the order of the file, so the first one within rounding of the least is the one that is meant.
  const first = found.find((one) => one.cost <= least + NEAR);
  return { best, neighbours: fewest, cost: least, order: first?.order ?? [] };
}

/**
 * A search for an order that keeps every imbalance below a limit: step by step the best few partial orders,
 * each set of holes once. Finding none proves nothing.
 *
 * Ways to rank partial orders. `hard`: long pulls first, as long as they fit; short ones fit at any time.
 * `even`: the same, but with Σ v² in step with how far round one is, which keeps the odd one out for the middle,
 * where it belongs. `smooth`: Σ v² in step, and a small imbalance, with no regard to length. `cost`: what the order costs so far, less so much for each long pull that is in.
 */
import type { Field } from './field.ts';
import { Shortlist } from './shortlist.ts';
import { adjacent, EPSILON } from './vectors.ts';

export type Ranking = 'hard' | 'even' | 'smooth' | { cost: number };

export interface Width {
  /** Partial orders kept at each step. */
  kept: number;
  /** Ways on tried from each. */
  tried: number;
}

/** What a step between neighbours counts in `cost`: more than any cost can save. */
const NEIGHBOUR = 1e6;

/** Partial orders of one length; row r of `used` holds a bit for each hole. */
interface States {
  count: number;
  x: Float64Array;
  y: Float64Array;
  qx: Float64Array;
  qy: Float64Array;
  hard: Float64Array;
  cost: Float64Array;
  /** The last hole; −1 at the start. */
  last: Int32Array;
  low: Int32Array;
  high: Int32Array;
  used: Int32Array;
}

function states(kept: number, words: number): States {
  const floats = () => new Float64Array(kept);
  const ints = (n: number) => new Int32Array(n);
  return {
    ...{ count: 0, x: floats(), y: floats(), qx: floats(), qy: floats() },
    ...{ hard: floats(), cost: floats(), last: ints(kept).fill(-1) },
    ...{ low: ints(kept), high: ints(kept), used: ints(kept * words) },
  };
}

/** Bits that stand for a hole in the name of a set: the finaliser of MurmurHash3, as a source of even bits. */
function bits(hole: number, salt: number): number {
  let h = Math.imul(hole + 1, 0x9e3779b1) ^ salt;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return h ^ (h >>> 16);
}

/** An order (as places in the field) whose imbalances all stay within `limit`, or null where none was found. */
export function beam(field: Field, limit: number, ranking: Ranking, width: Width): number[] | null {
  const { n, x, y, qx, qy, hard, start } = field;
  const words = (n + 31) >> 5;
  const kept = width.kept;
  let now = states(kept, words);
  let next = states(kept, words);
  const shortlist = new Shortlist(kept);
  const parents = new Int32Array(n * kept);
  const items = new Int32Array(n * kept);
  const low = Int32Array.from({ length: n }, (_, i) => bits(i, 0x51ed27));
  const high = Int32Array.from({ length: n }, (_, i) => bits(i, 0x2f1b3c));
  now.count = 1;
  now.x[0] = start.x;
  now.y[0] = start.y;
  now.qx[0] = start.qx;
  now.qy[0] = start.qy;
  const most = (limit + EPSILON) ** 2;
  for (let k = 0; k < n; k += 1) {
    shortlist.clear();
    for (let s = 0; s < now.count; s += 1) offerNext(s, k);
    if (shortlist.count === 0) return null;
    follow(k);
    [now, next] = [next, now];
  }
  return trace();

  function offerNext(s: number, k: number): void {
    const [from, to] = [field.from[k] ?? 0, field.to[k] ?? n];
    const [sx, sy] = [now.x[s] ?? 0, now.y[s] ?? 0];
    let tried = 0;
    for (let w = from >> 5; w * 32 < to; w += 1) {
      let open = ~(now.used[s * words + w] ?? 0);
      if (w * 32 < from) open &= -1 << (from & 31);
      if (w * 32 + 32 > to) open &= ~(-1 << (to & 31));
      for (; open !== 0; open &= open - 1) {
        const i = w * 32 + 31 - Math.clz32(open & -open);
        const bx = sx + (x[i] ?? 0);
        const by = sy + (y[i] ?? 0);
        const bb = bx * bx + by * by;
        if (bb > most || (field.same[i] === 1 && isOpen(s, i - 1))) continue;
        const weight = (now.hard[s] ?? 0) + (hard[i] ?? 0);
        const score = scoreOf(s, i, k, bb, weight);
        if (!shortlist.full(score)) {
          const a = (now.low[s] ?? 0) ^ (low[i] ?? 0);
          const b = (now.high[s] ?? 0) ^ (high[i] ?? 0);
          shortlist.offer(score, s, i, (a >>> 0) * 0x200000 + (b >>> 11));
        }
        tried += 1;
        if (tried === width.tried) return;
      }
    }
  }

  function isOpen(s: number, i: number): boolean {
    return (((now.used[s * words + (i >> 5)] ?? 0) >>> (i & 31)) & 1) === 0;
  }

  function scoreOf(s: number, i: number, k: number, bb: number, weight: number): number {
    if (ranking === 'hard') return 0.01 * bb - weight;
    const u = (now.qx[s] ?? 0) + (qx[i] ?? 0);
    const w = (now.qy[s] ?? 0) + (qy[i] ?? 0);
    if (ranking === 'even' || ranking === 'smooth') {
      const share = (start.count + k + 1) / (start.count + n);
      const off = (u - share * field.end.qx) ** 2 + (w - share * field.end.qy) ** 2;
      return ranking === 'even' ? off - weight : 4 * off + bb;
    }
    return costOf(s, i, k, bb, u, w) - ranking.cost * weight;
  }

  function costOf(s: number, i: number, k: number, bb: number, u: number, w: number): number {
    const even = (start.count + k + 1) % 2 === 0;
    const step = nextTo(now.last[s] ?? -1, i) ? NEIGHBOUR : 0;
    return (now.cost[s] ?? 0) + step + (even ? 4 * bb + u * u + w * w : 0);
  }

  function nextTo(i: number, j: number): boolean {
    return i >= 0 && adjacent(field, i, j);
  }

  /** Makes the short-listed partial orders the next ones. */
  function follow(k: number): void {
    next.count = shortlist.count;
    for (let r = 0; r < shortlist.count; r += 1) {
      const s = shortlist.parent[r + 1] ?? 0;
      const i = shortlist.item[r + 1] ?? 0;
      parents[k * kept + r] = s;
      items[k * kept + r] = i;
      next.x[r] = (now.x[s] ?? 0) + (x[i] ?? 0);
      next.y[r] = (now.y[s] ?? 0) + (y[i] ?? 0);
      next.qx[r] = (now.qx[s] ?? 0) + (qx[i] ?? 0);
      next.qy[r] = (now.qy[s] ?? 0) + (qy[i] ?? 0);
      next.hard[r] = (now.hard[s] ?? 0) + (hard[i] ?? 0);
      const bb = (next.x[r] ?? 0) ** 2 + (next.y[r] ?? 0) ** 2;
      next.cost[r] = costOf(s, i, k, bb, next.qx[r] ?? 0, next.qy[r] ?? 0);
      next.last[r] = i;
      next.low[r] = (now.low[s] ?? 0) ^ (low[i] ?? 0);
      next.high[r] = (now.high[s] ?? 0) ^ (high[i] ?? 0);
      for (let w = 0; w < words; w += 1) {
        next.used[r * words + w] = now.used[s * words + w] ?? 0;
      }
      const at = r * words + (i >> 5);
      next.used[at] = (next.used[at] ?? 0) | (1 << (i & 31));
    }
  }

  function trace(): number[] {
    const order = new Array<number>(n);
    for (let k = n - 1, r = 0; k >= 0; k -= 1) {
      order[k] = items[k * kept + r] ?? 0;
      r = parents[k * kept + r] ?? 0;
    }
    return order;
  }
}

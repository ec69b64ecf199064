/**
 * The computed order for more holes than can be done exactly: the least peak by a narrowing limit, then a wider
 * search just below what was found; the order by swaps within what a peak may lose.
 */
import { beam, type Ranking, type Width } from './beam.ts';
import { BOUND, isFree, limitOf } from './bound.ts';
import type { Computed } from './exact.ts';
import { type Field, pullField } from './field.ts';
import { polish } from './polish.ts';
import { EPSILON, measure, type Task } from './vectors.ts';

interface Effort extends Width {
  rankings: readonly Ranking[];
  /** How often the limit is narrowed. */
  rounds: number;
  /** Weights of long pulls against cost to try. */
  weights: readonly number[];
  /** Partial orders kept in the last search, just below what was found; 0 for none. */
  wide: number;
}

/** How much is tried for n holes: less for many, so that a thousand take no longer than 0.1 s. */
function effortFor(n: number): Effort {
  const kept = Math.round(Math.min(32, Math.max(8, 6000 / n)));
  const wide = Math.round(Math.min(500, Math.max(200, 12_000 / n)));
  const both = ['hard', 'even'] as const;
  if (n <= 60) return { kept, tried: 32, rankings: both, rounds: 7, weights: [0, 1, 4, 16], wide };
  if (n <= 200) return { kept, tried: 8, rankings: both, rounds: 4, weights: [1, 16], wide: 0 };
  return { kept, tried: 8, rankings: ['hard'], rounds: 2, weights: [4], wide: 0 };
}

/** A peak this little above what cannot be undercut is not worth more searching. */
const NEAR_ENOUGH = 0.02;

interface Found {
  /** Places in the field. */
  order: number[];
  peak: number;
}

function search(
  field: Field,
  limit: number,
  width: Width & { rankings: readonly Ranking[] },
): Found | null {
  for (const ranking of width.rankings) {
    const order = beam(field, limit, ranking, width);
    if (order !== null) return { order, peak: peakOf(field, order) };
  }
  return null;
}

function peakOf({ x, y, start }: Field, order: readonly number[]): number {
  let [sx, sy, peak] = [start.x, start.y, 0];
  for (const i of order) {
    sx += x[i] ?? 0;
    sy += y[i] ?? 0;
    peak = Math.max(peak, Math.hypot(sx, sy));
  }
  return peak;
}

/**
 * No order has a lesser peak: some first hole must be tightened, the whole must end where it ends, and the
 * longest pull takes the sum from one side of it to the other.
 */
function floor({ n, x, y, start, to }: Field): number {
  let [first, half, ex, ey] = [Number.POSITIVE_INFINITY, 0, start.x, start.y];
  for (let i = 0; i < n; i += 1) {
    const [vx, vy] = [x[i] ?? 0, y[i] ?? 0];
    if (i < (to[0] ?? n)) first = Math.min(first, Math.hypot(start.x + vx, start.y + vy));
    half = Math.max(half, Math.hypot(vx, vy) / 2);
    ex += vx;
    ey += vy;
  }
  return Math.max(n > 0 ? first : 0, start.count === 0 ? half : 0, Math.hypot(ex, ey));
}

export function wideOrder(task: Task): Computed {
  const field = pullField(task);
  const effort = effortFor(field.n);
  const lowest = floor(field);
  const found = leastPeak(field, lowest, effort, isFree(task));
  const limit = limitOf(task, found.peak);
  const orders = [found.order, ...cheap(field, limit, effort)].map((places) => {
    const order = polish(
      task,
      [...places].map((place) => field.hole[place] ?? 0),
      limit,
    );
    return { order, ...measure(task, order) };
  });
  orders.sort((a, b) => a.neighbours - b.neighbours || a.cost - b.cost);
  const best = Math.min(found.peak, ...orders.map((o) => o.peak));
  return { order: orders[0]?.order ?? [], best, exact: best <= lowest + EPSILON };
}

/** The lowest limit that the search keeps to: near the floor if it can, else by halves. */
function leastPeak(field: Field, lowest: number, effort: Effort, free: boolean): Found {
  const near = lowest * (1 + NEAR_ENOUGH);
  let found = search(field, near, effort);
  let low = found === null ? near : lowest;
  found ??= start(field, effort, free);
  for (let round = 0; round < effort.rounds && found.peak > low * (1 + NEAR_ENOUGH); round += 1) {
    const limit = (low + found.peak) / 2;
    const next = search(field, limit, effort);
    if (next === null) low = limit;
    else found = next;
  }
  return effort.wide > 0 ? widen(field, found, lowest, { ...effort, kept: effort.wide }) : found;
}

/**
 * A first order: within the bound if the search finds one, at last with every hole tried at every step; else
 * within what it can keep to.
 */
function start(field: Field, effort: Effort, free: boolean): Found {
  const every = { tried: field.n, rankings: ['even', 'smooth'] as const };
  const wider = [8, 32, 128].map((kept) => ({ ...every, kept }));
  for (const width of free ? [effort, ...wider] : [effort]) {
    const found = search(field, BOUND, width);
    if (found !== null) return found;
  }
  for (let limit = BOUND * 1.1; ; limit *= 1.25) {
    const found = search(field, limit, effort);
    if (found !== null) return found;
  }
}

/** Steps of a few per cent down, with a wide search, until one is not found. */
function widen(field: Field, from: Found, lowest: number, effort: Effort): Found {
  let found = from;
  while (found.peak > lowest * (1 + NEAR_ENOUGH)) {
    const next = search(field, Math.max(lowest, found.peak * 0.97), effort);
    if (next === null) return found;
    found = next;
  }
  return found;
}

/** Orders that cost little, as far as the search finds them. */
function cheap(field: Field, limit: number, effort: Effort): number[][] {
  return effort.weights.flatMap((cost) => {
    const order = beam(field, limit, { cost }, effort);
    return order === null ? [] : [order];
  });
}

/**
 * The computed order for more holes than can be done exactly: the least peak by a narrowing limit, then a wider
 * search just below what was found; the order by swaps within what a peak may lose.
 */
import { beam, type Ranking, type Width } from './beam.ts';
import { BOUND, isFree, limitOf } from './bound.ts';
import type { Computed } from './exact.ts';
import { type Field, fieldOf } from './field.ts';
import { polish } from './polish.ts';
import { EPSILON, measure, type Task } from './vectors.ts';

const RANKINGS: readonly Ranking[] = ['hard', 'even'];

/** From here on less is tried, so that a thousand holes take no longer than sixty. */
const MANY = 60;
/** A peak this little above what cannot be undercut is not worth more searching. */
const NEAR_ENOUGH = 0.02;

interface Found {
  /** Places in the field. */
  order: number[];
  peak: number;
}

function search(field: Field, limit: number, width: Width): Found | null {
  for (const ranking of RANKINGS) {
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
    if (start.count === 0 || i > 0) half = Math.max(half, Math.hypot(vx, vy) / 2);
    ex += vx;
    ey += vy;
  }
  return Math.max(n > 0 ? first : 0, start.count === 0 ? half : 0, Math.hypot(ex, ey));
}

export function wideOrder(task: Task): Computed {
  const field = fieldOf(task);
  const n = field.n;
  const width: Width =
    n <= MANY ? { kept: 32, tried: 32 } : { kept: clamp(6000 / n, 8, 32), tried: 8 };
  const lowest = floor(field);
  const found = leastPeak(field, lowest, width, isFree(task));
  const limit = limitOf(task, found.peak);
  const orders = [found.order, ...cheap(field, limit, width)].map((order) =>
    polish(
      task,
      order.map((place) => field.hole[place] ?? 0),
      limit,
    ),
  );
  const [order = []] = orders
    .map((o) => ({ o, ...measure(task, o) }))
    .sort((a, b) => a.neighbours - b.neighbours || a.cost - b.cost)
    .map(({ o }) => o);
  const best = Math.min(found.peak, ...orders.map((o) => measure(task, o).peak));
  return { order, best, exact: best <= lowest + EPSILON };
}

/** The lowest limit that the search keeps to: near the floor if it can, else by halves. */
function leastPeak(field: Field, lowest: number, width: Width, free: boolean): Found {
  const few = field.n <= MANY;
  let low = lowest;
  let found: Found | null = null;
  for (const share of [1.0005, 1 + NEAR_ENOUGH]) {
    if (found !== null) break;
    found = search(field, lowest * share, width);
    if (found === null) low = lowest * share;
  }
  found ??= start(field, width, free);
  for (let round = 0; round < (few ? 7 : 4) && found.peak > low * (1 + NEAR_ENOUGH); round += 1) {
    const limit = (low + found.peak) / 2;
    const next = search(field, limit, width);
    if (next === null) low = limit;
    else found = next;
  }
  return few
    ? widen(field, found, lowest, { kept: clamp(12_000 / field.n, 200, 500), tried: 32 })
    : found;
}

/** Orders that cost little, as far as the search finds them. */
function cheap(field: Field, limit: number, width: Width): number[][] {
  return [0, 1, 4, 16].flatMap((weight) => {
    const order = beam(field, limit, { cost: weight }, width);
    return order === null ? [] : [order];
  });
}

function clamp(value: number, least: number, most: number): number {
  return Math.round(Math.min(most, Math.max(least, value)));
}

/** A first order: within the bound if the search finds one, however wide; else within what it can keep to. */
function start(field: Field, width: Width, free: boolean): Found {
  const wider = [4, 16, 64].map((times) => ({ kept: width.kept * times, tried: width.tried }));
  for (const w of free ? [width, ...wider] : [width]) {
    const found = search(field, BOUND, w);
    if (found !== null) return found;
  }
  for (let limit = BOUND * 1.1; ; limit *= 1.25) {
    const found = search(field, limit, width);
    if (found !== null) return found;
  }
}

/** Steps of a few per cent down, with a wide search, until one is not found. */
function widen(field: Field, from: Found, lowest: number, width: Width): Found {
  let found = from;
  while (found.peak > lowest * (1 + NEAR_ENOUGH)) {
    const next = search(field, Math.max(lowest, found.peak * 0.97), width);
    if (next === null) return found;
    found = next;
  }
  return found;
}

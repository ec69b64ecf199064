/**
 * The cross pattern of an evenly spaced circle, as it is published: opposite pairs, or opposite pairs of
 * opposite pairs, each next group in the middle of the largest gap.
 *
 * Source: cross pattern tables of ASME PCC-1 (2010 to 2019), one tool: 4, 8, 12, 16 and 24 bolts as printed in
 * independent summaries; 20, 28 and 32 from memory.
 */
import { computedOrder } from './computed.ts';
import { EPSILON, type Vectors, vectors } from './vectors.ts';

/** Counts of bolts that the table named above has. */
export const PUBLISHED: ReadonlySet<number> = new Set([4, 8, 12, 16, 20, 24, 28, 32]);

/** Odd circles that are in print: the five-pointed star, and the quarter starts of the row for 28. */
const ODD = new Map([
  [5, [1, 3, 5, 2, 4]],
  [7, [1, 4, 6, 2, 5, 7, 3]],
]);

/** Bolts 1…n in their order, numbered round. Other odd numbers: what tilts the circle least. */
function crossPattern(n: number): number[] {
  if (n <= 3) return Array.from({ length: n }, (_, i) => i + 1);
  const parts = n % 4 === 0 ? [0, n / 2, n / 4, (3 * n) / 4] : n % 2 === 0 ? [0, n / 2] : null;
  if (parts !== null) {
    return crossPattern(n / parts.length).flatMap((start) => parts.map((part) => start + part));
  }
  return ODD.get(n) ?? computedCircle(n);
}

/** Is the order for n a cross, or what was computed? */
export function isCross(n: number): boolean {
  return n % 2 === 0 ? isCross(n / 2) : n <= 3 || ODD.has(n);
}

function computedCircle(n: number): number[] {
  const turn = (i: number) => (2 * Math.PI * i) / n;
  const all = Array.from({ length: n }, (_, i) => i);
  const v = vectors(all.map((i) => ({ x: Math.sin(turn(i)), y: -Math.cos(turn(i)) })));
  const { order } = computedOrder({ v, rank: all.map(() => 0), done: [], left: all });
  // A turned ring is the same ring: the order is turned so that it begins at 1.
  return order.map((i) => ((i - (order[0] ?? 0) + n) % n) + 1);
}

/** How far from the common circle, as a share of R; and from the even step, as a share of the step. */
const OFF_CIRCLE = 0.06;
const OFF_STEP = 1 / 6;

/**
 * The holes round the circle in the direction of their numbering, from the first; null where they are not
 * evenly spaced on a common circle.
 */
export function circleOf(v: Vectors): number[] | null {
  const n = v.n;
  if (n < 3) return null;
  const holes = [...v.x.keys()].map((i) => {
    const [x, y] = [v.x[i] ?? 0, v.y[i] ?? 0];
    return { i, r: Math.hypot(x, y), turn: Math.atan2(y, x) };
  });
  if (holes.some((h) => h.r < 1 - OFF_CIRCLE - EPSILON)) return null;
  holes.sort((a, b) => a.turn - b.turn);
  const step = (2 * Math.PI) / n;
  const off = holes.map((h, k) => h.turn - k * step);
  if (Math.max(...off) - Math.min(...off) > 2 * OFF_STEP * step + EPSILON) return null;
  return numberedWay(holes.map((h) => h.i));
}

/** Turned so that the first hole leads, and reversed where most numbers run anticlockwise. */
function numberedWay(around: readonly number[]): number[] {
  const n = around.length;
  const lead = around.indexOf(Math.min(...around));
  const turned = around.map((_, k) => around[(lead + k) % n] ?? 0);
  const back = [...turned.slice(0, 1), ...turned.slice(1).reverse()];
  const rises = (way: readonly number[]) =>
    way.filter((hole, k) => hole > (way[k - 1] ?? n)).length;
  return rises(turned) >= rises(back) ? turned : back;
}

/** The published order on a circle of holes, starting from `start`. */
export function crossOrder(circle: readonly number[], start: number): number[] {
  const n = circle.length;
  const lead = Math.max(0, circle.indexOf(start));
  return crossPattern(n).map((bolt) => circle[(lead + bolt - 1) % n] ?? 0);
}

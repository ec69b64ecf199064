/**
 * How far an order may tilt a piece, against what is in print about sums of vectors in the plane.
 *
 * Steinitz's lemma: vectors no longer than 1 with sum 0 can be ordered so that no partial sum is longer than a
 * constant of the dimension. Sources: Ambrus and Heck, A note on the Steinitz Lemma, arXiv:2505.09465; Ambrus,
 * Bárány and Grinberg, Small subset sums, arXiv:1502.04027: the constant is at most d for every norm (Grinberg
 * and Sevastyanov 1980), 2 in the plane. For the Euclidean plane it is √5/2 (Bergström 1931; from memory, the
 * value was not seen in print while the facts were collected).
 */
import { describe, expect, test } from 'vitest';
import { BOUND } from '../../src/piece/sequence/bound.ts';
import { exactOrder, MOST_EXACT } from '../../src/piece/sequence/exact.ts';
import { measure } from '../../src/piece/sequence/vectors.ts';
import { compute, extremal, FAMILIES, seeded, taskOf, times } from '../piece/sequence/layouts.ts';

/** Bound in the plane that was seen in print. */
const IN_PRINT = 2;

/**
 * Least possible peaks of the family that comes closest to √5/2: 2k + 1 vectors, computed over counts of each of
 * the three kinds, apart from the program (computed while the facts were collected, not in print).
 */
const EXTREMAL: [k: number, peak: number][] = [
  [1, 1],
  [2, 1],
  [3, 1.105541596785],
  [5, 1.113552872566],
  [7, 1.115749953701],
  [10, 1.09544511501],
  [11, 1.117109611586],
  [50, 1.113552872566],
  [51, 1.117991003149],
  [200, 1.116915395184],
  [1000, 1.117810359587],
];

const ring = (n: number) =>
  times(n, (i) => ({ x: Math.cos((2 * Math.PI * i) / n), y: Math.sin((2 * Math.PI * i) / n) }));

describe('the extremal family', () => {
  test.each(EXTREMAL)('k = %i: the least peak is %d', (k, peak) => {
    const { task, order, best, exact } = compute(extremal(k));
    expect(exact || task.v.n > MOST_EXACT).toBe(true);
    expect(best).toBeCloseTo(peak, 9);
    expect(measure(task, order).peak).toBeLessThanOrEqual(BOUND + 1e-9);
    expect(BOUND).toBeLessThan(IN_PRINT);
  });
});

describe('evenly spaced circles', () => {
  test.each([3, 4, 5, 6, 7, 8, 9, 10, 12, 16])('%i bolts: the least peak is one bolt', (n) => {
    expect(exactOrder(taskOf(ring(n))).best).toBeCloseTo(1, 9);
  });

  test.each([
    // Largest partial sums of unit vectors along an order, computed while the facts were collected.
    [5, '1-2-3-4-5', 1.618034],
    [5, '1-3-5-2-4', 1],
    [6, '1-4-2-5-3-6', 1],
    [8, '1-5-3-7-2-6-4-8', 1],
    [8, '1-2-3-4-5-6-7-8', 2.613126],
    [12, '1-7-4-10-2-8-5-11-3-9-6-12', 1],
    [12, '1-2-3-4-5-6-7-8-9-10-11-12', 3.863703],
  ])('%i bolts in the order %s tilt by %d', (n, order, peak) => {
    const task = taskOf(ring(n));
    const found = measure(
      task,
      order.split('-').map((bolt) => Number(bolt) - 1),
    );
    expect(found.peak).toBeCloseTo(peak, 6);
  });

  test.each([4, 8, 10, 16, 24])('once round %i bolts tilts by 1/sin(π/n)', (n) => {
    // Closed form of the largest chord sum of a regular polygon: geometry, no source needed.
    const found = measure(
      taskOf(ring(n)),
      times(n, (i) => i),
    );
    expect(found.peak).toBeCloseTo(1 / Math.sin(Math.PI / n), 9);
  });
});

describe('layouts without any shape', () => {
  test.each(Object.keys(FAMILIES))('keep to √5/2: %s', (family) => {
    const random = seeded(31);
    for (const n of [5, 8, 11, 14, 19, 33, 57, 82, 140]) {
      const points = FAMILIES[family]?.(n, random) ?? [];
      const { task, order } = compute(points);
      expect(measure(task, order).peak).toBeLessThanOrEqual(BOUND + 1e-9);
    }
  });
});

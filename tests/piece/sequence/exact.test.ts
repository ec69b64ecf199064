/** Up to sixteen holes the computed order is the best there is: against trying all orders. */
import { describe, expect, test } from 'vitest';
import { measure, type Point } from '../../../src/piece/sequence/vectors.ts';
import { brute, leastPeak } from './brute.ts';
import { compute, FAMILIES, seeded, times } from './layouts.ts';

function agree(points: readonly Point[], given: { done?: number[]; rank?: number[] } = {}) {
  const { task, order, best, exact } = compute(points, given);
  const all = brute(points, given);
  expect(exact).toBe(true);
  expect(best).toBeCloseTo(all.best, 9);
  const { neighbours, cost, peak } = measure(task, order);
  expect(peak).toBeLessThanOrEqual(1.05 * best + 1e-8);
  expect(neighbours).toBe(all.neighbours);
  expect(cost).toBeCloseTo(all.cost, 8);
  expect(order).toEqual(all.order);
}

describe('of all orders the computed one is the best', () => {
  test('on a thousand scattered layouts of up to eight holes', () => {
    const random = seeded(4);
    for (let round = 0; round < 1000; round += 1) {
      const n = 2 + (round % 7);
      agree(times(n, () => ({ x: random() * 100, y: random() * 80 })));
    }
  });

  test('on drawn maps, where many orders are equally good', () => {
    const random = seeded(5);
    for (let round = 0; round < 200; round += 1) {
      const cells = times(4 + (round % 4), () => ({
        x: Math.floor(random() * 4),
        y: Math.floor(random() * 4),
      }));
      agree(cells);
    }
  });

  test('with bolts that are tight already', () => {
    const random = seeded(6);
    for (let round = 0; round < 150; round += 1) {
      const n = 5 + (round % 4);
      const done = times(1 + (round % 3), (i) => (i * 2 + round) % n);
      agree(
        times(n, () => ({ x: random(), y: random() })),
        { done: [...new Set(done)] },
      );
    }
  });

  test('with holes that come first, and groups', () => {
    const random = seeded(7);
    for (let round = 0; round < 150; round += 1) {
      const n = 4 + (round % 5);
      const rank = times(n, () => Math.floor(random() * 3));
      agree(
        times(n, () => ({ x: random(), y: random() })),
        { rank },
      );
    }
  });

  test('the least tilt of nine holes', () => {
    const random = seeded(9);
    for (const [name, family] of Object.entries(FAMILIES)) {
      for (let round = 0; round < 6; round += 1) {
        const points = family(9, random);
        expect(compute(points).best, name).toBeCloseTo(leastPeak(points), 9);
      }
    }
  });
});

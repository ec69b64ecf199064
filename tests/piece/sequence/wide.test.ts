/** Beyond sixteen holes: near the least tilt that is known, and never a worse order for being polished. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { exactOrder } from '../../../src/piece/sequence/exact.ts';
import { polish } from '../../../src/piece/sequence/polish.ts';
import { measure } from '../../../src/piece/sequence/vectors.ts';
import { wideOrder } from '../../../src/piece/sequence/wide.ts';
import { BEST_KNOWN } from './best-known.ts';
import { compute, FAMILIES, seeded, taskOf, times } from './layouts.ts';

describe('many holes', () => {
  test.each(BEST_KNOWN)(
    '%s, %i holes: within 5 % of the best known peak, %d',
    (family, n, known) => {
      const { task, order, best, exact } = compute(FAMILIES[family]?.(n, seeded(n)) ?? []);
      expect(best).toBeLessThanOrEqual(1.05 * known);
      expect(measure(task, order).peak).toBeLessThanOrEqual(1.05 * best + 1e-9);
      if (exact) expect(known).toBeGreaterThanOrEqual(best - 1e-4);
    },
  );

  test.each(Object.keys(FAMILIES))(
    'the search comes within 5 % of the exact peak: %s',
    (family) => {
      const random = seeded(16);
      for (let round = 0; round < 12; round += 1) {
        const task = taskOf(FAMILIES[family]?.(6 + (round % 8), random) ?? []);
        const [searched, exact] = [wideOrder(task), exactOrder(task)];
        expect(searched.best).toBeGreaterThanOrEqual(exact.best - 1e-9);
        expect(searched.best).toBeLessThanOrEqual(1.05 * exact.best + 1e-9);
        const [a, b] = [measure(task, searched.order), measure(task, exact.order)];
        expect(a.neighbours).toBeGreaterThanOrEqual(0);
        // What is within the exact limit is never better than the exact order.
        if (a.peak <= 1.05 * exact.best) {
          expect(a.neighbours * 1e6 + a.cost).toBeGreaterThanOrEqual(
            b.neighbours * 1e6 + b.cost - 1e-6,
          );
        }
      }
    },
  );

  test('of forty on a circle the least peak is known to be one bolt', () => {
    const ring = times(40, (i) => ({
      x: Math.sin((i * Math.PI) / 20),
      y: Math.cos((i * Math.PI) / 20),
    }));
    const { best, exact } = compute(ring);
    expect(best).toBeCloseTo(1, 9);
    expect(exact).toBe(true);
  });

  test('what is done, groups and holes that come first count here too', () => {
    const random = seeded(3);
    const points = FAMILIES.scattered?.(40, random) ?? [];
    const rank = times(40, (i) => (i < 2 ? i - 2 : i % 3));
    const { task, order, best } = compute(points, { rank, done: [5, 6, 7] });
    expect(order.slice(0, 2)).toEqual([0, 1]);
    expect(order).toHaveLength(37);
    expect(measure(task, order).peak).toBeLessThanOrEqual(1.05 * best + 1e-9);
  });

  test('a thousand on a few spots of a grid, and a thousand on one spot', () => {
    const { order } = compute(FAMILIES['on a grid']?.(1000, seeded(1)) ?? []);
    expect(new Set(order).size).toBe(1000);
    expect(compute(times(1000, () => ({ x: 2, y: 2 }))).best).toBe(0);
  });
});

describe('swapping two holes', () => {
  test('never makes an order worse, nor loses a hole, nor breaks a limit or a rank', () => {
    const arrays = fc.array(
      fc.tuple(fc.integer({ min: 0, max: 9 }), fc.integer({ min: 0, max: 9 })),
      {
        minLength: 2,
        maxLength: 20,
      },
    );
    fc.assert(
      fc.property(arrays, fc.nat(1), (cells, ranks) => {
        const points = cells.map(([x, y]) => ({ x, y }));
        const rank = points.map((_, i) => (ranks === 0 ? 0 : i % 2));
        const task = taskOf(points, { rank });
        const order = [...task.left].sort((a, b) => (rank[a] ?? 0) - (rank[b] ?? 0));
        const before = measure(task, order);
        const better = polish(task, order, before.peak);
        const after = measure(task, better);
        expect([...better].sort((a, b) => a - b)).toEqual(task.left);
        expect(better.map((i) => rank[i])).toEqual(order.map((i) => rank[i]));
        expect(after.peak).toBeLessThanOrEqual(before.peak + 1e-8);
        expect(after.neighbours).toBeLessThanOrEqual(before.neighbours);
        if (after.neighbours === before.neighbours) {
          expect(after.cost).toBeLessThanOrEqual(before.cost + 1e-6);
        }
      }),
      { numRuns: 300 },
    );
  });
});

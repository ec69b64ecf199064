/** What must hold for the order of any layout, and how it may change when the layout is turned, drawn or named anew. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { BOUND } from '../../../src/piece/sequence/bound.ts';
import { measure, type Point } from '../../../src/piece/sequence/vectors.ts';
import { compute, extremal, FAMILIES, seeded, times } from './layouts.ts';

const coordinate = fc.double({ min: -50, max: 50, noNaN: true });
const cell = fc.integer({ min: 0, max: 6 });
const point = fc.oneof(
  fc.record({ x: coordinate, y: coordinate }),
  fc.record({ x: cell, y: cell }),
);
const points = (maxLength: number) => fc.array(point, { minLength: 1, maxLength });
/** Layouts without ties: from a seed, so that no two sums are equal by chance. */
const generic = fc
  .tuple(fc.integer({ min: 3, max: 11 }), fc.integer(), fc.constantFrom(...Object.keys(FAMILIES)))
  .filter(([, , name]) => name !== 'on a grid')
  .map(([n, seed, name]) => FAMILIES[name]?.(n, seeded(seed)) ?? []);

const figures = (p: readonly Point[]) => {
  const { task, order, best } = compute(p);
  const { neighbours, cost, peak } = measure(task, order);
  return { order, best, neighbours, cost, peak };
};

function same(a: ReturnType<typeof figures>, b: ReturnType<typeof figures>): void {
  expect(b.best).toBeCloseTo(a.best, 8);
  expect(b.neighbours).toBe(a.neighbours);
  expect(b.cost).toBeCloseTo(a.cost, 6);
}

describe('whatever the layout', () => {
  test('each hole that is left comes once', () => {
    fc.assert(
      fc.property(points(40), fc.array(fc.nat(39), { maxLength: 5 }), (p, some) => {
        const done = [...new Set(some.filter((i) => i < p.length))];
        const { order } = compute(p, { done });
        const left = times(p.length, (i) => i).filter((i) => !done.includes(i));
        expect([...order].sort((a, b) => a - b)).toEqual(left);
      }),
      { numRuns: 200 },
    );
  });

  test('a lower rank comes first', () => {
    fc.assert(
      fc.property(points(24), fc.array(fc.nat(2), { minLength: 24, maxLength: 24 }), (p, ranks) => {
        const rank = ranks.slice(0, p.length);
        const { order } = compute(p, { rank });
        const seen = order.map((i) => rank[i] ?? 0);
        expect(seen).toEqual([...seen].sort((a, b) => a - b));
      }),
      { numRuns: 100 },
    );
  });

  test('twice asked, twice the same answer', () => {
    fc.assert(
      fc.property(points(30), (p) => {
        expect(compute(p).order).toEqual(compute(p).order);
      }),
      { numRuns: 60 },
    );
  });
});

describe('turned, moved, enlarged and mirrored', () => {
  const change = fc.record({
    angle: fc.double({ min: 0, max: 6.3, noNaN: true }),
    scale: fc.double({ min: 0.01, max: 100, noNaN: true }),
    dx: coordinate,
    dy: coordinate,
    mirror: fc.boolean(),
  });

  test('a layout keeps its order and its figures', () => {
    fc.assert(
      fc.property(generic, change, (p, { angle, scale, dx, dy, mirror }) => {
        const [c, s] = [Math.cos(angle) * scale, Math.sin(angle) * scale];
        const other = p.map(({ x, y }) => {
          const across = mirror ? -x : x;
          return { x: c * across - s * y + dx, y: s * across + c * y + dy };
        });
        const [a, b] = [figures(p), figures(other)];
        same(a, b);
        expect(b.order).toEqual(a.order);
        expect(b.peak).toBeCloseTo(a.peak, 8);
      }),
      { numRuns: 300 },
    );
  });

  test('a drawn map, full of ties, keeps its figures', () => {
    const drawn = fc.array(fc.record({ x: cell, y: cell }), { minLength: 2, maxLength: 10 });
    fc.assert(
      fc.property(drawn, change, (p, { angle, mirror }) => {
        const [c, s] = [Math.cos(angle), Math.sin(angle)];
        const other = p.map(({ x, y }) => {
          const across = mirror ? -x : x;
          return { x: c * across - s * y, y: s * across + c * y };
        });
        same(figures(p), figures(other));
      }),
      { numRuns: 300 },
    );
  });
});

describe('under other names', () => {
  const shuffled = fc
    .tuple(generic, fc.array(fc.nat(), { minLength: 11, maxLength: 11 }))
    .map(([p, keys]) => {
      const names = times(p.length, (i) => i);
      return { p, names: names.sort((a, b) => (keys[a] ?? 0) - (keys[b] ?? 0) || a - b) };
    });

  test('the figures stay, and the same pairs of holes come in the same order', () => {
    fc.assert(
      fc.property(shuffled, ({ p, names }) => {
        const a = figures(p);
        const b = figures(names.flatMap((i) => p[i] ?? []));
        same(a, b);
        expect(b.peak).toBeLessThanOrEqual(1.05 * a.best + 1e-6);
        // Cost counts after every second bolt, so within a pair the order of the file decides.
        const pairs = (order: readonly number[]) =>
          times(Math.ceil(order.length / 2), (k) =>
            order.slice(2 * k, 2 * k + 2).sort((x, y) => x - y),
          );
        expect(pairs(b.order.map((i) => names[i] ?? -1))).toEqual(pairs(a.order));
      }),
      { numRuns: 300 },
    );
  });

  test('of a layout with a symmetry the order is its image, figure by figure', () => {
    const half = fc.array(point, { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(half, (p) => {
        const left = p.map(({ x, y }) => ({ x: -Math.abs(x) - 1, y }));
        const right = left.map(({ x, y }) => ({ x: -x, y }));
        same(figures([...left, ...right]), figures([...right, ...left]));
      }),
      { numRuns: 200 },
    );
  });
});

describe('layouts at the edge', () => {
  test('one hole', () => {
    expect(figures([{ x: 3, y: 4 }])).toEqual({
      order: [0],
      best: 0,
      neighbours: 0,
      cost: 0,
      peak: 0,
    });
  });

  test('none', () => {
    expect(compute([]).order).toEqual([]);
  });

  test('two holes: in the order of the file', () => {
    const { order, best } = figures([
      { x: 9, y: 0 },
      { x: 0, y: 0 },
    ]);
    expect(order).toEqual([0, 1]);
    expect(best).toBeCloseTo(1, 12);
  });

  test('all on one spot, near the origin or far from it: in the order of the file, nothing tilts', () => {
    for (const x of [0, 0.1, 123_456.7]) {
      expect(figures(times(5, () => ({ x, y: x })))).toEqual({
        ...{ order: [0, 1, 2, 3, 4], best: 0, neighbours: 0, cost: 0, peak: 0 },
      });
    }
  });

  test('all on a line: from the sides in turn, never more than the longest pull', () => {
    const { order, best, peak } = figures(times(7, (i) => ({ x: i, y: 2 * i })));
    expect(order).toHaveLength(7);
    expect(best).toBeCloseTo(2 / 3, 9);
    expect(peak).toBeLessThanOrEqual(1.05 * best + 1e-9);
  });

  test('two holes on one spot among others: the first of the file first', () => {
    const { order } = figures([
      ...[
        { x: 0, y: 0 },
        { x: 4, y: 0 },
        { x: 4, y: 3 },
      ],
      ...[
        { x: 4, y: 3 },
        { x: 0, y: 3 },
      ],
    ]);
    expect(order.indexOf(2)).toBeLessThan(order.indexOf(3));
  });
});

describe('the bound of the plane, √5/2', () => {
  test.each(Object.keys(FAMILIES))('is kept by every layout tried: %s', (name) => {
    const random = seeded(name.length);
    for (let round = 0; round < 30; round += 1) {
      const n = 3 + Math.floor(random() * 60);
      const { task, order, best } = compute(FAMILIES[name]?.(n, random) ?? []);
      expect(best).toBeLessThanOrEqual(BOUND + 1e-9);
      expect(measure(task, order).peak, `${name}, ${n} holes`).toBeLessThanOrEqual(BOUND + 1e-9);
    }
  });

  test.each([110, 140, 180])(
    'is kept where the odd one out is hard to find among %i holes',
    (n) => {
      const random = seeded(n);
      for (const shake of [0.003, 0.01, 0.02, 0.05]) {
        const points = extremal(n / 2).map(({ x, y }) => ({
          x: x + shake * (random() - 0.5),
          y: y + shake * (random() - 0.5),
        }));
        const { task, order } = compute(points);
        expect(measure(task, order).peak, `${shake}`).toBeLessThanOrEqual(BOUND + 1e-9);
      }
    },
  );

  test.each([1, 2, 3, 5, 7, 10, 20, 50, 200])('is kept by the extremal family, k = %i', (k) => {
    const { task, order } = compute(extremal(k));
    expect(measure(task, order).peak).toBeLessThanOrEqual(BOUND + 1e-9);
  });
});

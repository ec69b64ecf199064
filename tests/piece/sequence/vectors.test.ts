/** Holes as pulls: which lie beside each other, and what an order adds up to. */
import { describe, expect, test } from 'vitest';
import { adjacent, measure, vectors } from '../../../src/piece/sequence/vectors.ts';
import { taskOf } from './layouts.ts';

describe('holes beside each other', () => {
  test('are next in angle round the middle, also across the end of the count', () => {
    const v = vectors([
      ...[
        { x: 0, y: -1 },
        { x: 1, y: -1 },
        { x: 1, y: 1 },
      ],
      ...[
        { x: 0, y: 1 },
        { x: -1, y: 1 },
        { x: -1, y: -1 },
      ],
    ]);
    const beside = (i: number) => [0, 1, 2, 3, 4, 5].filter((j) => j !== i && adjacent(v, i, j));
    expect(beside(0)).toEqual([1, 5]);
    expect(beside(3)).toEqual([2, 4]);
    expect(beside(5)).toEqual([0, 4]);
  });

  test('also lie at one angle, even where rounding puts one at half a turn and one at minus that', () => {
    const v = vectors([
      ...[
        { x: -2, y: 1e-17 },
        { x: -1, y: -1e-17 },
        { x: 1, y: 2 },
        { x: 2, y: -2 },
      ],
    ]);
    expect(Math.sign(v.y[0] ?? 0)).not.toBe(Math.sign(v.y[1] ?? 0));
    expect(v.sectors).toBe(3);
    expect(adjacent(v, 0, 1)).toBe(true);
  });

  test('a hole in the middle lies beside none', () => {
    const v = vectors([
      ...[
        { x: 0, y: 0 },
        { x: 1, y: 0 },
        { x: -1, y: 0 },
        { x: 0, y: 1 },
        { x: 0, y: -1 },
      ],
    ]);
    expect([1, 2, 3, 4].some((i) => adjacent(v, 0, i))).toBe(false);
    expect(adjacent(v, 1, 3)).toBe(true);
    expect(adjacent(v, 1, 2)).toBe(false);
  });
});

describe('what an order adds up to', () => {
  const square = [
    { x: 0, y: -1 },
    { x: 1, y: 0 },
    { x: 0, y: 1 },
    { x: -1, y: 0 },
  ];

  test('four on a circle, once round: by hand', () => {
    // b = 1, √2, 1, 0; Σ v² = −1, 0, −1, 0; three steps to a neighbour.
    const found = measure(taskOf(square), [0, 1, 2, 3]);
    expect(found.peak).toBeCloseTo(Math.SQRT2, 12);
    expect(found.mean).toBeCloseTo((2 + Math.SQRT2) / 4, 12);
    expect(found.cost).toBeCloseTo(8, 12);
    expect(found.neighbours).toBe(3);
  });

  test('four on a circle, crosswise: by hand', () => {
    // b = 1, 0, 1, 0; Σ v² = −1, −2, −1, 0; one step to a neighbour, from the first pair to the second.
    const found = measure(taskOf(square), [0, 2, 1, 3]);
    expect(found).toEqual({ peak: 1, mean: 0.5, cost: 4, neighbours: 1 });
  });

  test('what is done counts in the sums and in the parity', () => {
    // After 1: b = 0 with two tight, Σ v² = −2; then 1 and 0.
    const found = measure(taskOf(square, { done: [0] }), [2, 1, 3]);
    expect(found.peak).toBe(1);
    expect(found.cost).toBeCloseTo(4, 12);
  });
});

/** Beyond sixteen suspects: a way that is known, and a bound that no way can undercut. */
import { describe, expect, test } from 'vitest';
import { bestWay, byBounds } from '../../src/trace/search/best.ts';
import { depthBound } from '../../src/trace/search/depth.ts';
import { pairsBounds } from '../../src/trace/search/pairs.ts';
import { pricesOf } from '../../src/trace/search/prices.ts';
import { optionsAt, type Problem, startOf } from '../../src/trace/search/problem.ts';
import { search } from '../../src/trace/search/search.ts';
import { trace } from '../../src/trace/trace.ts';
import { minutesOfWay } from './brute.ts';
import { randomCase, type Sizes, seeded } from './cases.ts';

/** `CASES=200` for as many as the figures measure. */
const CASES = Number(process.env.CASES ?? 4);

describe('thirty suspects', () => {
  test.each([
    ['many', [0.1, 0.5]],
    ['few', [0.03, 0.2]],
  ] as const)(
    'the way told is at most a quarter from the best, where checks show %s',
    (_, shows) => {
      const random = seeded(30);
      for (let round = 0; round < CASES; round += 1) {
        const sizes: Sizes = {
          ...{ suspects: 30, checks: 20 + Math.floor(random() * 30), covers: 0 },
          shows,
        };
        const input = randomCase(random, sizes);
        const { expected, way } = trace(input);
        expect(expected.bound).toBeLessThanOrEqual(expected.minutes);
        expect(expected.ratio).toBeLessThanOrEqual(1.25);
        expect(minutesOfWay(way, input)).toBeCloseTo(expected.minutes, 9);
      }
    },
  );
});

/** Up to nine states that some test tells apart. */
function randomProblem(random: () => number, covers: number): Problem {
  const n = 3 + Math.floor(random() * 7);
  const upTo = (most: number) => Math.floor(random() * most);
  const row = (share: number) => Uint8Array.from({ length: n }, () => +(random() < share));
  const ones = Array.from({ length: n }, (_, i) =>
    Uint8Array.from({ length: n }, (_, k) => +(i === k)),
  );
  const some = Array.from({ length: 6 }, () => row(0.1 + random() * 0.5));
  return {
    p: Array.from({ length: n }, () => 1 + upTo(9)),
    tests: [...ones, ...some].map((d) => ({
      ...{ c: upTo(9), d },
      behind: Array.from({ length: covers }, (_, k) => k).filter(() => random() < 0.5),
    })),
    a: Array.from({ length: covers }, () => upTo(20)),
  };
}

/** What is left of a problem where it can only be these, and some covers are open. */
function onlyOf({ p, tests, a }: Problem, S: readonly number[], open: readonly number[]): Problem {
  return {
    p: S.map((i) => p[i] ?? 0),
    tests: tests.map((test) => ({ ...test, d: Uint8Array.from(S, (i) => test.d[i] ?? 0) })),
    a: a.map((minutes, k) => (open.includes(k) ? 0 : minutes)),
  };
}

describe('a bound', () => {
  test.each([0, 2])('is never above the best there is, with %i covers', (covers) => {
    const random = seeded(40 + covers);
    for (let round = 0; round < 400; round += 1) {
      const problem = randomProblem(random, covers);
      const { root } = bestWay(problem);
      const start = startOf(problem);
      const options = optionsAt(problem, start);
      const prices = pricesOf(problem, options, start.S.length);
      const most = root.upper * (1 + 1e-9);
      expect(root.lower).toBe(root.upper);
      expect(pairsBounds(problem.p)(start.S, options, prices).lower).toBeLessThanOrEqual(most);
      const sorted = (numbers: readonly number[]) => Float64Array.from(numbers).sort();
      expect(depthBound(sorted(problem.p), sorted(prices))).toBeLessThanOrEqual(most);
    }
  });

  test.each([0, 2])('is never above the best there is behind a test, with %i covers', (covers) => {
    const random = seeded(50 + covers);
    for (let round = 0; round < 60; round += 1) {
      const problem = randomProblem(random, covers);
      const start = startOf(problem);
      const options = optionsAt(problem, start);
      const below = byBounds(problem)(start, options);
      for (const option of options) {
        const behind = below.behind(option);
        for (const side of ['bad', 'good'] as const) {
          const { root } = bestWay(onlyOf(problem, option[side], option.opens));
          expect(behind[side]).toBeLessThanOrEqual(root.upper + 1e-9);
        }
      }
    }
  });

  test.each([0, 2])('leads to the same way as the table of all sets, with %i covers', (covers) => {
    const random = seeded(60 + covers);
    for (let round = 0; round < 200; round += 1) {
      const problem = randomProblem(random, covers);
      const { root } = search(problem, byBounds(problem));
      expect(root.upper).toBeCloseTo(bestWay(problem).root.upper, 9);
    }
  });

  test('from pairs is close where each check shows one suspect', () => {
    // Chances 4, 2, 1 and minutes 2, 3, 1: by falling p/c the first, the third, the second need no look of its own.
    const problem: Problem = {
      p: [4, 2, 1],
      tests: [2, 3, 1].map((c, i) => ({
        ...{ c, behind: [] },
        d: Uint8Array.from([0, 1, 2], (k) => +(i === k)),
      })),
      a: [],
    };
    const { root } = bestWay(problem);
    const start = startOf(problem);
    const options = optionsAt(problem, start);
    const prices = pricesOf(problem, options, 3);
    expect(root.upper).toBe(2 * 7 + 1 * 3);
    expect(pairsBounds(problem.p)(start.S, options, prices).lower).toBeGreaterThan(0.95 * 17);
  });

  test('from depth is the tree of Huffman where all checks cost alike', () => {
    // Weights 1 2 3 4 5: 3 + 6 + 9 + 15 = 33 by joining the two least each time.
    const prices = new Float64Array(8).fill(1);
    expect(depthBound(Float64Array.from([1, 2, 3, 4, 5]), prices)).toBe(33);
  });
});

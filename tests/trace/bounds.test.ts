/** Beyond sixteen suspects: a way that is known, and a bound that no way can undercut. */
import { describe, expect, test } from 'vitest';
import { bestWay, byBounds } from '../../src/trace/search/best.ts';
import { pricesOf } from '../../src/trace/search/prices.ts';
import { optionsAt, type Problem, startOf } from '../../src/trace/search/problem.ts';
import { search } from '../../src/trace/search/search.ts';
import { toldBound } from '../../src/trace/search/told.ts';
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

/** The bound at the start of a problem, and the least of all ways by the table of all sets. */
function boundAndBest(problem: Problem): { lower: number; best: number } {
  const start = startOf(problem);
  const options = optionsAt(problem, start);
  const prices = pricesOf(problem, options, start.S.length);
  const { root } = bestWay(problem);
  expect(root.lower).toBe(root.upper);
  return { lower: toldBound(problem.p, start.S, options, prices).lower, best: root.upper };
}

describe('a bound', () => {
  test.each([0, 2])('is never above the best there is, with %i covers', (covers) => {
    const random = seeded(40 + covers);
    for (let round = 0; round < 3000; round += 1) {
      const { lower, best } = boundAndBest(randomProblem(random, covers));
      expect(lower).toBeLessThanOrEqual(best * (1 + 1e-9));
    }
  });

  test.each([0, 2])('is never above the best there is behind a test, with %i covers', (covers) => {
    const random = seeded(50 + covers);
    for (let round = 0; round < 100; round += 1) {
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

  const oneEach = (p: number[], minutes: (i: number) => number): Problem => ({
    p,
    tests: p.map((_, i) => ({
      ...{ c: minutes(i), behind: [] },
      d: Uint8Array.from(p, (_, k) => +(i === k)),
    })),
    a: [],
  });

  test('is what the only way takes where there is one, however unlike the chances', () => {
    const { lower, best } = boundAndBest({
      ...{ p: [1, 1e-6], a: [] },
      tests: [{ c: 7, d: Uint8Array.from([1, 0]), behind: [] }],
    });
    expect(best).toBeCloseTo(7 * (1 + 1e-6), 9);
    expect(lower).toBeGreaterThan(0.99 * best);
  });

  test('is never above the best there is of what is all but impossible', () => {
    const p = [0.1, 0.7, 1.3, ...new Array(5).fill(1e-16)];
    const heavy = { c: 1, d: Uint8Array.from(p, (chance) => +(chance > 1e-3)), behind: [] };
    const ones = oneEach(p, () => 1);
    const problem = { ...ones, tests: [heavy, ...ones.tests] };
    const start = startOf(problem);
    const options = optionsAt(problem, start);
    const below = byBounds(problem)(start, options);
    const option = options.find(({ j }) => j === 0);
    const { good } = option ? below.behind(option) : { good: Number.NaN };
    const { root } = bestWay(onlyOf(problem, option?.good ?? [], []));
    expect(root.upper).toBeGreaterThan(0);
    expect(good).toBeLessThanOrEqual(root.upper * (1 + 1e-9));
  });

  test('is what halving takes where checks halve', () => {
    const { lower, best } = boundAndBest({
      ...{ p: new Array(16).fill(1), a: [] },
      tests: [0, 1, 2, 3].map((bit) => ({
        ...{ c: 3, behind: [] },
        d: Uint8Array.from({ length: 16 }, (_, i) => (i >> bit) & 1),
      })),
    });
    expect(best).toBe(16 * 4 * 3);
    expect(lower).toBeGreaterThan(0.99 * best);
  });

  test('is 2/e of the best at least where each check shows one of sixteen alike', () => {
    const { lower, best } = boundAndBest(oneEach(new Array(16).fill(1), () => 5));
    // After the k-th look 16 − k are left, and the fifteenth parts the last two.
    expect(best).toBe(5 * ((15 * (16 + 2)) / 2));
    expect(lower / best).toBeGreaterThan(2 / Math.E - 0.05);
  });

  test('is more than half of the best on cases of eight to fourteen suspects', () => {
    const random = seeded(70);
    for (let round = 0; round < 60; round += 1) {
      const n = 8 + Math.floor(random() * 7);
      const chances = Array.from({ length: n }, () => [1, 2, 4][Math.floor(random() * 3)] ?? 1);
      const ones = oneEach(chances, () => 1 + Math.floor(random() * 10));
      const more = Array.from({ length: 10 }, () => ({
        ...{ c: 1 + Math.floor(random() * 10), behind: [] },
        d: Uint8Array.from({ length: n }, () => +(random() < 0.25)),
      }));
      const { lower, best } = boundAndBest({ ...ones, tests: [...ones.tests, ...more] });
      expect(lower / best).toBeGreaterThan(0.55);
    }
  });
});

/** Tracing and deciding held against published examples, each with its source. */
import { describe, expect, it } from 'vitest';
import { hittingSets } from '../../src/trace/hitting.ts';
import { orderOfRepairs } from '../../src/trace/repairs.ts';
import { trace } from '../../src/trace/trace.ts';
import type { TraceWay } from '../../src/trace/types.ts';
import { weigh } from '../../src/trace/weigh/weigh.ts';
import { asked, check, seeded, suspect } from '../trace/cases.ts';

describe('Pattipati & Alexandridis, IEEE Trans. SMC 20(4), 1990 (from memory): six states, five tests', () => {
  // s0 stands for nothing wrong: no test shows it. Each test costs 1.
  const input = asked(
    [0.7, 0.01, 0.02, 0.1, 0.05, 0.12].map((p, i) => suspect(`s${i}`, p)),
    [
      check('t1', 's3 s4 s5'),
      check('t2', 's1 s4 s5'),
      check('t3', 's2 s5'),
      check('t4', 's2 s3 s5'),
      check('t5', 's1 s3'),
    ],
  );
  it('takes 2.18 tests in the mean', () => {
    const { expected } = trace(input);
    expect(expected.exact).toBe(true);
    expect(expected.minutes).toBeCloseTo(2.18, 9);
  });
});

/** All orders of a list. */
function* orders<T>(all: readonly T[]): Generator<T[]> {
  if (all.length === 0) yield [];
  for (const [i, first] of all.entries()) {
    for (const rest of orders(all.toSpliced(i, 1))) yield [first, ...rest];
  }
}

function meanTime(order: readonly { p: number; c: number }[]): number {
  let [spent, sum] = [0, 0];
  for (const { p, c } of order) {
    spent += c;
    sum += p * spent;
  }
  return sum;
}

describe('Heckerman, Breese & Rommelse, CACM 38(3), 1995 (from memory): repairs that prove themselves', () => {
  it.each([2, 4, 6, 8])('no order of %i takes less than falling chance over time', (n) => {
    const random = seeded(n);
    const repairs = Array.from({ length: n }, () => ({
      p: 1 + Math.floor(random() * 9),
      c: Math.floor(random() * 30),
    }));
    let least = Number.POSITIVE_INFINITY;
    for (const order of orders(repairs)) least = Math.min(least, meanTime(order));
    expect(meanTime(orderOfRepairs(repairs))).toBe(least);
  });
});

describe('de Kleer & Williams, AIJ 32, 1987; Reiter, AIJ 32, 1987 (from memory): three multipliers, two adders', () => {
  it('has four minimal diagnoses', () => {
    const { sets, more } = hittingSets(
      [
        ['M1', 'M2', 'A1'],
        ['M1', 'M3', 'A1', 'A2'],
      ],
      3,
    );
    expect(more).toBe(false);
    expect(sets.map((set) => set.toSorted().join(' ')).toSorted()).toEqual([
      'A1',
      'A2 M2',
      'M1',
      'M2 M3',
    ]);
  });
});

/** Stages in a row with a check between each pair; each check names the one before it. */
function chain(weights: readonly (number | null)[]) {
  const stages = weights.map((weight, i) => suspect(`stage${i + 1}`, weight));
  const checks = stages
    .slice(0, -1)
    .map(({ name }, i) =>
      check(`after${i + 1}`, '', 1, { along: i === 0 ? [name] : [`after${i}`, name] }),
    );
  return asked(stages, checks);
}

const depths = (way: TraceWay | string[] | null): number[] => {
  if (way === null) return [];
  if (Array.isArray(way)) return [0];
  return [...depths(way.good), ...depths(way.bad)].map((depth) => depth + 1);
};

describe('half-split of a chain: common practice, no source', () => {
  it('finds one of eight stages, all alike, by three checks, the middle one first', () => {
    const { expected, next, way } = trace(chain(Array.from({ length: 8 }, () => null)));
    expect(expected).toMatchObject({ minutes: 3, exact: true });
    expect(next?.check).toBe('after4');
    expect(depths(way)).toEqual(Array.from({ length: 8 }, () => 3));
  });
});

/** The least path of all binary trees over these leaves in this order: every tree is tried. */
function leastTree(weights: readonly number[]): number {
  if (weights.length === 1) return 0;
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const cuts = weights.slice(1).map((_, i) => i + 1);
  return (
    total +
    Math.min(...cuts.map((at) => leastTree(weights.slice(0, at)) + leastTree(weights.slice(at))))
  );
}

describe('optimum alphabetic trees: Knuth, TAOCP 3, 6.2.2; Hu & Tucker, 1971 (from memory)', () => {
  const weighed = (weights: readonly number[]) =>
    trace(chain(weights)).expected.minutes * weights.reduce((sum, weight) => sum + weight, 0);

  it('for the weights 1 2 3 4 5 in this order', () => {
    expect(weighed([1, 2, 3, 4, 5])).toBeCloseTo(leastTree([1, 2, 3, 4, 5]), 9);
  });

  it('for a hundred chains of up to ten stages', () => {
    const random = seeded(5);
    for (let round = 0; round < 100; round += 1) {
      const weights = Array.from({ length: 2 + (round % 9) }, () => 1 + Math.floor(random() * 20));
      expect(weighed(weights)).toBeCloseTo(leastTree(weights), 6);
    }
  });
});

describe('cost and loss: Thompson, 1952; Murphy, 1977 (from memory)', () => {
  const price = (price: number) => ({ price, takes: null });
  const base = { harm: null, hour: null, safety: false };

  it('one acts where the chance is above C/L', () => {
    for (const [C, L] of [
      [1, 9],
      [12.5, 26.7],
      [3, 4],
    ] as const) {
      const at = (chance: string | null) =>
        weigh({ ...base, now: price(C), later: price(L), chance });
      expect(at(null).turning.chance).toBeCloseTo(C / L, 12);
      expect(at(`${(130 * C) / L} %`).advice).toBe('renew');
      expect(at(`${(70 * C) / L} %`).advice).toBe('leave');
    }
  });

  it('with harm H of the chance q by acting, where it is above (C + qH)/L', () => {
    const harm = { chance: '1 in 20', ...price(60) };
    const { turning } = weigh({ ...base, harm, now: price(10), later: price(40), chance: null });
    expect(turning.chance).toBeCloseTo((10 + 60 / 20) / 40, 12);
  });
});

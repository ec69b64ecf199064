import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { byHand, type Handled } from '../../src/plan/hands.ts';
import { plan } from '../../src/plan/plan.ts';
import { schedule } from '../../src/plan/schedule.ts';
import { jobOf, NOW } from './make.ts';

const task = (key: string, duration: number, after: string[] = [], hands = true): Handled => ({
  key,
  duration,
  after,
  hands,
});

describe('one pair of hands', () => {
  it('does one thing after the other', () => {
    const found = byHand([task('a', 10), task('b', 18)]);
    expect(found).toEqual({ length: 28, least: 28, critical: ['b', 'a'] });
  });

  it('works while something else cures', () => {
    const found = byHand([task('glue', 1), task('cures', 12, ['glue'], false), task('wash', 3)]);
    expect(found).toEqual({ length: 13, least: 13, critical: ['glue', 'cures'] });
  });

  it('begins with what something long waits for', () => {
    const found = byHand([task('wash', 3), task('glue', 1), task('cures', 12, ['glue'], false)]);
    expect(found.length).toBe(13);
  });

  it('waits for nothing that comes in a circle', () => {
    expect(byHand([task('a', 1, ['b']), task('b', 1, ['a']), task('c', 2)]).length).toBe(2);
  });

  /** Up to six activities that wait for earlier ones. */
  const some = fc
    .array(
      fc.record({
        duration: fc.nat(9),
        hands: fc.boolean(),
        release: fc.nat(5),
        before: fc.array(fc.nat(5), { maxLength: 3 }),
      }),
      { maxLength: 6 },
    )
    .map((all) =>
      all.map(
        ({ before, ...rest }, i): Handled => ({
          ...rest,
          key: `${i}`,
          after: [...new Set(before.filter((b) => b < i).map(String))],
        }),
      ),
    );

  /** Every order in which the hands can take their work. */
  function shortest(all: readonly Handled[]): number {
    const work = all.filter((a) => a.hands && a.duration > 0);
    let best = Number.POSITIVE_INFINITY;
    const orders = (left: Handled[], order: Handled[]): void => {
      if (left.length === 0) best = Math.min(best, lengthOf(all, order));
      for (const a of left)
        orders(
          left.filter((b) => b !== a),
          [...order, a],
        );
    };
    orders(work, []);
    return best;
  }

  /** With the hands' work in this order; endless where that order cannot be. */
  function lengthOf(all: readonly Handled[], order: readonly Handled[]): number {
    const chained = all.map((a) => {
      const at = order.indexOf(a);
      const before = order[at - 1];
      return at > 0 && before ? { ...a, after: [...a.after, before.key] } : a;
    });
    const { rows, length } = schedule(chained);
    return rows.length === all.length ? length : Number.POSITIVE_INFINITY;
  }

  it('against every order there is: never shorter than can be, never longer than one after the other', () => {
    fc.assert(
      fc.property(some, (all) => {
        const found = byHand(all);
        const best = shortest(all);
        const sum = all.reduce((n, a) => n + a.duration, 0) + 5;
        expect(found.least).toBeLessThanOrEqual(best);
        expect(found.length).toBeGreaterThanOrEqual(best);
        expect(found.length).toBeLessThanOrEqual(Math.max(2 * best, 0));
        expect(found.length).toBeLessThanOrEqual(sum);
      }),
      { numRuns: 400 },
    );
  });
});

it('28 hours of hand work are not ready in eight', () => {
  const job = jobOf('pieces: {a: {takes: 8 h}, b: {takes: 6 h}}');
  // Off and on again, each by hand.
  expect(plan(job, NOW).finish).toBe('2026-05-03T14:00:00+02:00');
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { trace } from '../../src/trace/trace.ts';
import type { TraceInput, TraceMark } from '../../src/trace/types.ts';
import { check, randomCase, seeded } from './cases.ts';

const SEED = 14;
const cases = (most = 7) =>
  fc
    .tuple(fc.integer(), fc.integer({ min: 1, max: most }), fc.nat(most), fc.nat(3))
    .map(([seed, suspects, checks, covers]) =>
      randomCase(seeded(seed), { suspects, checks, covers, shows: [0.1, 0.9] }),
    );
const SAYS = fc.constantFrom('good' as const, 'bad' as const, 'unclear' as const);
const marked = cases().chain((input) =>
  fc
    .array(
      fc.record({
        check: fc.constantFrom('', ...input.checks.map(({ name }) => name)),
        says: SAYS,
      }),
      { maxLength: 8 },
    )
    .map((all) => ({ ...input, marks: all.filter((mark) => mark.check !== '') })),
);
const holds = <T>(all: fc.Arbitrary<T>, property: (value: T) => void) =>
  fc.assert(fc.property(all, property), { seed: SEED, numRuns: 300 });

/** The same with other names, and all lists the other way round. */
function relabelled({ suspects, checks, covers, marks }: TraceInput): TraceInput {
  const other = (name: string) => `other ${name}`;
  return {
    suspects: suspects.map((one) => ({ ...one, name: other(one.name) })).reverse(),
    checks: checks
      .map((one) => ({
        ...{ ...one, name: other(one.name), bad: one.bad.map(other).reverse() },
        behind: one.behind.map(other).reverse(),
      }))
      .reverse(),
    covers: covers.map((one) => ({ ...one, name: other(one.name) })).reverse(),
    marks: marks.map((mark) => ({ ...mark, check: other(mark.check) })),
  };
}

describe('whatever the suspects, checks and marks', () => {
  test('other names and another order in the file change nothing of what it takes', () => {
    holds(marked, (input) => {
      const [one, other] = [trace(input), trace(relabelled(input))];
      expect(other.expected.minutes).toBeCloseTo(one.expected.minutes, 9);
      const told = ({ suspects }: typeof one) =>
        suspects.map(({ name, share }) => `${name.replace('other ', '')} ${share}`).toSorted();
      expect(told(other)).toEqual(told(one));
      expect(other.conflict?.diagnoses.length).toBe(one.conflict?.diagnoses.length);
      expect(other.conflict?.doubts.length).toBe(one.conflict?.doubts.length);
    });
  });

  test('a check that costs nothing and tells something never makes it longer', () => {
    holds(fc.tuple(cases(), fc.integer()), ([input, seed]) => {
      const random = seeded(seed);
      const shown = input.suspects.map(({ name }) => name).filter(() => random() < 0.5);
      const more = { ...input, checks: [...input.checks, check('free', shown.join(' '), 0)] };
      const [without, withIt] = [trace(input), trace(more)];
      expect(withIt.expected.minutes).toBeLessThanOrEqual(without.expected.minutes + 1e-9);
    });
  });

  test('a cleared suspect never comes back by another look, and an unclear one changes nothing', () => {
    holds(marked, (input) => {
      const { checks, marks } = input;
      const seen = new Set(marks.map((mark) => mark.check));
      const before = trace(input);
      for (const { name } of checks) {
        const unclear = trace({ ...input, marks: [...marks, { check: name, says: 'unclear' }] });
        expect(unclear).toEqual(before);
        if (seen.has(name)) continue;
        for (const says of ['good', 'bad'] as const) {
          const after = trace({ ...input, marks: [...marks, { check: name, says }] });
          expect(clearedIn(after)).toEqual(expect.arrayContaining(clearedIn(before)));
        }
      }
    });
  });

  test('a mark taken back leaves what was there before it', () => {
    holds(marked, (input) => {
      const mark: TraceMark = { check: 'none', says: 'bad' };
      const { faults, ...after } = trace({ ...input, marks: [...input.marks, mark] });
      const { faults: before, ...same } = trace(input);
      expect(after).toEqual(same);
      expect(faults.length).toBe(before.length + 1);
    });
  });

  test('what good and bad would leave is what is left after that', () => {
    holds(marked, (input) => {
      const { next, expected } = trace(input);
      if (!next) expect(expected.minutes).toBe(0);
      for (const says of next ? (['good', 'bad'] as const) : []) {
        const mark: TraceMark = { check: next?.check ?? '', says };
        const after = trace({ ...input, marks: [...input.marks, mark] });
        const left = after.suspects.filter(({ cleared }) => cleared.length === 0);
        expect(left.map(({ name }) => name)).toEqual(next?.[says]);
      }
    });
  });
});

const clearedIn = ({ suspects }: ReturnType<typeof trace>) =>
  suspects.filter(({ cleared }) => cleared.length > 0).map(({ name }) => name);

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distance, near, slipOf } from '../../src/model/nearword.ts';

describe('a word typed wrong finds the one that was meant', () => {
  const pieces = ['alternator', 'gear-lever', 'sprocket-cover', 'hose'];

  it.each([
    ['altenator', 'alternator'],
    ['alternatro', 'alternator'],
    ['Alternator', 'alternator'],
    ['gearlever', 'gear-lever'],
    ['sproket-cover', 'sprocket-cover'],
    ['hsoe', 'hose'],
  ])('%s → %s', (typed, meant) => {
    expect(near(typed, pieces)).toBe(meant);
  });

  it.each(['', 'S', 'starter', 'alternator', 'a'.repeat(100_000)])(
    'nothing is near %.12s',
    (typed) => {
      expect(near(typed, pieces)).toBeNull();
    },
  );

  // Values of the optimal string alignment distance as commonly given in textbooks (from memory).
  it.each([
    ['kitten', 'sitting', 3],
    ['saturday', 'sunday', 3],
    ['ca', 'abc', 3],
    ['ab', 'ba', 1],
    ['', 'abc', 3],
  ])('%s and %s are %i apart', (a, b, d) => {
    expect(distance(a, b)).toBe(d);
    expect(distance(b, a)).toBe(d);
  });

  it('never says a word is near itself, or further than it is long', () => {
    fc.assert(
      fc.property(fc.string(), fc.string(), (a, b) => {
        expect(distance(a, a)).toBe(0);
        expect(distance(a, b)).toBeLessThanOrEqual(Math.max(a.length, b.length));
        expect(distance(a, b)).toBeGreaterThanOrEqual(Math.abs(a.length - b.length));
      }),
    );
  });
});

describe('a name that is most likely a slip', () => {
  const pieces = ['alternator', 'cylinder-1', 'hose', 'lower-hose'];

  it.each([
    ['alternater', 'alternator'],
    ['alternatro', 'alternator'],
    ['hsoe', 'hose'],
  ])('%s → %s', (typed, meant) => {
    expect(slipOf(typed, pieces)).toBe(meant);
  });

  it.each(['cylinder-2', 'upper-hose', 'nose-cone', 'alternator', 'starter'])(
    '%s is another piece',
    (typed) => {
      expect(slipOf(typed, pieces)).toBeNull();
    },
  );
});

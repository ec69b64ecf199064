import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Layout, layout } from '../../src/piece/map.ts';
import { DIRECTIONS, toward } from '../../src/piece/toward.ts';

const COVER = `.  1  .  2  .
11 .  .  .  3
10 .  .  .  4
.  9  8  7  5
.  .  .  6  .`;
const names = (n: number) => Array.from({ length: n }, (_, i) => `${i + 1}`);
const cover = layout({ map: COVER, pitch: null, holes: new Map() }, names(11));

/** All holes that arrows lead to, from `start`. */
function reached(from: Layout, start: string): Set<string> {
  const seen = new Set([start]);
  for (const name of seen) for (const d of DIRECTIONS) seen.add(toward(from, name, d));
  return seen;
}

describe('arrow keys', () => {
  test.each([
    ['1', 'right', '2'],
    ['2', 'left', '1'],
    ['11', 'right', '1'],
    ['11', 'down', '10'],
    ['3', 'down', '4'],
    ['9', 'right', '8'],
    ['7', 'down', '6'],
    ['6', 'up', '7'],
    ['6', 'left', '8'],
    ['5', 'up', '4'],
    ['3', 'left', '2'],
  ] as const)('on a cover, from %s %s is %s', (from, direction, to) => {
    expect(toward(cover, from, direction)).toBe(to);
  });

  test('where there is none that way, one stays', () => {
    expect(toward(cover, '1', 'up')).toBe('1');
    expect(toward(cover, '10', 'left')).toBe('10');
    expect(toward(cover, '99', 'left')).toBe('99');
  });

  test('an arrow never leads backwards on a cover', () => {
    for (const place of cover.places) {
      const to = cover.places.find((p) => p.name === toward(cover, place.name, 'right'));
      expect(to?.x).toBeGreaterThanOrEqual(place.x);
    }
  });

  test.each([2, 3, 5, 8, 24, 200])('on a ring of %i every hole is in reach of every other', (n) => {
    const ring = layout({ map: null, pitch: null, holes: new Map() }, names(n));
    for (const start of n > 24 ? ['1', '77'] : names(n)) expect(reached(ring, start).size).toBe(n);
  });

  test('every hole is in reach of every other, however the holes lie', () => {
    const coordinate = fc.oneof(
      fc.integer({ min: 0, max: 5 }),
      fc.double({ min: 0, max: 5, noNaN: true }),
    );
    const points = fc.array(fc.tuple(coordinate, coordinate), { minLength: 1, maxLength: 14 });
    fc.assert(
      fc.property(points, (at) => {
        const holes = new Map(at.map((p, i) => [`${i + 1}`, { at: p }]));
        const scattered = layout({ map: null, pitch: null, holes }, names(at.length));
        for (const start of names(at.length))
          expect(reached(scattered, start).size).toBe(at.length);
      }),
      { numRuns: 500 },
    );
  });
});

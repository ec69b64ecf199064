import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { reach } from '../../../src/plan/order/reach.ts';
import { jobOf, off, on } from '../make.ts';

const TEXT = `
pieces:
  seat: {}
  tank: {under: seat}
  panel: {}
  airbox: {under: [tank, panel]}
  carburettor: {under: airbox}
  lamp: {}
`;

describe('what must come off to reach a piece', () => {
  it.each([
    ['carburettor', ['seat', 'tank', 'panel', 'airbox', 'carburettor']],
    ['airbox', ['seat', 'tank', 'panel', 'airbox']],
    ['lamp', ['lamp']],
    ['mirror', []],
  ])('%s', (piece, pieces) => {
    expect(reach(jobOf(TEXT), piece)).toEqual(pieces);
  });

  it('does not count what is off already, nor what lies over that', () => {
    expect(reach(jobOf(TEXT, [off('tank')]), 'carburettor')).toEqual([
      'panel',
      'airbox',
      'carburettor',
    ]);
    expect(reach(jobOf(TEXT, [off('airbox')]), 'carburettor')).toEqual(['carburettor']);
    expect(reach(jobOf(TEXT, [off('airbox')]), 'airbox')).toEqual([]);
  });

  it('counts what is back on again', () => {
    expect(reach(jobOf(TEXT, [off('seat'), on('seat')]), 'tank')).toEqual(['seat', 'tank']);
  });

  it('counts what a task before it needs off', () => {
    const text = 'pieces: {a: {}, b: {}}\ntasks: {t: {do: Lock it, after: a off, before: b off}}';
    expect(reach(jobOf(text), 'b')).toEqual(['a', 'b']);
  });

  it('is the smallest set: of every piece in it, something else in it lies under', () => {
    const sizes = fc.integer({ min: 1, max: 12 });
    fc.assert(
      fc.property(sizes, fc.infiniteStream(fc.nat({ max: 11 })), (n, stream) => {
        const unders = Array.from({ length: n }, (_, i) =>
          i === 0 ? [] : [...new Set([...stream.take(2)].map((x) => x % i))],
        );
        const text = `pieces: {${unders.map((u, i) => `p${i}: {under: [${u.map((x) => `p${x}`).join(', ')}]}`).join(', ')}}`;
        const set = reach(jobOf(text), `p${n - 1}`);
        expect(set.at(-1)).toBe(`p${n - 1}`);
        for (const [at, piece] of set.slice(0, -1).entries()) {
          const below = set
            .slice(at + 1)
            .filter((other) => unders[Number(other.slice(1))]?.includes(Number(piece.slice(1))));
          expect(below.length).toBeGreaterThan(0);
        }
        for (const piece of set) {
          for (const over of unders[Number(piece.slice(1))] ?? [])
            expect(set).toContain(`p${over}`);
        }
      }),
    );
  });
});

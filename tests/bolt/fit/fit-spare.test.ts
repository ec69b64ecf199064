/**
 * Less to spare than a bolt of this length may be off by is nothing to rely on. Tolerances of length by ISO 4759-1, grade
 * A: ± 0.42 mm from 18 to 30, ± 0.5 to 50, ± 0.6 to 80 (as in the tables of ISO 4014, tests/published/lengths).
 */
import { describe, expect, it } from 'vitest';
import { fit } from '../../../src/bolt/fit/fit.ts';
import { readKind } from '../../../src/bolt/read/kind.ts';
import { type Given, placeOf } from '../holes.ts';

const kind = (text: string, letter = 'B') => readKind(letter, text);
const OWN = kind('M6x20 flange, 8 mm', 'S');
const hole = (thick: number, to: number): Given => ({ thick, thread: { from: 0, to } });
const inHole = (bolt: string, thick: number, to: number, into: string | null = null) =>
  fit(kind(bolt), null, placeOf(OWN, hole(thick, to), [], into));

describe('towards the bottom', () => {
  it.each([
    // [bolt, thread in the hole below 8 mm of cover, what is left, sure]
    ['M6x25 flange, 8 mm', 17.4, 0.4, false],
    ['M6x25 flange, 8 mm', 17.5, 0.5, true],
    ['M6x25 flange, 8 mm', 16.6, -0.4, false],
    ['M6x25 flange, 8 mm', 16.5, -0.5, true],
    ['M6x45 flange, 8 mm', 37.4, 0.4, false],
    ['M6x45 flange, 8 mm', 37.5, 0.5, true],
    ['M6x60 flange, 8 mm', 52.5, 0.5, false],
    ['M6x60 flange, 8 mm', 52.6, 0.6, true],
  ])('%s in %d mm of thread: %d mm left, sure: %s', (bolt, depth, left, sure) => {
    const found = inHole(bolt, 8, depth);
    expect(found.bottomsBy).toBeCloseTo(-left, 9);
    expect(found.sure).toBe(sure);
    expect(found.measure.includes('probe')).toBe(!sure);
    expect(/: probe it[.]$/.test(found.why)).toBe(!sure);
  });

  it('says what is left, and what it may be off by', () => {
    expect(inHole('M6x25 flange, 8 mm', 8, 17.2).why).toBe(
      '5 mm longer than the right one: probe the hole first. Only 0.2 mm to spare, and its length may be off by 0.42 mm: probe it.',
    );
    expect(inHole('M6x25 flange, 8 mm', 8, 16.8).why).toBe(
      'It would bottom 0.2 mm before the head clamps. It lacks only 0.2 mm, and its length may be off by 0.42 mm: probe it.',
    );
  });

  it('a bolt over ten diameters long is of grade B, and may be off by more', () => {
    // Over 10 x 6 mm: js17, ± 1.5 up to 80 mm.
    expect(inHole('M6x70 flange, 8 mm', 8, 63).sure).toBe(false);
    expect(inHole('M6x70 flange, 8 mm', 8, 63.6).sure).toBe(true);
  });

  it('the bolt that belongs there is right, but not surely short enough', () => {
    expect(fit(OWN, null, placeOf(OWN, hole(8, 12.1)))).toMatchObject({
      verdict: 'right',
      sure: false,
      measure: ['probe'],
    });
  });

  it('behind an open hole nothing bottoms', () => {
    const place = placeOf(OWN, { ...hole(8, 17.2), wet: true });
    expect(fit(kind('M6x25 flange, 8 mm'), null, place).why).not.toMatch(/to spare/);
  });

  it('of a thread without figures nothing is said', () => {
    const found = inHole('M6x25 flange, 8 mm', 8, 17.2);
    expect(found.sure).toBe(false);
    expect(fit(kind('studx25'), null, placeOf(null, hole(8, 17.2))).why).not.toMatch(/to spare/);
  });
});

describe('towards too little thread', () => {
  // Cast aluminium wants twice the diameter by the rule of the trade: 12 mm of M6 at least in this table.
  it('a shorter bolt that bites as much as it must and hardly more is to be probed', () => {
    const own = kind('M6x40 flange, 8 mm', 'L');
    const at = (thick: number) =>
      fit(kind('M6x20 flange, 8 mm'), null, placeOf(own, hole(thick, 40), [], 'steel'));
    const need = 0.8 * 6;
    const near = at(20 - need - 0.2);
    expect([near.verdict, near.sure]).toEqual(['shorter', false]);
    expect(near.why).toMatch(
      /Only 0.2 mm of bite to spare, and its length may be off by 0.42 mm: probe it[.]$/,
    );
    const lacks = at(20 - need + 0.2);
    expect([lacks.verdict, lacks.sure, lacks.measure[0]]).toEqual(['short', false, 'probe']);
    expect(at(20 - need - 1)).toMatchObject({ verdict: 'shorter', sure: true });
  });
});

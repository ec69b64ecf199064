/**
 * Less to spare than a bolt of this length may be off by is nothing to rely on. Tolerances of length by ISO 4759-1, grade
 * A: ± 0.42 mm from 18 to 30, ± 0.5 to 50, ± 0.6 to 80 (as in the tables of ISO 4014, tests/published/lengths).
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fit } from '../../../src/bolt/fit/fit.ts';
import { lengthTolerance } from '../../../src/bolt/fit/tolerance.ts';
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
    const found = fit(kind('M6x25 flange, 8 mm'), null, place);
    expect(found.why).not.toMatch(/to spare|bottoms/);
    expect(found.sure).toBe(false);
    expect(found.why).toMatch(
      /It ends 0.2 mm before the hole does, and its length may be off by 0.42 mm: look behind, or probe it[.]$/,
    );
    const out = fit(
      kind('M6x25 flange, 8 mm'),
      null,
      placeOf(OWN, { ...hole(8, 16.7), wet: true }),
    );
    expect([out.verdict, out.sure]).toEqual(['through', false]);
    expect(out.why).toMatch(/It ends 0.3 mm behind the hole, and/);
    // What belongs there was behind it before.
    expect(fit(OWN, null, placeOf(OWN, { ...hole(8, 12.1), wet: true })).sure).toBe(true);
  });

  it('what is sure stays so for every length within its tolerance', () => {
    const lengths = [12, 16, 20, 25, 30, 40, 50, 60, 90];
    const tenths = (least: number, most: number) =>
      fc.integer({ min: least * 10, max: most * 10 }).map((n) => n / 10);
    const worst = (verdict: string | null) =>
      ['bottoms', 'short', 'shank', 'through'].includes(verdict ?? '') ? verdict : 'goes';
    const cases = fc.record({
      d: fc.constantFrom(5, 6, 8, 10),
      own: fc.constantFrom(...lengths),
      length: fc.constantFrom(...lengths),
      share: fc.double({ min: -0.95, max: 0.95, noNaN: true }),
      thick: tenths(0, 40),
      from: fc.constantFrom(0, 2),
      depth: tenths(1, 35),
      wet: fc.boolean(),
      into: fc.constantFrom(null, 'steel', 'cast aluminium'),
    });
    let sure = 0;
    fc.assert(
      fc.property(cases, ({ d, own, length, share, thick, from, depth, wet, into }) => {
        const thread = { from, to: from + depth };
        const place = placeOf(kind(`M${d}x${own}`, 'S'), { thick, thread, wet }, [], into);
        const at = (mm: number) => fit(kind(`M${d}x${mm}`), null, place);
        const found = at(length);
        if (!found.sure || length === own) return;
        sure += 1;
        const { minus, plus } = lengthTolerance(length, d);
        const off = share < 0 ? share * minus : share * plus;
        // Ends that differ by a twentieth of a millimetre are taken as one.
        const near = Math.abs(off) < 0.06 ? 0 : off - Math.sign(off) * 0.06;
        expect(worst(at(Number((length + near).toFixed(2))).verdict)).toBe(worst(found.verdict));
      }),
      { numRuns: 3000 },
    );
    expect(sure).toBeGreaterThan(300);
  });

  it('the same bolt as the right one is as sure as that, and a hole whose own bolt misses its thread is measured again', () => {
    const same = kind('M6x20 flange, 8 mm');
    for (const at of [hole(8, 10), { thick: 25, thread: { from: 0, to: 10 } }]) {
      const place = placeOf(OWN, at);
      for (const bolt of [OWN, same]) {
        const found = fit(bolt, null, place);
        expect(found.sure).toBe(false);
        expect(found.why).toMatch(/the figures of this hole contradict it: measure again/);
        expect(found.measure).toContain('probe');
      }
    }
    expect(fit(same, null, placeOf(OWN, hole(8, 16)))).toMatchObject({
      verdict: 'same',
      sure: true,
    });
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

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readQuantity } from '../../../src/bolt/read/units.ts';
import { type AgainstInput, againstHole } from '../../../src/bolt/torque/against-hole.ts';
import { likelyMark, maybeHollow, notSteel } from '../../../src/bolt/torque/solid.ts';

const M6: AgainstInput = {
  torque: null,
  thread: 'M6',
  class: null,
  bite: 12,
  into: 'cast aluminium',
};
const held = (torque: string, more: Partial<AgainstInput> = {}) =>
  againstHole({ ...M6, torque: readQuantity(torque), ...more });

describe('a torque held against the hole', () => {
  it.each<[string, Partial<AgainstInput>, string]>([
    ['10 N·m', { class: '8.8', on: 'dry' }, 'fine'],
    ['9 N·m', { class: '8.8' }, 'fine'],
    ['9 N·m', {}, 'fine'],
    ['90 lbf·ft', {}, 'yields'],
    ['90 lbf·ft', { bite: null, into: null }, 'yields'],
    ['90 lbf·in', {}, 'cannot say'],
    ['20 N·m', {}, 'yields'],
    ['20 N·m', { class: '12.9', bite: 14 }, 'cannot say'],
    ['20 N·m', { class: '12.9', bite: 5 }, 'strips'],
    ['10 N·m', { bite: 2 }, 'strips'],
    ['10 N·m', { bite: 4, into: 'plastic' }, 'strips'],
    ['9 N·m', { bite: 4.5, into: 'wire insert in cast aluminium' }, 'cannot say'],
    ['9 N·m', { bite: 9, into: 'wire insert in cast aluminium' }, 'fine'],
    ['40 N·m', { class: '12.9', bite: null, biteMost: 6 }, 'strips'],
    ['8..30 N·m', { class: '8.8' }, 'yields'],
    ['9 N·m', { unlike: 'hollow' }, 'cannot say'],
    ['9 N·m', { unlike: 'not steel' }, 'cannot say'],
    ['9 N·m', { likely: 'A2-70' }, 'cannot say'],
    ['6 N·m', { likely: 'A2-70' }, 'fine'],
    ['20 N·m', { likely: 'A2-70' }, 'yields'],
    ['9 N·m', { angle: true }, 'cannot say'],
    ['90 N·m', { angle: true, unlike: 'hollow' }, 'yields'],
  ])('%s %j: %s', (torque, more, verdict) => {
    expect(held(torque, more).verdict).toBe(verdict);
  });

  it('says why, with what it was reckoned', () => {
    expect(held('90 lbf·ft').why).toBe(
      '90 lbf·ft would break the bolt: M6x1 8.8 (assumed) yields at 9.96 to 16.9 N·m.',
    );
    expect(held('10 N·m', { bite: 2 }).why).toBe(
      '10 N·m would strip the thread: 2 mm in cast aluminium hold 0.679 to 5.18 N·m.',
    );
    expect(held('9 N·m', { class: '8.8' }).why).toBe(
      '9 N·m: M6x1 8.8 stands 9.96 N·m and more, and 12 mm in cast aluminium hold 14.3 to 39.7 N·m.',
    );
  });

  it('says what is missing, and that is nothing to warn of', () => {
    expect(held('9 N·m', { into: null }).lacks).toEqual(['into']);
    expect(held('9 N·m', { into: 'cheese' }).lacks).toEqual(['into']);
    expect(held('9 N·m', { bite: null }).lacks).toEqual(['bite']);
    expect(held('9 N·m', { thread: '2BA' }).lacks).toEqual(['thread']);
    expect(againstHole(M6).lacks).toEqual(['torque']);
    expect(held('11 N·m', { class: '8.8' }).lacks).toEqual([]);
  });
});

/**
 * ASn and ASs in mm² a mm (FED-STD-H28/2B with limits of ISO 965-2), As and d2 (ISO 898-1, ISO 724), dw and dh (ISO 4014,
 * ISO 273): the least major and greatest minor diameters are from memory, so 2 % about a limit is let through.
 */
const SIZES = {
  M6: { P: 1, d2: 5.35, As: 20.1, ASn: 12.19, ASs: 8.65, seat: (8.9 + 6.6) / 2 },
  M8: { P: 1.25, d2: 7.188, As: 36.6, ASn: 16.83, ASs: 12.16, seat: (11.6 + 9) / 2 },
  M10: { P: 1.5, d2: 9.026, As: 58, ASn: 21.48, ASs: 15.58, seat: (14.6 + 11) / 2 },
  M12: { P: 1.75, d2: 10.863, As: 84.3, ASn: 26.12, ASs: 18.98, seat: (16.6 + 13.5) / 2 },
} as const;
/** ISO 898-1: yield and tensile strength. */
const CLASSES = { '8.8': [640, 800], '10.9': [940, 1040], '12.9': [1100, 1220] } as const;
/** Shear strength, MPa: NADCA A-3-2; 0.6 of 360 to 800 MPa; grey iron, from memory. */
const INTO = { 'cast aluminium': [130, 200], steel: [215, 480], iron: [150, 300] } as const;

/** Every case of a grid: does it give? VDI 2230-1, R13 and 5.4.3, written out. */
function brute(
  size: (typeof SIZES)[keyof typeof SIZES],
  [Re, Rm]: readonly [number, number],
  [soft, hard]: readonly [number, number],
  bite: number,
  torque: number,
): 'all' | 'none' | 'some' {
  const { P, d2, As, ASn, ASs, seat } = size;
  let [gives, holds] = [0, 0];
  for (const mu of [0.1, 0.12, 0.14, 0.16, 0.18]) {
    const pull = (torque * 1000) / (0.16 * P + 0.58 * d2 * mu + (seat / 2) * mu);
    const d0 = Math.sqrt((4 * As) / Math.PI);
    const twist = (3 / 2) * (d2 / d0) * (P / (Math.PI * d2) + 1.155 * mu);
    const yields = (Re * As) / Math.sqrt(1 + 3 * twist ** 2);
    for (const tau of [soft, (soft + hard) / 2, hard]) {
      for (const share of [0.6, 0.65]) {
        for (const lost of [0.5, 1, 1.5]) {
          const left = Math.max(0, bite - lost * P);
          const strips = Math.min(ASn * tau, ASs * share * Rm) * left;
          if (pull > Math.min(yields, strips)) gives++;
          else holds++;
        }
      }
    }
  }
  return holds === 0 ? 'all' : gives === 0 ? 'none' : 'some';
}

const pick = <T extends object>(of: T) => fc.constantFrom(...(Object.keys(of) as (keyof T)[]));

describe('against every friction, strength and lost thread', () => {
  it('would break where all of them give, is fine where none does, and else says that it is near', () => {
    const cases = { all: 0, none: 0, some: 0 };
    fc.assert(
      fc.property(
        pick(SIZES),
        pick(CLASSES),
        pick(INTO),
        fc.double({ min: 0.2, max: 2.5, noNaN: true }),
        fc.double({ min: 0.05, max: 2, noNaN: true }),
        (thread, mark, into, diameters, share) => {
          const size = SIZES[thread];
          const d = Number(thread.slice(1));
          const bite = diameters * d;
          const nm = (share * 0.2 * d * CLASSES[mark][0] * size.As) / 1000;
          const [less, more] = [0.98, 1.02].map((f) =>
            brute(size, CLASSES[mark], INTO[into], bite, nm * f),
          );
          if (less !== more || less === undefined) return;
          const torque = { value: nm, to: null, unit: 'N·m' };
          const { verdict } = againstHole({ torque, thread, class: mark, bite, into });
          cases[less]++;
          if (less === 'all') expect(['strips', 'yields']).toContain(verdict);
          else expect(verdict).toBe(less === 'none' ? 'fine' : 'cannot say');
        },
      ),
      { numRuns: 2000 },
    );
    expect(Math.min(...Object.values(cases))).toBeGreaterThan(100);
  });

  it('more torque, or less thread, never makes it better', () => {
    const rank = { fine: 0, 'cannot say': 1, strips: 2, yields: 2 };
    const share = fc.double({ min: 0.01, max: 100, noNaN: true });
    fc.assert(
      fc.property(
        pick(SIZES),
        pick(INTO),
        share,
        share,
        share,
        share,
        (thread, into, a, b, c, e) => {
          const of = (value: number, bite: number) =>
            rank[
              againstHole({
                torque: { value, to: null, unit: 'N·m' },
                thread,
                class: '8.8',
                bite,
                into,
              }).verdict
            ];
          expect(of(Math.max(a, b), Math.min(c, e))).toBeGreaterThanOrEqual(
            of(Math.min(a, b), Math.max(c, e)),
          );
        },
      ),
    );
  });
});

describe('bolts that are no ordinary steel', () => {
  it.each<[string | null, string, string | null]>([
    ['A2', 'M6x25 button', 'A2-70'],
    [null, 'M6x25 stainless button', 'A2-70'],
    [null, 'M6x25 flange', null],
    ['8.8', 'M6x25 stainless look', null],
  ])('%s, %s is most likely %s', (mark, text, likely) => {
    expect(likelyMark(mark, [text])).toBe(likely);
  });

  it.each<[string, boolean]>([
    ['M6x20 aluminium button', true],
    ['M6 nylon', true],
    ['M5x16 brass cheese head', true],
    ['M6x25 alloy steel', false],
    ['M6x25 flange', false],
  ])('%s: %s', (text, other) => {
    expect(notSteel([text])).toBe(other);
  });
});

describe('plugs and hollow parts', () => {
  it.each<[string, string | null, boolean]>([
    ['M22x1.5 drain plug, 17 mm', null, true],
    ['M10x1 banjo', null, true],
    ['M8 bleeder, 8 mm', null, true],
    ['M10 bleed nipple', null, true],
    ['M14x1.25', 'Spark plug', true],
    ['M22x1.5', 'Oil drain plug', true],
    ['M6x25 flange, 8 mm', 'Spark plug cover', false],
    ['M6x25 socket cap screw', 'Alternator cover', false],
  ])('%s of %s: %s', (kind, piece, hollow) => {
    expect(maybeHollow([kind, null], piece)).toBe(hollow);
  });
});

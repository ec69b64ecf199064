import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readKind } from '../../../src/bolt/read/kind.ts';
import { convert, readQuantity } from '../../../src/bolt/read/units.ts';
import { allThreads } from '../../../src/bolt/thread/threads.ts';
import { MAKER_FIRST, sayOnce } from '../../../src/bolt/torque/cautions.ts';
import { sane } from '../../../src/bolt/torque/sane.ts';
import { drySaid, smeared, smearIn } from '../../../src/bolt/torque/smeared.ts';
import { standing } from '../../../src/bolt/torque/standing.ts';
import {
  type Adapter,
  adapterSetting,
  sayConverted,
  settingOn,
  settings,
  type Wrench,
  withAdapter,
} from '../../../src/bolt/torque/wrench.ts';

const q = (text: string) => readQuantity(text)!;

describe('a torque held against its thread', () => {
  it.each<[string, string, string | null, string, string | null]>([
    ['10 N·m', 'M6', null, 'fine', null],
    ['10 N·m', 'M6', '8.8', 'fine', null],
    ['8..12 N·m', 'M6', null, 'fine', null],
    ['16 N·m', 'M6', null, 'fine', null],
    ['2 N·m', 'M6', null, 'fine', null],
    ['95 lbf·ft', 'M6x1', null, 'insane', '95 lbf·in'],
    ['20 N·m', 'M6', null, 'insane', null],
    ['10 kgf·m', 'M6', null, 'insane', '10 N·m'],
    ['100 N·m', 'M6', '8.8', 'insane', '100 lbf·in'],
    ['10 lbf·ft', 'M6', '8.8', 'high', '10 N·m'],
    ['13.5 N·m', 'M6', '8.8', 'high', null],
    ['2 N·m', 'M6', '8.8', 'low', null],
    ['1 N·m', 'M6', null, 'fine', null],
    ['1.0 N·m', 'M6', '8.8', 'insane', '1 kgf·m'],
    ['1.5 lbf·ft', 'M8', '8.8', 'insane', '15 lbf·ft'],
    ['250 N·m', 'M8', '8.8', 'insane', '250 lbf·in'],
  ])('%s on %s %s: %s', (torque, thread, mark, verdict, first) => {
    const s = sane(q(torque), thread, mark)!;
    expect(s.verdict).toBe(verdict);
    expect(s.suggest[0] ? `${s.suggest[0].value} ${s.suggest[0].unit}` : null).toBe(first);
    expect(s.say === null).toBe(verdict === 'fine');
  });

  it('names the slip, and lets the maker go first', () => {
    const s = sane(q('95 lbf·ft'), 'M6x1')!;
    expect(s.suggest).toEqual([{ value: 95, unit: 'lbf·in', why: 'lbf·ft written for lbf·in' }]);
    expect(s.say).toBe(
      "95 lbf·ft cannot be right for M6x1 8.8 (assumed): dry, such a bolt is good for 11.3 N·m. Was 95 lbf·in meant? The maker's figure goes first: look it up again.",
    );
  });

  // A drain plug, common practice: it seals at a twentieth of what a bolt of its size stands.
  it.each([
    ['30 N·m', 'M22x1.5', null, true],
    ['30 N·m', 'M22x1.5', '8.8', false],
    ['12 N·m', 'M14x1.25', null, true],
    ['1 N·m', 'M6', '8.8', false],
  ])(
    '%s on %s is never talked up where it is unmarked, hollow or a plug',
    (torque, thread, mark, solid) => {
      const s = sane(q(torque), thread, mark, solid)!;
      expect(s).toMatchObject({ verdict: 'fine', suggest: [], say: null });
      expect(sane(q(torque), thread, '8.8')!.verdict).toBe('insane');
    },
  );

  it('has nothing to say of a thread without figures, or of what is no torque', () => {
    expect(sane(q('10 N·m'), '2BA')).toBeNull();
    expect(sane(q('10 mm'), 'M6')).toBeNull();
  });

  it('is judged the higher the more it is, and each suggestion is itself fine', () => {
    const threads = fc.constantFrom(...allThreads().map((t) => t.name));
    const mark = fc.constantFrom('8.8', '10.9', '12.9', 'A2-70');
    const unit = fc.constantFrom('N·m', 'lbf·ft', 'lbf·in', 'kgf·m', 'kgf·cm', 'ozf·in');
    const value = fc.double({ min: 0.01, max: 5000, noNaN: true });
    fc.assert(
      fc.property(threads, fc.option(mark), unit, value, value, (thread, m, u, a, b) => {
        const of = (v: number) => {
          const s = sane({ value: v, to: null, unit: u }, thread, m)!;
          const share = convert(v, u, 'N·m')! / s.stands.value;
          const level = { low: -1, fine: 0, high: 1, insane: share > 1 ? 2 : -2 }[s.verdict];
          return { s, share, level };
        };
        const [less, more] = [of(Math.min(a, b)), of(Math.max(a, b))];
        // Without a mark, a figure far too low is spoken of only where a slip explains it.
        if (m !== null || less.share > 0.3) expect(more.level).toBeGreaterThanOrEqual(less.level);
        for (const meant of [...less.s.suggest, ...more.s.suggest]) {
          expect(sane({ ...meant, to: null }, thread, m)?.verdict).toBe('fine');
        }
      }),
    );
  });
});

describe('what a bolt stands', () => {
  it('is labelled as no torque for the job, with both formulas', () => {
    const s = standing({ thread: 'M6x1', class: '8.8', friction: 0.14, use: 90 })!;
    expect(s.caution).toBe(MAKER_FIRST);
    expect(sayOnce(readKind('B', 'M10x90 once 10.9'))).toContain('never used twice');
    expect(sayOnce(readKind('B', 'M10x90 10.9'))).toBeNull();
    expect(s.label).toBe('what the bolt stands in steel, not a torque for this job');
    expect(s.torque).toEqual({ value: expect.closeTo(11.26, 2), unit: 'N·m' });
    expect(s.preload).toEqual({ value: expect.closeTo(9907, 0), unit: 'N' });
    expect(s.byNutFactor).toMatchObject({
      K: 0.2,
      torque: { value: expect.closeTo(10.5, 1), unit: 'N·m' },
    });
    expect(s.thread).toMatchObject({ d: 6, pitch: 1, tapDrill: 5 });
    expect(s.loads!.proof).toBeCloseTo(580 * s.thread.stressArea, 6);
  });

  it('leaves out what the mark does not tell, and refuses friction that cannot be', () => {
    expect(standing({ thread: 'M6', class: null })).toMatchObject({
      loads: null,
      torque: null,
      byNutFactor: null,
    });
    expect(standing({ thread: 'M6', class: 'A2-70' })).toMatchObject({
      byNutFactor: null,
      loads: { proof: null },
    });
    expect(standing({ thread: 'M6', class: '8.8', friction: 0 })).toBeNull();
    expect(standing({ thread: 'M6', class: '8.8', use: 120 })).toBeNull();
    expect(standing({ thread: '2BA', class: '8.8' })).toBeNull();
  });

  it('more friction means less pull, a better mark more of both', () => {
    const threads = fc.constantFrom(
      ...allThreads()
        .filter((t) => t.d >= 3 && t.d <= 16)
        .map((t) => t.name),
    );
    const mu = fc.double({ min: 0.05, max: 0.4, noNaN: true });
    fc.assert(
      fc.property(threads, mu, mu, (thread, a, b) => {
        const of = (friction: number, mark: string) => standing({ thread, class: mark, friction })!;
        const [slick, rough] = [Math.min(a, b), Math.max(a, b)];
        expect(of(slick, '8.8').preload!.value).toBeGreaterThanOrEqual(
          of(rough, '8.8').preload!.value,
        );
        expect(of(a, '10.9').torque!.value).toBeGreaterThan(of(a, '8.8').torque!.value);
      }),
    );
  });
});

const SMALL: Wrench = { name: '5-25', from: 5, to: 25, unit: 'N·m', step: 0.5, length: 300 };
const LARGE: Wrench = { name: '20-100', from: 20, to: 100, unit: 'lbf·ft', step: 1, length: null };

describe('what to set on the wrench', () => {
  it.each<[string, Wrench, string, Adapter | null, string]>([
    ['as printed', SMALL, '10 N·m', null, 'set 10 on the 5-25 wrench'],
    ['from another unit, to its step', SMALL, '95 lbf·in', null, 'set 10.5 N·m on the 5-25 wrench'],
    ['a range at its middle', SMALL, '8..12 N·m', null, 'set 10 on the 5-25 wrench'],
    [
      'with an adapter straight out',
      SMALL,
      '10 N·m',
      { length: 50, angle: 0 },
      'set 8.5 on the 5-25 wrench',
    ],
    [
      'with an adapter square to it',
      SMALL,
      '10 N·m',
      { length: 50, angle: 90 },
      'set 10 on the 5-25 wrench',
    ],
    [
      'with an extension along the bolt',
      LARGE,
      '50 lbf·ft',
      { length: 0, angle: 0 },
      'set 50 on the 20-100 wrench',
    ],
    ['too little for it', SMALL, '4 N·m', null, 'Off the bottom of the 5-25 wrench.'],
    ['too much for it', SMALL, '40 N·m', null, 'Off the top of the 5-25 wrench.'],
    [
      'an adapter on a wrench nobody measured',
      LARGE,
      '50 lbf·ft',
      { length: 50, angle: 0 },
      'Measure the 20-100 wrench from the square to the middle of its grip.',
    ],
    [
      'an adapter that reaches back past the hand',
      SMALL,
      '10 N·m',
      { length: 300, angle: 180 },
      'The adapter reaches back past the hand.',
    ],
    ['what is no torque', SMALL, '10 mm', null, 'mm cannot be set on a wrench.'],
  ])('%s', (_name, wrench, torque, adapter, words) => {
    const s = settingOn(wrench, q(torque), adapter);
    expect(s.say).toBe(words);
    expect(s.set === null).toBe(!words.startsWith('set'));
  });

  it('without a wrench of the bench: the setting for a length, unrounded, with its source', () => {
    expect(withAdapter(q('10 N·m'), 300, { length: 50, angle: 0 })).toMatchObject({
      value: expect.closeTo((10 * 300) / 350, 12),
      unit: 'N·m',
      source: expect.stringContaining('TM 9-254'),
    });
    expect(withAdapter(q('10 N·m'), 300, { length: 300, angle: 180 })).toBeNull();
    expect(withAdapter(q('10 mm'), 300, { length: 50, angle: 0 })).toBeNull();
  });

  it('of several wrenches those that reach it come first', () => {
    const both = settings([LARGE, SMALL], q('10 N·m'));
    expect(both.map((s) => [s.wrench, s.reach])).toEqual([
      ['5-25', 'ok'],
      ['20-100', 'below'],
    ]);
  });

  it('says beside the printed figure what that is in N·m', () => {
    expect(sayConverted(q('95 lbf·in'))).toBe('95 lbf·in as printed → set 10.7 N·m');
    expect(sayConverted(q('10 N·m'))).toBeNull();
  });

  it('the bolt gets what was meant, whatever the adapter; turned round, it is mirrored', () => {
    const length = fc.double({ min: 1, max: 99, noNaN: true });
    const angle = fc.double({ min: 0, max: 360, noNaN: true });
    fc.assert(
      fc.property(fc.double({ min: 1, max: 300, noNaN: true }), length, angle, (M, A, alpha) => {
        const L = 100;
        const set = adapterSetting(M, L, { length: A, angle: alpha })!;
        const force = set / L;
        expect(force * (L + A * Math.cos((alpha * Math.PI) / 180))).toBeCloseTo(M, 9);
        expect(adapterSetting(M, L, { length: A, angle: 360 - alpha })).toBeCloseTo(set, 9);
      }),
    );
    expect(adapterSetting(10, 0, { length: 5, angle: 0 })).toBeNull();
    expect(adapterSetting(10, 300, { length: 50, angle: 90 })).toBe(10);
  });
});

describe('oil, threadlocker, anti-seize', () => {
  it.each(['oil', 'threadlocker', 'anti-seize'] as const)(
    '%s is words and a range, never a figure to set',
    (what) => {
      const s = smeared(what);
      expect(s.from).toBeLessThan(s.to);
      expect(s.say).toContain('nothing here is a figure to set');
      expect(s.say).not.toMatch(/N·m|lbf/);
    },
  );

  it('is seen in a note', () => {
    expect(smearIn('oil the thread')).toBe('oil');
    expect(smearIn('blue threadlocker')).toBe('threadlocker');
    expect(smearIn('copper grease')).toBe('anti-seize');
    expect(smearIn('thread dry')).toBeNull();
    expect(smearIn('new gasket')).toBeNull();
  });

  it.each<[string, string | null, boolean]>([
    ['Greased O-ring', null, false],
    ['grease the O-ring, oil the threads', 'oil', false],
    ['no grease on the lip', null, false],
    ['oil the lip; threadlocker on the bolts', 'threadlocker', false],
    ['never oil', null, false],
    ['never oil the threads', null, true],
    ['clean of oil', null, false],
    ['threads clean of oil', null, true],
    ['keep grease off the faces', null, false],
    ['oil passage', null, false],
    ['oiled', 'oil', false],
    ['a drop of oil under the head', 'oil', false],
    ['wipe the oil off the threads', null, true],
    ['dry', null, true],
    ['dry threads', null, true],
    ['new gasket dry', null, false],
    ['anti-seize, but none on the electrode', 'anti-seize', false],
    ['oil seal lip greased', null, false],
    ['bearing oiled', null, false],
    ['do not grease the threads', null, true],
  ])('%s: %s, dry %s', (text, smear, dry) => {
    expect(smearIn(text)).toBe(smear);
    expect(drySaid(text)).toBe(dry);
  });
});

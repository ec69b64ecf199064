/** Torque held against tables and worked examples in print. Editions are named: before VDI 2230:2001 tables lie lower. */
import { describe, expect, it } from 'vitest';
import { convert, readQuantity } from '../../src/bolt/read/units.ts';
import { threadOf } from '../../src/bolt/thread/threads.ts';
import { againstHole } from '../../src/bolt/torque/against-hole.ts';
import { armOf, atYield, nutFactorTorque } from '../../src/bolt/torque/preload.ts';
import { sane } from '../../src/bolt/torque/sane.ts';
import { adapterSetting } from '../../src/bolt/torque/wrench.ts';
import { TORQUES } from './torque-rows.ts';

const LBF = convert(1, 'lbf', 'N')!;

describe('VDI 2230:2001 and later, 90 % of yield', () => {
  it.each(TORQUES)('$thread $mark, friction $mu: $what $value ($confidence: $source)', (row) => {
    const ours = atYield(threadOf(row.thread)!, row.mark, row.mu, 0.9)!;
    expect(Math.abs(ours[row.what] - row.value)).toBeLessThanOrEqual(row.tolerance);
  });
});

describe('a torque in print never would break what it is printed for', () => {
  const tables = TORQUES.filter(({ what }) => what === 'torque');
  it.each(tables)('$thread $mark, friction $mu: $value N·m in steel', ({ thread, mark, value }) => {
    const torque = { value, to: null, unit: 'N·m' };
    const bite = 1.5 * threadOf(thread)!.d;
    const { verdict } = againstHole({ torque, thread, class: mark, bite, into: 'steel' });
    expect(['fine', 'cannot say']).toContain(verdict);
  });

  // VDI 2230: at the least friction 90 % of yield is what a bolt is tightened to.
  const least = tables.filter(({ mu, mark }) => mu === 0.1 && !mark.startsWith('A'));
  it.each(least)(
    '$thread $mark, the least friction: $value N·m is fine',
    ({ thread, mark, value }) => {
      const torque = { value, to: null, unit: 'N·m' };
      const bite = 2 * threadOf(thread)!.d;
      const into = 'forged aluminium';
      expect(againstHole({ torque, thread, class: mark, bite: 3 * bite, into }).verdict).toBe(
        'fine',
      );
    },
  );
});

describe('tables for friction 0.14 older than VDI 2230:2001', () => {
  // Strobl Strocomp manual p. 10-2 and Elora technical tables 2018; two sources agree, tolerance 5 %.
  it.each([
    ['M5', '10.9', 8.7],
    ['M5', '12.9', 10],
    ['M6', '8.8', 10],
    ['M6', '10.9', 15],
    ['M6', '12.9', 18],
    ['M8', '8.8', 25],
    ['M8', '12.9', 43],
    ['M10', '8.8', 49],
    ['M10', '10.9', 72],
    ['M12', '8.8', 85],
  ])(
    '%s %s at %d N·m lies below ours, by 13 % at most and their own rounding',
    (thread, mark, printed) => {
      const ours = atYield(threadOf(thread)!, mark, 0.14, 0.9)!.torque;
      expect(ours / printed).toBeGreaterThan(1);
      expect(ours / printed).toBeLessThan(1.13 * 1.05);
    },
  );
});

describe('the nut factor, T = K d F', () => {
  // MW Components material strengths table: 75 % of the proof load in lbf; one source, tolerance 0.5 %.
  it.each([
    ['10-24', 0.2, 578, 0.75, 16.5, 0.005],
    ['10-32', 0.2, 660, 0.75, 18.8, 0.005],
    ['10-32', 0.15, 660, 0.75, 14.1, 0.005],
    ['1/4-20', 0.2, 1049, 0.75, 39.4, 0.005],
    ['1/4-20', 0.15, 1049, 0.75, 29.5, 0.005],
    ['1/4-28', 0.2, 1200, 0.75, 45, 0.005],
    ['1/4-28', 0.15, 1200, 0.75, 33.8, 0.005],
    ['3/8-16', 0.2, 2558, 0.75, 143.9, 0.005],
    // Bolt torque guide, studylib.net/doc/26058660: clamp load in lbf; one source, tolerance 2 lbf·in.
    ['1/4-20', 0.2, 1320, 1, 66, 0.03],
    ['1/4-20', 0.15, 1320, 1, 49, 0.04],
    ['1/4-28', 0.2, 1500, 1, 76, 0.026],
    ['10-24', 0.15, 1120, 1, 32, 0.06],
    ['10-32', 0.15, 1285, 1, 36, 0.055],
    ['1/4-20', 0.15, 2020, 1, 75, 0.026],
    ['1/4-28', 0.15, 2320, 1, 86, 0.023],
    // Shigley's Mechanical Engineering Design, example 8-3, from memory.
    ['3/4-16', 0.2, 25000, 1, 3750, 1e-4],
  ])('%s, K %d, %d lbf × %d: %d lbf·in', (thread, K, load, share, printed, tolerance) => {
    const ours = nutFactorTorque(threadOf(thread)!, load * share * LBF, K);
    expect(Math.abs(convert(ours, 'N·m', 'lbf·in')! / printed - 1)).toBeLessThanOrEqual(tolerance);
  });

  it('the full formula gives 3551 lbf·in for 3/4-16, 25 kip, friction 0.15 (Shigley example 8-3, from memory)', () => {
    const ours = (25000 * LBF * armOf(threadOf('3/4-16')!, 0.15, 0.15)) / 1000;
    expect(Math.abs(convert(ours, 'N·m', 'lbf·in')! / 3551 - 1)).toBeLessThan(0.005);
  });
});

describe('an adapter on the wrench', () => {
  it.each<[number, number, number, number, number, number, string]>([
    [
      135,
      10,
      1.5,
      0,
      117.39,
      0.01,
      'Robinson R66 maintenance manual p. 20.4; FAA AC 43.13-1B fig. 7-2',
    ],
    [135, 10, 1.5, 180, 158.82, 0.01, 'Robinson R66 maintenance manual p. 20.4, reversed'],
    [30, 1, 0.25, 0, 24, 1e-9, 'Piper PA-28-161 maintenance manual 2-90'],
    [30, 12, 6, 0, 20, 1e-9, 'torqwrench.com/Info/extens.php'],
    [50, 16, 2, 0, 44.44, 0.01, 'torque wrench manual, easymanua.ls/performance-tool/m199 p. 7'],
    [100, 1, 0.75, 0, 57.14, 0.01, 'forums.themonterocollective.com 483920, 1 ft wrench'],
    [100, 18, 3, 0, 85.71, 0.01, 'cal11.calculator.city/?p=4676'],
    [100, 18, 3, 45, 89.46, 0.01, 'cal11.calculator.city/?p=4676'],
    [80, 40, 5, 0, 71.1, 0.05, 'agentcalc.com/torque-wrench-extension-calculator'],
  ])('%d at %d with %d more at %d° is set to %d', (torque, L, A, angle, printed, tolerance) => {
    const ours = adapterSetting(torque, L, { length: A, angle })!;
    expect(Math.abs(ours - printed)).toBeLessThanOrEqual(tolerance);
  });
});

describe("makers' figures pass without a word", () => {
  // MTU MTN 5008, hand tightening, engine oil, friction 0.125; one source.
  it.each([
    ['M6', '8.8', '9 N·m'],
    ['M6', '10.9', '12 N·m'],
    ['M8', '10.9', '31 N·m'],
    ['M8x1', '10.9', '32 N·m'],
    ['M10', '8.8', '42 N·m'],
    ['M10', '10.9', '60 N·m'],
    ['M10x1.25', '8.8', '45 N·m'],
    ['M12', '8.8', '74 N·m'],
    ['M12x1.25', '10.9', '110 N·m'],
    ['M12x1.5', '8.8', '76 N·m'],
  ])('%s %s %s, marked and unmarked', (thread, mark, torque) => {
    expect(sane(readQuantity(torque)!, thread, mark)!.verdict).toBe('fine');
    expect(sane(readQuantity(torque)!, thread)!.verdict).toBe('fine');
  });

  // FAA AC 43.13-1B table 7-1, recommended torques, dry cadmium plated; two sources agree. No mark known.
  it.each([
    ['8-36', '12-15 lbf·in'],
    ['8-36', '7-9 lbf·in'],
    ['10-32', '20-25 lbf·in'],
    ['10-32', '12-15 lbf·in'],
    ['1/4-28', '50-70 lbf·in'],
    ['1/4-28', '30-40 lbf·in'],
    ['7/16-20', '450-500 lbf·in'],
    ['7/16-20', '270-300 lbf·in'],
    ['1/2-20', '480-690 lbf·in'],
    ['5/8-18', '1100-1300 lbf·in'],
    ['10-24', '20-25 lbf·in'],
    ['1/4-20', '25-30 lbf·in'],
    ['5/16-18', '80-90 lbf·in'],
    ['7/16-14', '235-255 lbf·in'],
  ])('%s unmarked, %s', (thread, torque) => {
    expect(sane(readQuantity(torque)!, thread)).toMatchObject({
      verdict: 'fine',
      suggest: [],
      say: null,
    });
  });

  // Common practice, no source: what covers of cast aluminium are tightened to.
  it.each([
    ['M5', '5 N·m'],
    ['M6', '10 N·m'],
    ['M6', '12 N·m'],
    ['M8', '25 N·m'],
    ['M10', '45 N·m'],
  ])("the trade's own %s unmarked, %s", (thread, torque) => {
    expect(sane(readQuantity(torque)!, thread)!.verdict).toBe('fine');
  });
});

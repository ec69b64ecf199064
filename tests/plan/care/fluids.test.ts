import { describe, expect, it } from 'vitest';
import { fillsIn, letOut } from '../../../src/plan/care/fluids.ts';
import { gate } from '../../../src/plan/gates/gate.ts';
import { done, jobOf, NOW } from '../make.ts';

describe('what a task lets out', () => {
  it.each([
    ['Drain the oil', 'the oil'],
    ['Drain the oil into a clean tray', 'the oil'],
    ['Warm it up and drain', 'what was in it'],
    ['Warm the engine and drain the old oil', 'the old oil'],
    ['let the oil out', 'the oil'],
    ['Let out the oil', 'the oil'],
    ['Let the gear oil run out overnight', 'the gear oil'],
    ['Remove the plug and drain', 'what was in it'],
    ['Take out the drain plug', 'what was in it'],
    ['Undo the sump plug, oil hot', 'the oil'],
    ['Open the drain cock', 'what was in it'],
    ['Pump the oil out', 'the oil'],
    ['Suck the brake fluid out of the reservoir', 'the brake fluid'],
    ['Empty the fuel tank', 'what was in the fuel tank'],
    ['Empty the gearbox', 'what was in the gearbox'],
    ['Drain the forks', 'what was in the forks'],
    ['Drop the oil', 'the oil'],
    ['Dump the old oil', 'the old oil'],
    ['Oil out', 'Oil'],
    ['Take the fork oil out', 'the fork oil'],
    ['Drain off the petrol', 'the petrol'],
    ['Drained it, oil black', 'the oil'],
  ])('%s: %s', (say, what) => {
    expect(letOut(say)).toBe(what);
  });

  it.each([
    'Tighten the drain plug',
    'Renew the drain plug washer',
    'Clean the drain holes',
    'Change the oil and the filter',
    'Drain and refill the gearbox',
    'Drop the oil pan',
    'Take the oil pump out',
    'Check the oil',
    'Scrape both faces',
    'Fill with 1.9 l of oil',
  ])('%s: nothing', (say) => {
    expect(letOut(say)).toBe(null);
  });

  it.each([
    'Fill with 1.9 l of oil',
    'Refill',
    'Top up the oil',
    'Pour 2 l in',
    'Put the oil in',
    'Add oil',
  ])('%s fills in', (say) => {
    expect(fillsIn(say)).toBe(true);
  });

  it.each(['Warm it up and drain', 'let the oil out', 'Remove the plug and drain'])(
    'once done, %s stops the start until it is in again, with or without a task for it',
    (say) => {
      const stops = (text: string, lines: Parameters<typeof jobOf>[1]) =>
        gate(jobOf(text, lines), 'start', null, NOW).items.filter((i) => i.stops && !i.done);
      const drain = `drain: {do: "${say}"}`;
      const alone = stops(`tasks: {${drain}}`, [done('drain')]);
      expect(alone.map((i) => [i.key, i.way])).toEqual([['fluid-drain', { to: 'tick' }]]);
      const both = `tasks: {${drain}, fill: {do: Fill with 1.9 l of oil, after: drain}}`;
      expect(stops(both, [done('drain')])[0]?.way).toEqual({ to: 'task', task: 'fill' });
      expect(stops(both, [done('drain'), done('fill')])).toEqual([]);
    },
  );
});

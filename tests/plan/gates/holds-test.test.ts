/** What stops before the start holds a test, but for the one that says just that. */
import { expect, it } from 'vitest';
import { holdsTest } from '../../../src/plan/gates/holds-test.ts';
import { boltsOff, boltsOn, jobOf, NOW } from '../make.ts';

const TEXT = (test: string) => `bolts: {C: M8x30}
pieces: {caliper: {care: brake, bolts: C C}}
tasks: {it: {test: ${test}, after: caliper on}}`;
const back = [...boltsOff('caliper', 'C C'), ...boltsOn('caliper', 'C C')];
const held = (test: string) => holdsTest(jobOf(TEXT(test), back), 'it', NOW).map((i) => i.key);

it('a test of the brake waits for the lever, and pumping the lever does not wait for itself', () => {
  expect(held('Brake holds on a slope')).toEqual(['brake-caliper']);
  expect(held('Pump the lever until it is hard')).toEqual([]);
  expect(held('Lever pumped firm and then holds at a walk')).toEqual(['brake-caliper']);
});

it('one for which the machine runs waits for all that stops, whatever else it says', () => {
  expect(held('Ride round the yard and pump the brake')).toContain('brake-caliper');
});

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { shipped } from '../../../src/diary/shipped.ts';
import { startsShipped } from '../../../src/diary/starts.made.ts';
import { fold } from '../../../src/job/fold/fold.ts';
import { readJob } from '../../../src/job/read.ts';
import { checkAll } from '../../../src/plan/check.ts';
import { onlyWarmSaid, startFor } from '../../../src/plan/trace/starts.ts';
import { traced } from '../../../src/plan/trace/traced.ts';

const NAMES = ['engine-wont-start', 'machine-wont-run', 'noise', 'oil-leak'];
const text = (name: string) => readFileSync(join(shipped('templates'), `${name}.yaml`), 'utf8');

it('lists to start from come with the program', () => {
  expect(startsShipped().map(({ name }) => name)).toEqual(NAMES);
});

describe.each(NAMES)('%s', (name) => {
  const { upper } = readJob(text(name), name);

  it('is read in silence', () => {
    expect(checkAll(text(name), name)).toEqual([]);
  });

  it('opens with a next look, and ends with every suspect by itself or told as not to be told apart', () => {
    const { answer, next } = traced(fold(upper, []));
    expect(answer.faults).toEqual([]);
    expect(answer.expected.exact).toBe(true);
    expect(next?.good.length).toBeGreaterThan(0);
    expect(next?.bad.length).toBeGreaterThan(0);
    expect(answer.untimed).toEqual({ checks: [], covers: [], repairs: [] });
  });

  it('has a look for each suspect but the one that is left when all others are out', () => {
    const { suspects, checks } = upper;
    const shown = new Set([...checks.values()].flatMap(({ bad, along }) => [...bad, ...along]));
    expect([...suspects.keys()].filter((key) => !shown.has(key))).toEqual([]);
  });

  it('has a caution at every look that runs, opens, burns, cuts or turns something', () => {
    const harmless = ['play', 'level', 'soot'];
    const bare = [...upper.checks.values()].filter(({ caution }) => caution.length === 0);
    expect(bare.map(({ key }) => key).filter((key) => !harmless.includes(key))).toEqual([]);
  });
});

it.each<[string, string, RegExp]>([
  ['engine-wont-start', 'spark', /[Ff]uel shut off, spills wiped up and aired/],
  ['engine-wont-start', 'runs', /Petrol burns/],
  ['machine-wont-run', 'fuse-through', /tried dead/],
  ['oil-leak', 'above', /hot parts/],
  ['noise', 'rock', /On stands/],
  // Mains off, what turns, air, and a spark away from fuel.
  ['machine-wont-run', 'turns', /^Plug out and in your sight/],
  ['machine-wont-run', 'hums', /hands, hair and clothes away/],
  ['noise', 'parked', /^Exhaust outdoors.*away from what turns/],
  ['oil-leak', 'above', /^Exhaust outdoors/],
  ['engine-wont-start', 'runs', /^Petrol burns at a spark.*Outdoors or with the door open/],
])('%s, %s: its caution', (name, check, says) => {
  expect(readJob(text(name), name).upper.checks.get(check)?.caution.join(' ')).toMatch(says);
});

it('says nothing that is lost where the built program has it as data', () => {
  expect(JSON.parse(JSON.stringify(startsShipped()))).toEqual(startsShipped());
});

it.each([
  ["Won't start", 'engine-wont-start'],
  ['No start when hot', 'engine-wont-start'],
  ['Hard to start', 'engine-wont-start'],
  ['Saw won’t run', 'machine-wont-run'],
  ['Left cover drips', 'oil-leak'],
  ['Oil under the left cover', 'oil-leak'],
  ['A noise from the front wheel', 'noise'],
  ['Noisy gearbox', 'noise'],
  ['It stalls when warm', null],
  ['Engine runs rough', null],
  ['Stalls at the start of a ride', null],
  ['What is wrong', null],
  ['', null],
])('%s: the list that fits is %s', (complaint, name) => {
  expect(startFor(startsShipped(), complaint)?.name ?? null).toBe(name);
});

it.each([
  ['It stalls when warm', true],
  ['Cuts out hot', true],
  ['Misfires once it gets hot', true],
  ['Dies after 20 min', true],
  ['No spark warmed up', true],
  ['Runs hot', false],
  ['Gets too hot', false],
  ["Won't start", false],
  ['Noise after an oil change', false],
])('%s: only there warm is %s', (job, is) => {
  expect(onlyWarmSaid({ job, complaint: null }) !== null).toBe(is);
  expect(onlyWarmSaid({ job: 'Round two', complaint: job }) !== null).toBe(is);
});

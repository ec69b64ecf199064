/** What stops before the start comes before a test: of its own pieces, or all where the machine runs. */
import { expect, it } from 'vitest';
import { holdsTest } from '../../../src/plan/gates/holds-test.ts';
import { Bench } from '../../job/bench.ts';
import { Desk, SAME_DAY } from '../desk.ts';

const JOB = `putback: 1
job: Brakes
pieces: {brake-lever: {}, front-wheel: {}}
diary:
`;

function back(...pieces: string[]): Bench {
  const bench = new Bench(JOB);
  for (const piece of pieces) {
    bench.mark({ do: 'off', piece });
    bench.mark({ do: 'on', piece });
  }
  return bench;
}

it('a brake is not tested before its lever was pumped', () => {
  const desk = new Desk(back('brake-lever')).press('t');
  while (!/> .*holds at a walk/.test(desk.frame)) desk.press('down');
  desk.press('enter');
  expect(desk.frame).toMatch(/STOP[\s\S]*Brake lever: lever pumped until it is firm\./);
  desk.press('p');
  expect(desk.bench.entries.map((e) => e.verb)).not.toContain('done');
  expect(desk.frame).toContain('What stops comes first.');
  desk.press('enter');
  expect(desk.bench.entries.at(-1)).toMatchObject({
    verb: 'seen',
    value: 'start brake-brake-lever',
  });
  expect(desk.frame).not.toContain('STOP');
  desk.press('p');
  expect(desk.bench.entries.at(-1)).toMatchObject({ task: 'brake-lever-holds', value: 'passed' });
});

it('a wheel has a test of its own', () => {
  const desk = new Desk(back('front-wheel')).press('t');
  expect(desk.frame).toContain(
    'Front wheel: spins free, rocks without play, its nut tight and locked?',
  );
});

const LEAK = `putback: 1
job: Cover weeps
bolts: {S: M6x25}
pieces: {cover: {bolts: S S, torque: 10 N·m}, shelf: {}}
tasks:
  drain: {do: Drain the oil, before: cover off}
  fill: {do: Fill with 1.9 l of oil, after: cover on}
  weep: {test: Five minutes at idle, after: cover on}
  wipe: {test: Shelf is dry, after: shelf on}
diary:
`;

/** All is back and tight, and the oil is not in again. */
function dry(): Bench {
  const bench = new Bench(LEAK);
  bench.mark({ do: 'done', task: 'drain' });
  bench.mark({ do: 'out', piece: 'cover' });
  bench.mark({ do: 'off', piece: 'cover' });
  bench.mark({ do: 'in', piece: 'cover', holes: ['1', '2'], hand: { kind: 'S' } });
  for (const pass of ['snug', 'full']) bench.mark({ do: 'tight', piece: 'cover', pass });
  return bench;
}

function atTest(bench: Bench, said: string): Desk {
  const desk = new Desk(bench).press('t');
  for (let i = 0; i < 5 && !new RegExp(`> .*${said}`).test(desk.frame); i += 1) desk.press('down');
  return desk.press('enter');
}

const passed = (bench: Bench) =>
  bench.entries.some((e) => e.task === 'weep' && e.value === 'passed');

it('with the start list left by Esc its STOP stands at the test, which does not pass', () => {
  const bench = dry();
  const desk = atTest(bench, 'Five minutes at idle');
  expect(desk.screen).toBe('gate');
  desk.press('escape');
  expect(desk.screen).toBe('task');
  expect(desk.frame).toMatch(/STOP[\s\S]*The oil has been out since/);
  desk.press('p');
  expect(desk.frame).toContain('What stops comes first.');
  desk.press('r');
  expect(desk.screen).toBe('task');
  expect(passed(bench)).toBe(false);
  // The way out leads to the fill; done, the test passes.
  desk.press('enter enter');
  expect(bench.job.tasks.get('fill')?.done).toBe('done');
  expect(desk.frame).not.toContain('STOP');
  desk.press('p');
  expect(passed(bench)).toBe(true);
});

it('in spite of STOP it passes with a reason, which holds until something changes', () => {
  const bench = dry();
  const desk = atTest(bench, 'Five minutes at idle').press('escape');
  desk.press('w').type('dry run on the starter').press('enter');
  expect(bench.entries.at(-1)).toMatchObject({
    verb: 'seen',
    value: 'start fluid-drain',
    because: 'dry run on the starter',
  });
  expect(desk.frame).not.toContain('STOP');
  bench.mark({ do: 'inside', what: '1 rag' });
  expect(holdsTest(bench.job, 'weep', SAME_DAY).map((i) => i.key)).toEqual([
    'fluid-drain',
    'inside-rag',
  ]);
});

it('a reason given at the list of the start holds for the test too', () => {
  const bench = dry();
  const desk = atTest(bench, 'Five minutes at idle')
    .press('w')
    .type('no oil needed')
    .press('enter');
  expect(desk.screen).toBe('task');
  desk.press('p');
  expect(passed(bench)).toBe(true);
});

it('a test for which nothing runs is held by its own pieces alone', () => {
  expect(holdsTest(dry().job, 'wipe', SAME_DAY)).toEqual([]);
  expect(holdsTest(dry().job, 'weep', SAME_DAY).map((i) => i.key)).toEqual(['fluid-drain']);
});

/** While the fault is looked for, the look is next, and not the cover that came off for it. */
import { expect, it } from 'vitest';
import { nextOnJob } from '../../../src/plan/next/next-on-job.ts';
import { plan } from '../../../src/plan/plan.ts';
import { Bench } from '../../job/bench.ts';

const NOW = '2026-04-11T19:00:00+02:00';
const GEARS = `putback: 1
job: Jumps out of third
bolts: {S: M6x20}
pieces: {cover: {bolts: S S}, drum: {under: cover, bolts: S}}
suspects: {fork: Bent fork, dogs: Worn dogs, spring: Detent spring broken}
checks:
  detent: {check: Detent held by hand, bad: spring, takes: 2 min}
  forks: {check: Forks looked at, bad: fork, under: drum, takes: 2 min}
diary:
`;
const next = ({ job }: Bench) => {
  const found = nextOnJob(job, { plan: plan(job, NOW), cures: [], now: NOW });
  return found && [found.piece, found.say];
};

it('names the look, then what is over the next one, then leaves the rest to the pieces', () => {
  const bench = new Bench(GEARS);
  expect(next(bench)).toEqual([null, 'Look for the fault: Detent held by hand.']);
  bench.mark({ do: 'look', check: 'detent', how: 'good' });
  expect(next(bench)).toEqual(['cover', 'Cover: take it off to look at: Forks looked at.']);
  bench.mark({ do: 'out', piece: 'cover', holes: ['1'] });
  expect(next(bench)?.[1]).toBe('Cover: 1 bolt to come out.');
  bench.mark({ do: 'out', piece: 'cover' });
  bench.mark({ do: 'off', piece: 'cover' });
  expect(next(bench)).toEqual(['drum', 'Drum: take it off to look at: Forks looked at.']);
  bench.mark({ do: 'out', piece: 'drum' });
  bench.mark({ do: 'off', piece: 'drum' });
  expect(next(bench)).toEqual([null, 'Look for the fault: Forks looked at.']);
  bench.mark({ do: 'look', check: 'forks', how: 'bad' });
  expect(next(bench)?.[0]).toBe('drum');
});

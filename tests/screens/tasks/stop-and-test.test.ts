/** A test of what keeps somebody alive: what stops about its piece comes before it. */
import { expect, it } from 'vitest';
import { Bench } from '../../job/bench.ts';
import { Desk } from '../desk.ts';

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

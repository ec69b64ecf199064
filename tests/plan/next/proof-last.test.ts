/** What proves a mending is tried when all is back, and what is off is named at a test for which the machine runs. */
import { expect, it } from 'vitest';
import { notBackAt } from '../../../src/plan/gates/holds-test.ts';
import { nextNow } from '../../../src/plan/next/next-now.ts';
import { foundWish } from '../../../src/plan/trace/found.ts';
import { Bench } from '../../job/bench.ts';
import { SAME_DAY } from '../../screens/desk.ts';

it('the piece that is off goes back before the look that proves it', () => {
  const bench = new Bench(`putback: 1
job: Does not charge
pieces: {regulator: {bolts: S S}}
suspects: {regulator: {what: regulator}}
checks: {volts: {check: voltage at 3000 rpm, limit: 14.0..14.8 V, bad: [regulator]}}
diary:
`);
  bench.mark({ do: 'look', check: 'volts', how: 'bad', reading: '12.4 V' });
  bench.mark({ do: 'out', piece: 'regulator' });
  bench.mark({ do: 'off', piece: 'regulator' });
  const wish = foundWish(bench.job, 'regulator');
  bench.mark(wish);
  const { mend, test } = wish;
  bench.mark({ do: 'done', task: mend?.key ?? '' });
  expect(nextNow(bench.job, SAME_DAY)?.rung).toBe('regulator');
  expect(notBackAt(bench.job, test?.key ?? '', SAME_DAY)).toBe('Not back: Regulator.');
});

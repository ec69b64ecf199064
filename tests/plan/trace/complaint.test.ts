/** What was found is proved by its own look; what brought the machine in is tried last of all. */
import { describe, expect, it } from 'vitest';
import { readJob } from '../../../src/job/read.ts';
import { nextNow } from '../../../src/plan/next/next-now.ts';
import { faultStands, foundWish } from '../../../src/plan/trace/found.ts';
import { endSaid, traceRows } from '../../../src/plan/trace/say.ts';
import { traced } from '../../../src/plan/trace/traced.ts';
import { Bench } from '../../job/bench.ts';
import { SAME_DAY } from '../../screens/desk.ts';

const TWIN = `putback: 1
job: Left cylinder dead
complaint: Runs on one cylinder
suspects: {plug: Plug fouled, lead: Lead broken, jet: Jet blocked}
checks:
  spark: {check: Spark at the left plug, bad: [plug, lead]}
  through: {check: Lead has a way through, bad: lead}
diary:
`;

/** Looked at, found, put right, and the look that showed it good. */
function proved(): Bench {
  const bench = new Bench(TWIN);
  bench.mark({ do: 'look', check: 'spark', how: 'bad' });
  bench.mark(foundWish(bench.job, 'plug'));
  bench.mark({ do: 'done', task: 'mend-plug' });
  bench.mark({ do: 'look', check: 'spark', how: 'good' });
  return bench;
}

const said = (bench: Bench) => endSaid(bench.job, traced(bench.job)).join(' ');
const share = ({ job }: Bench, of: string) =>
  traceRows(job, traced(job)).find(({ name }) => name === of)?.share;

describe('the complaint, when what was found is proved', () => {
  it('is the last test, in its own words', () => {
    const bench = proved();
    expect(bench.job.tasks.get('complaint-gone')?.spec).toMatchObject({
      say: { text: 'Runs on one cylinder: try whether it is gone' },
      after: ['proof-plug'],
    });
    expect(traced(bench.job)).toMatchObject({ proved: true, complaint: 'untried', next: null });
    expect(said(bench)).toBe(
      'Found, put right and proved: Plug fouled. Last of all: Runs on one cylinder: try whether it is gone.',
    );
    expect(nextNow(bench.job, SAME_DAY)?.say).toContain('Runs on one cylinder');
    expect(share(bench, 'jet')).toBe('may be');
    expect(faultStands(bench.job)).toBe('put right');
  });

  it('is gone where it passed, and nothing is left to do', () => {
    const bench = proved();
    bench.mark({ do: 'done', task: 'complaint-gone', result: 'passed' });
    expect(traced(bench.job)).toMatchObject({ complaint: 'gone', next: null });
    expect(share(bench, 'jet')).toBe('not it');
    expect(said(bench)).toBe('Found, put right and proved: Plug fouled.');
    expect(faultStands(bench.job)).toBe('tested');
  });

  it('that is there still leads on to the rest, and the same test waits behind what is found then', () => {
    const bench = proved();
    bench.mark({ do: 'done', task: 'complaint-gone', result: 'failed' });
    expect(traced(bench.job)).toMatchObject({ proved: true, complaint: 'still' });
    expect(share(bench, 'jet')).toBe('may be');
    expect(said(bench)).toBe(
      'Found, put right and proved: Plug fouled. The complaint is there still: that was not all. It is Jet blocked, or something that is not on the list.',
    );
    const left = traced(bench.job).answer.suspects.filter((s) => s.cleared.length === 0);
    expect(left.map(({ name }) => name)).toEqual(['jet']);
    const wish = foundWish(bench.job, 'jet');
    // No look showed the jet: its proof is the complaint itself.
    expect(wish).not.toHaveProperty('gone');
    expect(wish.test?.fields.test).toBe('Runs on one cylinder: try whether it is gone');
    bench.mark(foundWish(bench.job, 'lead'));
    expect(traced(bench.job).complaint).toBe('untried');
    expect([...bench.job.tasks.keys()].filter((key) => key.startsWith('complaint'))).toEqual([
      'complaint-gone',
    ]);
  });

  it('is tried anew where it passed once and something was found again', () => {
    const bench = proved();
    bench.mark({ do: 'done', task: 'complaint-gone', result: 'passed' });
    bench.mark({ do: 'look', check: 'through', how: 'bad' });
    bench.mark(foundWish(bench.job, 'lead'));
    expect(bench.job.tasks.get('complaint-gone-2')).toMatchObject({
      done: null,
      spec: { after: ['proof-lead'] },
    });
    expect(traced(bench.job).complaint).toBe('untried');
  });

  it('goes out of the file with what was found, while nobody marked it', () => {
    const bench = new Bench(TWIN);
    bench.mark({ do: 'look', check: 'spark', how: 'bad' });
    const found = bench.mark(foundWish(bench.job, 'plug'));
    const whole = bench.text;
    bench.mark({ do: 'undo', id: found.id });
    const { upper, faults } = readJob(bench.text, 'a.yaml');
    expect([faults, upper.tasks.size, upper.found]).toEqual([[], 0, null]);

    const marked = new Bench(whole);
    marked.mark({ do: 'done', task: 'complaint-gone', result: 'failed' });
    expect(marked.ask({ do: 'undo', id: found.id })).toMatchObject({ ok: false });
  });
});

import { describe, expect, it } from 'vitest';
import { readJob } from '../../../src/job/read.ts';
import { foundWish } from '../../../src/plan/trace/found.ts';
import { benchRow } from '../../../src/screens/terminal/bench-row.ts';
import { Bench } from '../../job/bench.ts';

const BARE = `putback: 1
job: Won't start
suspects:
  plug: Plugs fouled
checks:
  spark: {check: Spark at the plug, bad: plug}
diary:
`;

describe('a job without pieces, in the list of a bench', () => {
  it('says how far its fault is: looked for, found, put right, tested', () => {
    const bench = new Bench(BARE);
    const row = () => {
      const read = { ...readJob(bench.text, 'a.yaml'), ok: true, job: bench.job } as const;
      const { stands, next } = benchRow('a.yaml', read as never, '2026-04-11T18:00:00+00:00');
      return [stands, next];
    };
    expect(row()).toEqual(['new', '']);
    bench.mark({ do: 'look', check: 'spark', how: 'bad' });
    expect(row()).toEqual(['finding the fault', '']);
    bench.mark(foundWish(bench.job, 'plug'));
    expect(row()).toEqual(['fault found', 'Put right: Plugs fouled.']);
    bench.mark({ do: 'done', task: 'mend-plug' });
    expect(row()).toEqual(['put right', 'Test: Spark at the plug, once more.']);
    bench.mark({ do: 'look', check: 'spark', how: 'good' });
    expect(row()).toEqual(['put right', "Test: Won't start: try whether it is gone."]);
    bench.mark({ do: 'done', task: 'complaint-gone', result: 'passed' });
    expect(row()).toEqual(['tested', '']);
  });
});

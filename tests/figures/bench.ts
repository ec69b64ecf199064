/** A bench of 10,000 jobs: finding words in it, its index, its first rows, what it takes of memory. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as later } from 'node:timers/promises';
import { madeBench } from '../find/made-bench.ts';
import { PUTBACK } from '../terminal/world.ts';
import { byTurns, type Figures, median, ms, type Row, time } from './measure.ts';
import { open } from './terminal.ts';

const JOBS = 10_000;
const RUNS = 9;

export const figures: Figures = async () => {
  const top = mkdtempSync(join(tmpdir(), 'putback-figures-'));
  const [large, small] = [join(top, 'large'), join(top, 'small')];
  try {
    const text = madeBench(large, JOBS);
    madeBench(small, 10);
    const ask =
      (...words: string[]) =>
      () =>
        time(() =>
          execFileSync(process.execPath, [PUTBACK, 'find', ...words, '--most', '5'], {
            cwd: large,
          }),
        );
    const cold = await ask('gasket', 'hollin')();
    const index = readdirSync(join(large, '.putback'))
      .map((name) => statSync(join(large, '.putback', name)).size)
      .reduce((a, b) => a + b);
    const rows: Row[] = [
      against('find in 10,000 jobs, without an index yet', '20 s', cold, 20_000),
      {
        what: 'index of 10,000 jobs',
        against: 'their text',
        ratio: index / text,
        goal: 2,
        measured: `${mb(index)} / ${mb(text)}`,
      },
    ];
    for (const words of [['210'], ['stuck'], ['hollin', 'sealant'], ['2015-05']]) {
      const times: number[] = [];
      for (let i = 0; i < RUNS; i++) times.push(await ask(...words)());
      rows.push(against(`find ${words.join(' ')}, whole process`, '300 ms', median(times), 300));
    }
    const first = (folder: string) => async () => {
      const terminal = open([PUTBACK], folder);
      const { ms: took } = await terminal.until((bytes) => bytes.includes('> '));
      await terminal.end('q');
      return took;
    };
    const { one, other } = await byTurns(RUNS, first(large), first(small));
    rows.push({
      what: 'first rows of a bench of 10,000 jobs',
      against: 'of one of 10',
      ratio: median(one) / median(other),
      goal: 1.2,
      measured: `${ms(median(one))} / ${ms(median(other))}`,
    });
    rows.push(...(await whileReading(large)));
    return rows;
  } finally {
    rmSync(top, { recursive: true, force: true });
  }
};

const mb = (bytes: number): string => `${(bytes / 1e6).toFixed(0)} MB`;

function against(what: string, than: string, took: number, goal: number): Row {
  return { what, against: than, ratio: took / goal, goal: 1, measured: `${ms(took)} / ${than}` };
}

/** The screens while all of it is read: the most memory, and how soon `q` ends them. */
async function whileReading(folder: string): Promise<Row[]> {
  const terminal = open([PUTBACK], folder);
  await terminal.until((bytes) => bytes.includes('> '));
  await later(3000);
  const most = peakOf(terminal.pid);
  const took = await time(() => terminal.end('q'));
  return [
    {
      what: 'memory of the screens on 10,000 jobs, at most',
      against: '200 MB',
      ratio: most / 200e6,
      goal: 1,
      measured: mb(most),
    },
    against('q while the bench is read', '300 ms', took, 300),
  ];
}

/** Linux alone says it. */
function peakOf(pid: number): number {
  const status = readFileSync(`/proc/${pid}/status`, 'utf8');
  return Number(/VmHWM:\s+(\d+) kB/.exec(status)?.[1] ?? 0) * 1024;
}

/** Starting: a plain command against an empty program, the first full frame against one word. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { bundle } from '../terminal/bundle.ts';
import { PUTBACK } from '../terminal/world.ts';
import { bigJob } from './job.ts';
import { byTurns, type Figures, median, ms, time } from './measure.ts';
import { open } from './terminal.ts';

const RUNS = 21;

export const figures: Figures = async () => {
  const folder = mkdtempSync(join(tmpdir(), 'putback-figures-'));
  const word = await bundle('tests/figures/programs/word.tsx');
  try {
    const job = join(folder, 'cover.yaml');
    const empty = join(folder, 'empty.mjs');
    writeFileSync(job, bigJob(40));
    writeFileSync(empty, '');

    const node =
      (...args: string[]) =>
      () =>
        time(() => execFileSync(process.execPath, args, { cwd: folder }));
    const check = await byTurns(RUNS, node(PUTBACK, 'check', job), node(empty));

    const seen = (args: string[], last: string) => async () => {
      const terminal = open(args, folder);
      const { ms } = await terminal.until((bytes) => bytes.includes(last));
      await terminal.end('q');
      return ms;
    };
    const frame = await byTurns(RUNS, seen([PUTBACK, job], 'to the pieces'), seen([word], 'word'));

    return [
      row('`check` of 40 holes, whole process', 'empty Node program', check, 3),
      row('first full frame of a job of 40 holes', 'bundled one-word Ink program', frame, 1.3),
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
    rmSync(dirname(word), { recursive: true, force: true });
  }
};

function row(
  what: string,
  against: string,
  times: { one: number[]; other: number[] },
  goal: number,
) {
  const [one, other] = [median(times.one), median(times.other)];
  return { what, against, ratio: one / other, goal, measured: `${ms(one)} / ${ms(other)}` };
}

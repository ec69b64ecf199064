/** Starting: a plain command against an empty program, the first full frame against one word. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { bundle } from '../terminal/bundle.ts';
import { PUTBACK, pinnedEnv } from '../terminal/world.ts';
import { bigJob, coversJob } from './job.ts';
import { byTurns, type Figures, median, ms, time } from './measure.ts';
import { open } from './terminal.ts';

const RUNS = 21;
const FEW = 5;
/** Bytes. */
const PACKAGE = 350_000;

export const figures: Figures = async () => {
  const folder = mkdtempSync(join(tmpdir(), 'putback-figures-'));
  const word = await bundle('tests/figures/programs/word.tsx');
  try {
    const job = join(folder, 'cover.yaml');
    const empty = join(folder, 'empty.mjs');
    writeFileSync(job, bigJob(40));
    writeFileSync(empty, '');

    // A cache of its own: what runs of the tests on faulty files needed besides would be fetched with the rest.
    const env = { ...pinnedEnv(folder), XDG_CACHE_HOME: join(folder, 'cache') };
    const node =
      (...args: string[]) =>
      () =>
        time(() => execFileSync(process.execPath, args, { cwd: folder, env }));
    // What a first and a second run keep is there for those that are measured, as for a person on the second day.
    for (const command of ['check', 'status', 'check', 'status'])
      await node(PUTBACK, command, job)();
    const check = await byTurns(RUNS, node(PUTBACK, 'check', job), node(empty));
    const status = await byTurns(RUNS, node(PUTBACK, 'status', job), node(empty));

    const many = join(folder, 'many.yaml');
    writeFileSync(many, coversJob(50, 200));
    const large = await byTurns(FEW, node(PUTBACK, 'check', many), node(PUTBACK, 'check', job));

    const seen = (args: string[], last: string, more?: Record<string, string>) => async () => {
      const terminal = open(args, folder, 80, 24, more);
      const { ms } = await terminal.until((bytes) => bytes.includes(last));
      await terminal.end('q');
      return ms;
    };
    const first = seen([PUTBACK, job], 'to the pieces');
    await first();
    const frame = await byTurns(RUNS, first, seen([word], 'word'));
    const cache = { NODE_COMPILE_CACHE: join(folder, 'compiled') };
    const cached = await byTurns(RUNS, first, seen([word], 'word', cache));

    const oneWord = 'bundled one-word Ink program';
    return [
      row('`check` of 40 holes, whole process', 'empty Node program', check, 1.7),
      row('`status` of 40 holes, whole process', 'empty Node program', status, 1.8),
      row('`check` of 10,000 holes, fifty covers', '`check` of 40', large, 6),
      row('first full frame of a job of 40 holes', oneWord, frame, 0.85),
      row('the same', `${oneWord} with Node's compile cache`, cached, 0.85),
      packed(),
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
    rmSync(dirname(word), { recursive: true, force: true });
  }
};

/** What a person loads who installs it. */
function packed() {
  const args = ['pack', '--dry-run', '--json', '--ignore-scripts'];
  const said = execFileSync('npm', args, { cwd: join(import.meta.dirname, '../..') });
  const { size } = JSON.parse(said.toString())[0] as { size: number };
  const kB = (bytes: number) => `${Math.round(bytes / 1000)} kB`;
  const measured = `${kB(size)} / ${kB(PACKAGE)}`;
  return { what: 'the package', against: kB(PACKAGE), ratio: size / PACKAGE, goal: 1, measured };
}

function row(
  what: string,
  against: string,
  times: { one: number[]; other: number[] },
  goal: number,
) {
  const [one, other] = [median(times.one), median(times.other)];
  return { what, against, ratio: one / other, goal, measured: `${ms(one)} / ${ms(other)}` };
}

/** What safety costs: eight writers at once, a merge by meaning, a start beside what a killed run left. */
import { execFileSync, spawn } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { self } from '../../src/job/save/holder.ts';
import { bundle } from '../terminal/bundle.ts';
import { PUTBACK } from '../terminal/world.ts';
import { bigJob } from './job.ts';
import { byTurns, type Figures, median, ms, type Row, time } from './measure.ts';
import { open } from './terminal.ts';

const WRITERS = 8;
const EACH = 40;
const RUNS = 15;

export const figures: Figures = async () => [await writers(), await merge(), await start()];

/** Marks that eight processes at once bring to disk, against one process that marks as many alone. */
async function writers(): Promise<Row> {
  const folder = mkdtempSync(join(tmpdir(), 'putback-figures-'));
  const marks = await bundle('tests/figures/programs/marks.ts');
  try {
    const job = join(folder, 'cover.yaml');
    /** ms from when all are ready to the end of the last. */
    const marked = async (processes: number, each: number) => {
      writeFileSync(job, bigJob(40));
      const markers = Array.from({ length: processes }, () => {
        const child = spawn(process.execPath, [marks, job, String(each)]);
        let text = '';
        return {
          ready: new Promise<void>((done) =>
            child.stdout.on('data', (part) => {
              text += String(part);
              done();
            }),
          ),
          go: () => child.stdin.write('go\n'),
          ended: new Promise<void>((done, fail) =>
            child.on('close', () => (text.includes('failed') ? fail(new Error(text)) : done())),
          ),
        };
      });
      await Promise.all(markers.map((m) => m.ready));
      const from = performance.now();
      for (const marker of markers) marker.go();
      await Promise.all(markers.map((m) => m.ended));
      return performance.now() - from;
    };
    const times = await byTurns(
      5,
      () => marked(WRITERS, EACH),
      () => marked(1, WRITERS * EACH),
    );
    const [one, other] = [median(times.one), median(times.other)];
    const rate = (n: number) => `${Math.round((1000 * WRITERS * EACH) / n)} marks a second`;
    return {
      what: `${WRITERS} processes marking one file, ${EACH} marks each`,
      against: 'one process making as many',
      ratio: one / other,
      goal: 3,
      measured: `${rate(one)} / ${rate(other)}`,
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
    rmSync(dirname(marks), { recursive: true, force: true });
  }
}

/** Whole processes; what git's own takes for the same text stands beside. */
async function merge(): Promise<Row> {
  const folder = mkdtempSync(join(tmpdir(), 'putback-figures-'));
  try {
    const path = (name: string) => join(folder, name);
    const base = bigJob(200);
    const end = (id: string) =>
      `  - {at: 2026-05-03T10:11:05+02:00, id: ${id}, piece: cover, hole: 1, tight: full}\n`;
    writeFileSync(path('base.yaml'), base);
    writeFileSync(path('left.yaml'), base.replace('A cover', 'One cover') + end('leftleft'));
    writeFileSync(path('right.yaml'), base.replace('10 N·m', '11 N·m') + end('rightrig'));
    writeFileSync(path('empty.mjs'), '');
    const run = (program: string, ...args: string[]) => {
      copyFileSync(path('left.yaml'), path('ours.yaml'));
      return time(() => execFileSync(program, args, { cwd: folder, stdio: 'pipe' }));
    };
    const files = ['base.yaml', 'ours.yaml', 'right.yaml'] as const;
    const times = await byTurns(
      RUNS,
      () => run(process.execPath, PUTBACK, 'merge', ...files),
      () => run(process.execPath, 'empty.mjs'),
    );
    const [o, b, t] = [files[1], files[0], files[2]];
    const git = await byTurns(
      RUNS,
      () => run('git', 'merge-file', '--union', '-p', o, b, t),
      async () => 0,
    );
    const [one, other] = [median(times.one), median(times.other)];
    return {
      what: 'merge of two jobs of 200 holes, whole process',
      against: 'empty Node program',
      ratio: one / other,
      goal: 5,
      measured: `${ms(one)} / ${ms(other)}; git merge-file of the same text ${ms(median(git.one))}`,
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The first frame beside a dead process's lock and half-written file, against a clean folder. */
async function start(): Promise<Row> {
  const folder = mkdtempSync(join(tmpdir(), 'putback-figures-'));
  try {
    const job = join(folder, 'cover.yaml');
    writeFileSync(job, bigJob(40));
    const seen = async () => {
      const terminal = open([PUTBACK, job], folder);
      const { ms: took } = await terminal.until((bytes) => bytes.includes('to the pieces'));
      await terminal.end('q');
      return took;
    };
    const side = join(dirname(job), '.putback');
    const dead = { ...self(), pid: 4_194_303, nonce: 'n', at: '2026-05-02T08:11:05.123Z' };
    const beside = () => {
      mkdirSync(side, { recursive: true });
      writeFileSync(join(side, '.gitignore'), '*\n');
      writeFileSync(join(side, 'cover.yaml.lock'), JSON.stringify(dead));
      writeFileSync(join(side, 'cover.yaml.0123456789abcdef.tmp'), bigJob(40));
      return seen();
    };
    const times = await byTurns(RUNS, beside, () => {
      rmSync(side, { recursive: true, force: true });
      return seen();
    });
    const [one, other] = [median(times.one), median(times.other)];
    return {
      what: 'first frame beside a dead lock and a half-written file',
      against: 'the same in a clean folder',
      ratio: one / other,
      goal: 1.1,
      measured: `${ms(one)} / ${ms(other)}`,
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

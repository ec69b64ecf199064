/** A key: how long until its frame is written out, and how many bytes that is, on a piece of 200 holes. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { bundle } from '../terminal/bundle.ts';
import { DOWN, LEFT, RIGHT, UP } from '../terminal/keys.ts';
import { PUTBACK } from '../terminal/world.ts';
import { bigJob } from './job.ts';
import { type Figures, median, ms, quantile } from './measure.ts';
import { aFrame, open, type Terminal } from './terminal.ts';

const KEYS = 200;
/** Big enough that all of the 200 holes are drawn. */
const [COLUMNS, ROWS] = [160, 50];
/** ms: a frame of a screen that draws sixty a second. */
const FRAME = 1000 / 60;
const BYTES = 1000;

export const figures: Figures = async () => {
  const folder = mkdtempSync(join(tmpdir(), 'putback-figures-'));
  const bare = await bundle('tests/figures/programs/bare.tsx');
  try {
    const job = join(folder, 'cover.yaml');
    writeFileSync(job, bigJob(200));
    const putback = open([PUTBACK, job], folder, COLUMNS, ROWS);
    const plain = open([bare], folder, COLUMNS, ROWS);
    await putback.until((bytes) => bytes.includes('to the pieces'));
    for (const [key, seen] of TO_TIGHT) {
      putback.press(key);
      await putback.until((bytes) => bytes.includes(seen) && aFrame(bytes));
    }
    await plain.until(aFrame);

    const moves = { ours: await type(putback, ROUND), bare: await type(plain, ['x']) };
    const marks = await type(putback, [' ']);
    await Promise.all([putback.end('q'), plain.end('q')]);

    const p95 = quantile(moves.ours.ms, 0.95);
    const bareMs = median(moves.bare.ms);
    const moveMs = median(moves.ours.ms);
    const bytes = median(moves.ours.bytes);
    const markBytes = median(marks.bytes);
    return [
      row('key to frame at 200 holes, p95', 'a sixtieth of a second', p95, FRAME, ms, 1),
      row('key to frame at 200 holes, median', 'bare Ink program', moveMs, bareMs, ms, 2),
      row('bytes of a key that moves', '1 kB', bytes, BYTES, count, 1),
      row('bytes of a key that marks', '1 kB', markBytes, BYTES, count, 1),
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
    rmSync(dirname(bare), { recursive: true, force: true });
  }
};

/** From the first page to tightening, and what is then to be seen. */
const TO_TIGHT: readonly (readonly [string, string])[] = [
  [' ', 'another piece'],
  [' ', 'clicked'],
];
const ROUND = [RIGHT, DOWN, LEFT, UP];

async function type(terminal: Terminal, keys: readonly string[]) {
  const took: number[] = [];
  const bytes: number[] = [];
  for (let i = 0; i < KEYS / 2; i++) {
    terminal.press(keys[i % keys.length] ?? '');
    const frame = await terminal.until(aFrame);
    took.push(frame.ms);
    bytes.push(Buffer.byteLength(frame.bytes));
  }
  return { ms: took, bytes };
}

const count = (n: number): string => `${Math.round(n)} bytes`;

function row(
  what: string,
  against: string,
  one: number,
  other: number,
  say: (n: number) => string,
  goal: number,
) {
  return { what, against, ratio: one / other, goal, measured: `${say(one)} / ${say(other)}` };
}

/** A key: how long until its frame is written out, and how many bytes that is, on a piece of 200 holes. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { bundle } from '../terminal/bundle.ts';
import { DOWN, LEFT, RIGHT, UP } from '../terminal/keys.ts';
import { PUTBACK } from '../terminal/world.ts';
import { bigJob } from './job.ts';
import { type Figures, median, ms, quantile, type Row } from './measure.ts';
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

    const move = newSeries();
    const bareMove = newSeries();
    const mark = newSeries();
    // In the order that is shown, as one does; the piece is not done with half of its holes.
    for (let i = 0; i < KEYS / 2; i++) await type(putback, ' ', mark);
    for (let i = 0; i < KEYS; i++) {
      await type(putback, ROUND[i % ROUND.length] ?? '', move);
      await type(plain, 'x', bareMove);
    }
    await Promise.all([putback.end('q'), plain.end('q')]);

    const p95 = quantile(move.ms, 0.95);
    const [moveMs, bareMs, markMs] = [median(move.ms), median(bareMove.ms), median(mark.ms)];
    const [bytes, markBytes] = [quantile(move.bytes, 0.95), quantile(mark.bytes, 0.95)];
    return [
      row('key to frame at 200 holes, p95', 'a sixtieth of a second', p95, FRAME, ms, 1),
      row('key to frame at 200 holes, median', 'bare Ink program', moveMs, bareMs, ms, 2),
      row(
        'key that marks to frame, disk included, median',
        'bare Ink program',
        markMs,
        bareMs,
        ms,
        2,
      ),
      row('bytes of a key that moves, p95', '1 kB', bytes, BYTES, count, 1),
      row('bytes of a key that marks, p95', '1 kB', markBytes, BYTES, count, 1),
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

interface Series {
  ms: number[];
  bytes: number[];
}
const newSeries = (): Series => ({ ms: [], bytes: [] });

/** One key and its frame. */
async function type(terminal: Terminal, key: string, into: Series): Promise<void> {
  terminal.press(key);
  const frame = await terminal.until(aFrame);
  into.ms.push(frame.ms);
  into.bytes.push(Buffer.byteLength(frame.bytes));
}

const count = (n: number): string => `${Math.round(n)} bytes`;

function row(
  what: string,
  against: string,
  one: number,
  other: number,
  say: (n: number) => string,
  goal: number,
): Row {
  return { what, against, ratio: one / other, goal, measured: `${say(one)} / ${say(other)}` };
}

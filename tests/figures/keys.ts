/** A key: how long until its frame is written out, and how many bytes that is, on a piece of 200 holes. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { ANEW } from '../../src/screens/terminal/held.ts';
import { bundle } from '../terminal/bundle.ts';
import { DOWN, LEFT, RIGHT, UP } from '../terminal/keys.ts';
import { PUTBACK } from '../terminal/world.ts';
import { bareWrite } from './disk.ts';
import { bigJob } from './job.ts';
import { type Figures, median, ms, quantile, type Row, time } from './measure.ts';
import { aFrame, open, type Terminal } from './terminal.ts';

const KEYS = 200;
/** Holes, columns, rows: all of the holes in view, and what is on a bench at the size that is always enough. */
const LARGE = [200, 160, 50] as const;
const SMALL = [40, 80, 24] as const;
/** ms: a frame of a screen that draws sixty a second. */
const FRAME = 1000 / 60;
const BYTES = 1000;

export const figures: Figures = async () => {
  const folder = mkdtempSync(join(tmpdir(), 'putback-figures-'));
  const bare = await bundle('tests/figures/programs/bare.tsx');
  try {
    const large = await session(folder, bare, LARGE);
    const small = await session(folder, bare, SMALL);
    const [move, mark] = [median(large.move.ms), median(large.mark.ms)];
    const [plain, write] = [median(large.bare.ms), median(large.write)];
    return [
      row('key to frame at 200 holes, p95', '1/60 s', quantile(large.move.ms, 0.95), FRAME, 1),
      row('key to frame at 200 holes', 'bare Ink program', move, plain, 2),
      row('key to a mark on disk and in its frame', 'bare frame and write', mark, plain + write, 4),
      bytesRow('moves, 40 holes, 80 × 24', small.move),
      bytesRow('marks, 40 holes, 80 × 24', small.mark),
      bytesRow('moves, 200 holes, 160 × 50', large.move),
      bytesRow('marks, 200 holes, 160 × 50', large.mark),
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
    rmSync(dirname(bare), { recursive: true, force: true });
  }
};

/** From the first page to tightening, and what is then to be seen. */
const TO_TIGHT: readonly (readonly [string, string])[] = [
  [' ', 'another piece'],
  ['\r', 'clicked'],
];
const ROUND = [RIGHT, DOWN, LEFT, UP];

async function session(
  folder: string,
  bareProgram: string,
  [holes, columns, rows]: typeof LARGE | typeof SMALL,
) {
  const text = bigJob(holes);
  const job = join(folder, 'cover.yaml');
  writeFileSync(job, text);
  const putback = open([PUTBACK, job], folder, columns, rows);
  const plain = open([bareProgram], folder, columns, rows);
  await putback.until((bytes) => bytes.includes('to the pieces'));
  for (const [key, seen] of TO_TIGHT) {
    putback.press(key);
    await putback.until((bytes) => bytes.includes(seen) && aFrame(bytes));
  }
  await plain.until(aFrame);

  const [move, mark, bare] = [newSeries(), newSeries(), newSeries()];
  const write: number[] = [];
  // In the order that is shown, as one does; the piece is not done with half of its holes.
  for (let i = 0; i < holes / 2; i++) {
    await type(putback, ' ', mark);
    // A click is a press of its own: the key is let go before the next.
    await new Promise((done) => setTimeout(done, ANEW));
    write.push(await time(() => bareWrite(folder, text)));
  }
  for (let i = 0; i < KEYS; i++) {
    await type(putback, ROUND[i % ROUND.length] ?? '', move);
    await type(plain, 'x', bare);
  }
  await Promise.all([putback.end('q'), plain.end('q')]);
  return { move, mark, bare, write };
}

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

/** The middle of them; one that leads across the whole map draws more. */
function bytesRow(what: string, { bytes }: Series): Row {
  const middle = median(bytes);
  return {
    what: `bytes of a key that ${what}`,
    against: '1 kB',
    ratio: middle / BYTES,
    goal: 1,
    measured: `${middle} bytes, p95 ${quantile(bytes, 0.95)}`,
  };
}

function row(what: string, against: string, one: number, other: number, goal: number): Row {
  return { what, against, ratio: one / other, goal, measured: `${ms(one)} / ${ms(other)}` };
}

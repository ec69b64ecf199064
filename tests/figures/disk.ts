/** A mark to disk, judged, checked and locked, against the bare write of the same bytes. */
import {
  closeSync,
  fsyncSync,
  mkdtempSync,
  openSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fold } from '../../src/job/fold/fold.ts';
import { readJob } from '../../src/job/read.ts';
import { record } from '../../src/job/save/record.ts';
import type { Recorded, Wish } from '../../src/model/types.ts';
import { nextStep } from '../../src/plan/next/next.ts';
import { bigJob } from './job.ts';
import { byTurns, type Figures, median, ms, type Row, time } from './measure.ts';

/** [holes, goal]. */
const SIZES = [
  [40, 2],
  [200, 3],
] as const;

export const figures: Figures = async () => {
  const rows: Row[] = [];
  for (const [holes, goal] of SIZES) rows.push(await mark(holes, goal));
  return rows;
};

async function mark(holes: number, goal: number): Promise<Row> {
  const folder = mkdtempSync(join(tmpdir(), 'putback-figures-'));
  try {
    const text = bigJob(holes);
    const job = join(folder, 'cover.yaml');
    writeFileSync(job, text);
    let n = 0;
    const read = readJob(text, job);
    let next = nextStep(fold(read.upper, read.entries))?.hole ?? '';
    const clock = {
      now: () => '2026-05-02T10:11:05+02:00',
      id: () => `b${String(n++).padStart(7, '0')}`,
    };
    const marked = async (): Promise<number> => {
      const wish: Wish = { do: 'tight', piece: 'cover', holes: [next], pass: 'full' };
      let result: Recorded | null = null;
      const ms = await time(async () => {
        result = await record(job, wish, clock);
      });
      next = following(result);
      return ms;
    };
    const bare = () => time(() => bareWrite(folder, text));
    const times = await byTurns(holes - 2, marked, bare);
    const [one, other] = [median(times.one), median(times.other)];
    return {
      what: `mark to disk at ${holes} holes`,
      against: 'bare write, sync, rename of the same bytes, sync of the folder',
      ratio: one / other,
      goal,
      measured: `${ms(one)} / ${ms(other)}`,
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The bolt that the answer to a mark leads to: the order that is shown is the one that people follow. */
function following(result: Recorded | null): string {
  if (!result?.ok || !result.changed) throw new Error(JSON.stringify(result).slice(0, 500));
  return nextStep(result.job)?.hole ?? '';
}

/** Write, sync, rename, sync of the folder, and nothing else: less would not outlast a power cut. */
export function bareWrite(folder: string, text: string): void {
  const beside = join(folder, 'beside');
  const file = openSync(beside, 'w');
  writeFileSync(file, text);
  fsyncSync(file);
  closeSync(file);
  renameSync(beside, join(folder, 'bare.txt'));
  const within = openSync(folder, 'r');
  fsyncSync(within);
  closeSync(within);
}

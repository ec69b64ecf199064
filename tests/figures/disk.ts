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
import { record } from '../../src/job/save/record.ts';
import type { Wish } from '../../src/job/types.ts';
import { bigJob } from './job.ts';
import { byTurns, type Figures, median, ms, type Row, time } from './measure.ts';

/** [holes, goal]. */
const SIZES = [
  [40, 2],
  [200, 4],
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
    const beside = join(folder, 'beside');
    const bare = join(folder, 'bare.yaml');
    writeFileSync(job, text);
    let n = 0;
    const clock = {
      now: () => '2026-05-02T10:11:05+02:00',
      id: () => `b${String(n++).padStart(7, '0')}`,
    };
    const times = await byTurns(
      holes - 1,
      () =>
        time(async () => {
          const wish: Wish = { do: 'tight', piece: 'cover', holes: [String(n + 1)], pass: 'full' };
          const result = await record(job, wish, clock);
          if (!result.ok || !result.changed) throw new Error(JSON.stringify(result).slice(0, 500));
        }),
      () =>
        time(() => {
          const file = openSync(beside, 'w');
          writeFileSync(file, text);
          fsyncSync(file);
          closeSync(file);
          renameSync(beside, bare);
        }),
    );
    const [one, other] = [median(times.one), median(times.other)];
    return {
      what: `mark to disk at ${holes} holes`,
      against: 'bare write, sync, rename of the same bytes',
      ratio: one / other,
      goal,
      measured: `${ms(one)} / ${ms(other)}`,
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

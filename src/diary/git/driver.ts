/** Git's merge driver for job files: `putback merge %O %A %B`. */
import { renameSync } from 'node:fs';
import { mergeJob } from '../../job/merge/merge.ts';
import { disk, drop, writeNew } from '../../job/save/disk.ts';
import { readPlain } from '../../job/save/plain.ts';
import { mergeLines } from './mergefile.ts';

/** Exit codes of a merge driver: git takes the file as merged, or as open between its markers. */
export const MERGED = 0;
export const OPEN = 1;
/** Nothing was written: whoever called merges in another way (see `driverOf`). */
export const UNDONE = 2;

/**
 * Merges three files, the result into the second one, as git asks of a merge driver. Two bolts in one hole are no
 * conflict here but one on its hole, for the screens and for `check`.
 *
 * 0: merged. 1: what truly differs stands between git's markers. 2: not merged, the files are as they were.
 */
export async function mergeDriver(base: string, ours: string, theirs: string): Promise<number> {
  const whole = `${ours}.putback`;
  try {
    const [b, o, t] = [base, ours, theirs].map(textOf) as [string, string, string];
    const { text, clean } = mergeJob(b, o, t, mergeLines);
    // In one step: a driver that dies half way must not leave half of our side.
    writeNew(disk, whole, text, { sync: false });
    renameSync(whole, ours);
    return clean ? MERGED : OPEN;
  } catch {
    drop(disk, whole);
    return UNDONE;
  }
}

/** Throws where the bytes are not UTF-8: they would not come out as they went in. */
function textOf(path: string): string {
  const { bytes, whole } = readPlain(path);
  if (!whole) throw new RangeError(`${path} is too large for a job file`);
  return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
}

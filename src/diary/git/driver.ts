/** Git's merge driver for job files: `putback merge %O %A %B`. */
import { isUtf8 } from 'node:buffer';
import { renameSync } from 'node:fs';
import { basename } from 'node:path';
import { type MergeSide, mergeJob } from '../../job/merge/merge.ts';
import { disk, drop, errorCode, writeNew } from '../../job/save/disk.ts';
import { failOf, type SaveFail } from '../../job/save/fail.ts';
import { readPlain } from '../../job/save/plain.ts';
import { mergeLines } from './mergefile.ts';

export type Driven =
  | { as: 'merged' }
  /** What truly differs stands between git's markers; `unreadable`: the sides that are no readable job. */
  | { as: 'open'; unreadable: readonly MergeSide[] }
  /** Nothing was written: whoever called merges in another way (see `driverOf`). */
  | { as: 'undone'; doing: 'read' | 'written'; fail: Pick<SaveFail, 'code' | 'say' | 'fix'> };

/**
 * Merges three files, the result into the second one, as git asks of a merge driver. Two bolts in one hole are no
 * conflict here but one on its hole, for the screens and for `check`.
 */
export async function mergeDriver(base: string, ours: string, theirs: string): Promise<Driven> {
  const texts: string[] = [];
  for (const path of [base, ours, theirs]) {
    try {
      texts.push(textOf(path));
    } catch (error) {
      return { as: 'undone', doing: 'read', fail: unreadOf(error, path) };
    }
  }
  const [b = '', o = '', t = ''] = texts;
  const whole = `${ours}.putback`;
  const { text, clean, unreadable = [] } = mergeJob(b, o, t, mergeLines);
  try {
    // In one step: a driver that dies half way must not leave half of our side.
    writeNew(disk, whole, text, { sync: false });
    renameSync(whole, ours);
  } catch (error) {
    drop(disk, whole);
    return { as: 'undone', doing: 'written', fail: unwrittenOf(error, ours, whole) };
  }
  return clean ? { as: 'merged' } : { as: 'open', unreadable };
}

function unreadOf(error: unknown, path: string): Pick<SaveFail, 'code' | 'say' | 'fix'> {
  const name = basename(path);
  const again = 'Nothing was merged.';
  if (error instanceof TooLarge)
    return { code: 'not-text', say: `${name} is too large for a job file.`, fix: again };
  if (error instanceof NotText)
    return { code: 'not-text', say: `${name} is not UTF-8 text.`, fix: again };
  if (errorCode(error) === 'ENOENT')
    return { code: 'gone', say: `No file ${name} to merge.`, fix: again };
  return failOf(error, path, 'read');
}

function unwrittenOf(
  error: unknown,
  ours: string,
  whole: string,
): Pick<SaveFail, 'code' | 'say' | 'fix'> {
  const [name, beside] = [basename(ours), basename(whole)];
  const code = errorCode(error);
  // It is written beside it first: in its folder something may be in the way.
  if (code === 'EEXIST')
    return {
      code: 'exists',
      say: `${name} is as it was: ${beside} lies beside it, and that is the name the merged file is written to first.`,
      fix: 'Take that away, then try again.',
    };
  if (code === 'EACCES' || code === 'EPERM')
    return {
      code: 'no-permission',
      say: `${name} is as it was: ${beside} may not be written beside it.`,
      fix: 'Give yourself the right to write in its folder.',
    };
  return failOf(error, ours);
}

class TooLarge extends Error {}
class NotText extends Error {}

/** Throws what the system says, and where the bytes are not UTF-8: they would not come out as they went in. */
function textOf(path: string): string {
  const { bytes, whole } = readPlain(path);
  if (!whole) throw new TooLarge();
  if (!isUtf8(bytes)) throw new NotText();
  return bytes.toString('utf8');
}

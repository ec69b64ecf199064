/**
 * What each mark replaced in the person's part, kept in the user's own folder: taken back, the part is byte for byte as it
 * was. Where this is not there (another computer, a file changed since) an undo goes by the meaning of its mark.
 */
import { createHash } from 'node:crypto';
import { realpathSync } from 'node:fs';
import * as z from 'zod';
import type { Entry } from '../../model/types.ts';
import { addEntry, findDiary, isFail } from '../edit/splice.ts';
import { keepOwn, readOwn } from './own.ts';

/** A cut of the text with the mark: at `at`, `put` stands where `out` stood. Offsets in UTF-16 units. */
const REPLACED = z.object({
  id: z.string(),
  at: z.number().int().nonnegative(),
  out: z.string(),
  put: z.string(),
  /** What stood directly before and behind it. */
  before: z.string(),
  behind: z.string(),
  /** SHA-256 of what stood above the diary then. */
  sum: z.string(),
});
type Replaced = z.infer<typeof REPLACED>;

/** Of one file what so many marks replaced is kept, the latest ones. */
const MOST = 60;

/**
 * The text as it was before the mark `id`, with all that the diary says since; null where that is not known. `sure`: nobody
 * changed the person's part since. Else its place was found by what stands around it, and may be another one.
 */
export function beforeMark(
  path: string,
  text: string,
  id: string,
  state?: string,
): { text: string; sure: boolean } | null {
  const found = readAll(path, state).findLast((r) => r.id === id);
  if (!found) return null;
  const { at, out, put, sum } = found;
  const sure = text.slice(at, at + put.length) === put && sumOf(text, at + put.length) === sum;
  const now = sure ? at : placeOf(text, found);
  if (now === null) return null;
  return { text: text.slice(0, now) + out + text.slice(now + put.length), sure };
}

/** Where it stands by now; null where that is nowhere, or in several places. */
function placeOf(text: string, { before, put, behind }: Replaced): number | null {
  for (const [head, tail] of [
    [before, behind],
    [before, ''],
    ['', behind],
  ] as const) {
    const whole = head + put + tail;
    const at = text.indexOf(whole);
    if (at >= 0 && at === text.lastIndexOf(whole)) return at + head.length;
  }
  return null;
}

/** Characters on each side of it. */
const AROUND = 40;

/** Keeps what the mark `entry` replaced; nothing where it left the person's part alone, or there is no folder. */
export function keepReplaced(
  path: string,
  was: string,
  entry: Entry,
  now: string,
  state?: string,
): void {
  const bare = addEntry(was, entry);
  if (isFail(bare) || bare === now) return;
  const put = between(bare, now);
  const one = { id: entry.id, ...put, sum: sumOf(now, put.at + put.put.length) };
  const all = [...readAll(path, state), one].slice(-MOST);
  const real = realOf(path);
  if (real !== null) keepOwn(real, 'replaced', JSON.stringify(all), state);
}

/** Where they differ, as one cut. */
function between(was: string, now: string): Omit<Replaced, 'id' | 'sum'> {
  const short = Math.min(was.length, now.length);
  let at = 0;
  while (at < short && was[at] === now[at]) at += 1;
  let end = 0;
  while (end < short - at && was[was.length - 1 - end] === now[now.length - 1 - end]) end += 1;
  const to = now.length - end;
  return {
    at,
    out: was.slice(at, was.length - end),
    put: now.slice(at, to),
    before: now.slice(Math.max(0, at - AROUND), at),
    behind: now.slice(to, to + AROUND),
  };
}

/** Of all above the diary's entries; where these are no block of lines, of all down to `end`. */
function sumOf(text: string, end: number): string {
  const above = text.slice(0, Math.max(findDiary(text)?.from ?? 0, end));
  return createHash('sha256').update(above).digest('hex');
}

function readAll(path: string, state?: string): Replaced[] {
  const real = realOf(path);
  const text = real === null ? undefined : readOwn(real, 'replaced', state)?.text;
  if (text === undefined) return [];
  try {
    return z.array(REPLACED).parse(JSON.parse(text));
  } catch {
    // Cut short or of another version: then an undo goes by the meaning.
    return [];
  }
}

function realOf(path: string): string | null {
  try {
    return realpathSync(path);
  } catch {
    return null;
  }
}

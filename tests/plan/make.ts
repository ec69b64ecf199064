/** Jobs for the tests of the plan: from the text of a file, with lines of the diary that its form may not know yet. */
import { fold } from '../../src/job/fold/fold.ts';
import { readJob } from '../../src/job/read.ts';
import type { Entry, Job } from '../../src/model/types.ts';

export const NOW = '2026-05-02T10:00:00+02:00';

/** A line of the diary without `at` and `id`: `{piece: 'cover', removed: 'all'}`. */
export type Said = Record<string, string | string[]>;

const PLACES = ['piece', 'hole', 'task', 'buy', 'check', 'suspect', 'at', 'id'];
const BESIDE = ['tray', 'set', 'was', 'result', 'old', 'limit', 'says', 'because', 'promised'];

function entryOf(said: Said, n: number): Entry {
  const verb = Object.keys(said).find((key) => !PLACES.includes(key) && !BESIDE.includes(key));
  if (verb === undefined) throw new Error(`no verb in ${JSON.stringify(said)}`);
  const { [verb]: value, ...beside } = said;
  const id = `i${String(n).padStart(7, '0')}`;
  return { at: NOW, id, ...beside, verb, value } as unknown as Entry;
}

export function entriesOf(lines: readonly Said[], from = 0): Entry[] {
  return lines.map((said, i) => entryOf(said, from + i));
}

/** The job of a file's text (without `putback:` and `job:`), and what happened since. */
export function jobOf(text: string, lines: readonly Said[] = []): Job {
  // With its diary at the end, the same upper part is read only once.
  const read = readJob(`putback: 1\njob: Test\n${text}\ndiary:\n`, 'test.yaml');
  const errors = read.faults.filter((f) => f.severity === 'error' && f.code !== 'circle');
  if (errors.length > 0) throw new Error(errors.map((f) => `${f.code}: ${f.say}`).join('\n'));
  return fold(read.upper, [...read.entries, ...entriesOf(lines)]);
}

/** All there is to say when a piece comes off, and when it is back. */
export const off = (piece: string, at = NOW): Said => ({ at, piece, removed: 'all' });
export const on = (piece: string, at = NOW): Said => ({ at, piece, fitted: 'all' });
export const done = (task: string, at = NOW): Said => ({ at, task, done: 'done' });
/** Bolted pieces. */
export const boltsOff = (piece: string, row: string, at = NOW): Said[] => [
  { at, piece, out: row },
  { at, piece, removed: 'all' },
];
export const boltsOn = (piece: string, row: string, at = NOW): Said[] => [
  { at, piece, in: row },
  { at, piece, tight: 'snug' },
  { at, piece, tight: 'full' },
];

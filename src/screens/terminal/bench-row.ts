/** A job as one row of the bench. */

import { daysBetween } from '../../model/time.ts';
import type { Job, PieceNow } from '../../model/types.ts';
import { sayBought } from '../../plan/buy/say.ts';
import { type Back, backAfter } from '../../plan/next/back.ts';
import { nextWork } from '../../plan/next/next.ts';
import { nextNow } from '../../plan/next/next-now.ts';
import { sayThing } from '../../plan/order/inside.ts';
import { lastMark } from '../../plan/order/job-now.ts';
import { type TestItem, testList } from '../../plan/tests/testlist.ts';
import { sayDays, sayTime } from '../../plan/time/days.ts';
import { faultStands, faultTask } from '../../plan/trace/found.ts';
import type { BenchRow, FileState } from '../base/state.ts';
import { many } from '../kit/words.ts';

/** `file` is what the loop opens it by, and stands for the job's name where that cannot be read. */
export function benchRow(file: string, read: FileState, now: string): BenchRow {
  return rowOn(timeless(file, read, now), now);
}

function timeless(file: string, read: FileState, now: string): TimelessRow {
  if (read.ok) return jobRow(file, read.job, now);
  const next =
    'unread' in read
      ? read.unread.say
      : read.faults[0]
        ? `line ${read.faults[0].line}: ${read.faults[0].say}`
        : '';
  const row = { file, job: file, machine: '', stands: 'cannot be read', loud: '', next };
  return { row, last: null };
}

/** A row without what each day makes another: to be kept, and shown on any day that it holds on. */
export interface TimelessRow {
  row: BenchRow;
  /** Time of its last mark. */
  last: string | null;
}

/** Days after which what is done is folded away. */
const OLD = 365;

/** The row as it is shown on this day. */
export function rowOn({ row, last }: TimelessRow, now: string): BenchRow {
  const rest = last === null ? 0 : daysBetween(last, now);
  const since = rest > 0 ? ` ${sayDays(rest)}` : '';
  const done = row.stands === 'tight' || row.stands === 'tested';
  const old = done && rest > OLD && row.loud === '' && row.next === '';
  return { ...row, stands: `${row.stands}${since}`, ...(old ? { old: true as const } : {}) };
}

/**
 * The row of a file to be kept: for this day alone where it may say something else tomorrow (`day`), else for as long
 * as the file is the same.
 */
export function timelessRow(
  file: string,
  read: FileState,
  now: string,
): TimelessRow & { day: string } {
  const row = timeless(file, read, now);
  const day = now.slice(0, 10);
  const later = `${Number(day.slice(0, 4)) + 2}${now.slice(4)}`;
  const holds = JSON.stringify(timeless(file, read, later).row) === JSON.stringify(row.row);
  return { ...row, day: holds ? '' : day };
}

function jobRow(file: string, job: Job, now: string): TimelessRow {
  const back = backAfter(job, now);
  const works = nextWork(job) !== null || faultTask(job) !== null;
  const step = works ? nextNow(job, now) : null;
  const says = [...waits(back, now), ...(step ? [step.say] : lookAgain(testList(job, now), now))];
  return {
    last: lastMark(job),
    row: {
      file,
      job: job.upper.job,
      machine: job.upper.machine ?? '',
      stands: standsOf(job),
      loud: loudOf(back),
      next: says.filter((t) => t !== '').join('; '),
    },
  };
}

/** What may not be forgotten: bolts in by fingers only, and what is inside. */
function loudOf({ fingerTight, inside }: Back): string {
  const loose = fingerTight.reduce((sum, p) => sum + p.holes.length, 0);
  const only = loose === 0 ? [] : [`${many(loose, 'bolt')} only by fingers`];
  return [...only, ...inside.map((thing) => `${sayThing(thing)} inside`)].join(', ');
}

/** What was ordered, or came and cannot be used, and holds something up. */
function waits({ awaited, waits: running, cures }: Back, now: string): string[] {
  const parts = awaited.filter((b) => b.state !== 'wanted' && b.holds.length > 0);
  return [
    ...parts.map((b) => `waits for ${b.what}, ${sayBought(b, now)}`),
    ...running.flatMap((w) => (w.until === null ? [] : `${w.say} until ${sayTime(w.until, now)}`)),
    ...cures.flatMap(({ name, says, until }) =>
      until === null ? [] : `${name}: ${says}, until ${sayTime(until, now)}`,
    ),
  ];
}

/** Tests of what is back: those that are due, and those of a later day or distance. */
function lookAgain(tests: readonly TestItem[], now: string): string[] {
  return tests.flatMap((test) => {
    if (test.state === 'failed') return [`failed: ${test.say}`];
    if (test.state === 'due') return [`test: ${test.say}`];
    if (test.state !== 'later') return [];
    const when = test.when ?? (test.due === null ? '' : sayTime(test.due, now));
    return [`look again ${when}`.trim()];
  });
}

/** In one word, by the piece that is furthest from being done. */
function standsOf(job: Job): string {
  const pieces = [...job.pieces.values()];
  const fault = faultStands(job);
  if (pieces.length === 0) return fault ?? (lastMark(job) === null ? 'new' : 'begun');
  const any = (where: PieceNow['where']) => pieces.some((p) => p.where === where);
  if (pieces.length === 0) return 'new';
  if (any('off')) return 'coming off';
  if (any('open')) return 'open';
  if (pieces.some((p) => p.where === 'on' && p.holes.length > 0)) return 'going on';
  if (pieces.every((p) => p.where === 'home')) return fault ?? 'not begun';
  return any('tight') ? 'tight' : 'tested';
}

/** One wish to the disk: read what is there now, judge again, splice, check, save. */

import type { Entry, Job, Recorded, UpperChange, Warning, Wish } from '../../model/types.ts';
import { findDiary, isFail } from '../edit/splice.ts';
import { withMark } from '../edit/with-mark.ts';
import { judge } from '../judge/judge.ts';
import { jobOf, type Read, readJob } from '../read.ts';
import { noJob } from '../same-job.ts';
import type { SaveOptions } from './change.ts';
import { saveFile } from './save.ts';

/** The form of job file that this program writes. */
export const WRITES = 1;

export interface Clock {
  now(): string;
  id(): string;
}

export interface RecordOptions extends SaveOptions {
  /** For an undo: what its mark did to the person's part, which is put back if it still stands so. */
  back?: UpperChange | undefined;
  /**
   * Whether this text may be written on just now, for who knows what the file said before. Left out: not while it
   * looks cut short and was written in this instant.
   */
  may?: (text: string) => boolean;
}

/** The file as it is with the answer. */
export interface OnDisk {
  text: string;
  stamp: string;
}

/** ms. So long a text that looks cut short is taken for one that is being saved. */
export const STILL = 700;

/** An editor that writes in place cuts the file off first, and then writes it from its start. */
function isWhole(text: string, age: number): boolean {
  return age < 0 || age > STILL || (text.endsWith('\n') && /^["']?diary["']?\s*:/m.test(text));
}

export async function record(
  file: string,
  wish: Wish,
  clock: Clock,
  options: RecordOptions = {},
): Promise<Recorded> {
  return (await recordSeen(file, wish, clock, options)).recorded;
}

/**
 * Judges a wish against the file as it is now and writes its entry. `ok: true` means that the mark is on disk,
 * or that it was so already. Nothing is written with a refusal, with faults that hide the job, or when the
 * result would change any other byte, or into a file that nothing says is a job. `disk`: null where that is not
 * known.
 */
export async function recordSeen(
  file: string,
  wish: Wish,
  clock: Clock,
  options: RecordOptions = {},
): Promise<{ recorded: Recorded; disk: OnDisk | null }> {
  const stamp = { at: clock.now(), id: clock.id() };
  let judged: Judged | null = null;
  const saved = await saveFile<Recorded>(
    file,
    (text, age) => {
      if (!(options.may?.(text) ?? isWhole(text, age))) return { wait: true };
      const known = last?.text === text && last.file === file ? last : null;
      const read = known?.read ?? readJob(text, file);
      if (read.unreadable) return { stop: { ok: false, faults: read.faults } };
      if (read.upper.version > WRITES) {
        const faults = read.faults.filter((f) => f.code === 'newer-version');
        return { stop: { ok: false, faults } };
      }
      const none = noJob(read);
      if (none.length > 0) return { stop: { ok: false, faults: none } };
      const before = known?.job ?? jobOf(read);
      const verdict = judge(before, wish, stamp);
      if (!verdict.ok) return { stop: { ...verdict, job: before } };
      const { entry, edits, warnings } = verdict;
      if (!entry) {
        return { stop: { ok: true, changed: false, entry: null, warnings, job: before, before } };
      }
      const put = putBack(text, options.back);
      const next =
        put === null
          ? withMark(text, read, entry, edits, file)
          : withMark(put, readJob(put, file), entry, [], file);
      if (isFail(next)) return { stop: unfit(next.fault) };
      judged = { before, entry, warnings, was: text, ...next };
      return { text: next.text };
    },
    options,
  );
  if (!saved.ok) {
    const unsaved = { code: saved.code, say: saved.say, fix: saved.fix };
    return { recorded: { ok: false, unsaved }, disk: null };
  }
  const disk = { text: saved.text, stamp: saved.stamp };
  return { recorded: 'stopped' in saved ? saved.stopped : written(judged, file), disk };
}

interface Judged {
  before: Job;
  entry: Entry;
  warnings: Warning[];
  was: string;
  text: string;
  read: Read;
}

/** The file as this process wrote it last: the next mark goes on from there if nobody else has written it. */
let last: { file: string; text: string; read: Read; job: Job } | null = null;

function written(judged: Judged | null, file: string): Recorded {
  if (!judged) throw new Error('saved without having been judged');
  const { before, entry, warnings, was, text, read } = judged;
  const upper = changeOf(was, text);
  const job = jobOf(read);
  last = { file, text, read, job };
  const change = upper === null ? {} : { upper };
  return { ok: true, changed: true, entry, warnings, job, before, ...change };
}

/** The person's part as a text, down to the first entry; null where the diary has a form of its own. */
function upperOf(text: string): string | null {
  const place = findDiary(text);
  return place && text.slice(0, place.from);
}

function changeOf(was: string, now: string): UpperChange | null {
  const [before, after] = [upperOf(was), upperOf(now)];
  return before === null || after === null || before === after ? null : { was: before, now: after };
}

/** The text with the person's part as it was; null where somebody has changed it since. */
function putBack(text: string, back: UpperChange | undefined): string | null {
  if (!back || upperOf(text) !== back.now) return null;
  return back.was + text.slice(back.now.length);
}

/** It would say something else, or touch other bytes. */
function unfit(fault: string): Recorded {
  const fix = 'Run putback check on the file and mend what it says; nothing was written.';
  return { ok: false, unsaved: { code: 'unfit', say: sentence(fault), fix } };
}

const sentence = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;

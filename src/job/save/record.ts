/** One wish to the disk: read what is there now, judge again, splice, check, save. */

import type { Edit, Entry, Job, Recorded, UpperChange, Warning, Wish } from '../../model/types.ts';
import { capital } from '../../model/words.ts';
import { emptier, findDiary, isFail, saysSame, standsBare } from '../edit/splice.ts';
import { isLineMore, withMark } from '../edit/with-mark.ts';
import { judge } from '../judge/judge.ts';
import { jobOf, type Read, readJob } from '../read.ts';
import { noJob } from '../same-job.ts';
import type { SaveOptions } from './change.ts';
import { beforeMark, keepReplaced } from './replaced.ts';
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
      const found = jobIn(text, file);
      if ('stop' in found) return found;
      const verdict = judge(found.job, wish, stamp);
      if (!verdict.ok) return { stop: { ...verdict, job: found.job } };
      const { entry, edits, warnings } = verdict;
      const before = found.job;
      if (!entry) {
        return { stop: { ok: true, changed: false, entry: null, warnings, job: before, before } };
      }
      const next = marked({ ...found, text }, entry, edits, { ...options, file });
      if ('fault' in next) return { stop: unfit(next.fault) };
      const { stays = [], ...put } = next;
      judged = { before, entry, warnings: [...warnings, ...stays], was: text, ...put };
      return { text: put.text };
    },
    options,
  );
  if (!saved.ok) {
    const unsaved = { code: saved.code, say: saved.say, fix: saved.fix };
    return { recorded: { ok: false, unsaved }, disk: null };
  }
  const disk = { text: saved.text, stamp: saved.stamp };
  // Read anew: a closure has set it.
  const done = judged as Judged | null;
  if (done && !('stopped' in saved) && !isLineMore(done.was, done.text)) {
    keepReplaced(options.real ?? file, done.was, done.entry, done.text, options.state);
  }
  return { recorded: 'stopped' in saved ? saved.stopped : written(judged, file), disk };
}

/** The job of the text; what the answer is where there is none in it that may be marked. */
function jobIn(text: string, file: string): { read: Read; job: Job } | { stop: Recorded } {
  const known = last?.text === text && last.file === file ? last : null;
  const read = known?.read ?? readJob(text, file);
  if (read.unreadable) return { stop: { ok: false, faults: read.faults } };
  if (read.upper.version > WRITES) {
    const faults = read.faults.filter((f) => f.code === 'newer-version');
    return { stop: { ok: false, faults } };
  }
  const none = noJob(read);
  if (none.length > 0) return { stop: { ok: false, faults: none } };
  return { read, job: known?.job ?? jobOf(read) };
}

type Marked = Exclude<ReturnType<typeof withMark>, { fault: string }>;

/** The text with the entry. An undo puts back what was there, byte by byte, where that is known; else it may say what stays. */
function marked(
  { text, read, job }: { text: string; read: Read; job: Job },
  entry: Entry,
  edits: Edit[],
  { file, back, state }: RecordOptions & { file: string },
): (Marked & { stays?: Warning[] }) | { fault: string } {
  const put = putBack(text, back);
  if (put !== null) return withMark(put, readJob(put, file), entry, [], file);
  const next = withMark(text, read, entry, edits, file);
  if (entry.verb !== 'undo') return next;
  const exact = exactly(file, text, job, entry, next, state);
  if (exact) return exact;
  return isFail(next) ? next : { ...next, stays: whatStays(job, entry, edits, text, next.text) };
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
  const job = jobOf(read, before);
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
  if (isLineMore(was, now)) return null;
  const [before, after] = [upperOf(was), upperOf(now)];
  return before === null || after === null || before === after ? null : { was: before, now: after };
}

/** The text with the person's part as it was; null where somebody has changed it since. */
function putBack(text: string, back: UpperChange | undefined): string | null {
  if (!back || upperOf(text) !== back.now) return null;
  return back.was + text.slice(back.now.length);
}

/**
 * An undo that puts back the very bytes. Of a mark that others came after, only where that says what taking it out by its
 * meaning says: what rests on a letter that it brought stays. Null where the bytes are not known, or do not fit any more.
 */
function exactly(
  file: string,
  text: string,
  before: Job,
  entry: Entry,
  byMeaning: ReturnType<typeof withMark>,
  state: string | undefined,
): Marked | null {
  const was = beforeMark(file, text, entry.value, state);
  if (was === null) return null;
  const next = withMark(was.text, readJob(was.text, file), entry, [], file);
  if (isFail(next)) return null;
  const counts = before.entries.filter((e) => before.living.has(e.id));
  const last = counts.at(-1)?.verb === 'undo' ? counts.at(-1)?.id : undefined;
  const latest = counts.findLast((e) => e.verb !== 'undo')?.id;
  const isLast = was.sure && (entry.value === last || entry.value === latest);
  if (!isLast && (isFail(byMeaning) || !saysSame(next.text, byMeaning.text))) return null;
  return next;
}

/** What an undo by meaning may leave in the person's part. */
function whatStays(
  before: Job,
  entry: Entry,
  edits: readonly Edit[],
  was: string,
  now: string,
): Warning[] {
  const undone = before.entries.find((e) => e.id === entry.value) ?? entry;
  const { piece, verb, value } = undone;
  if (edits.length > 0) {
    if (!emptier(was, now) && !(verb === 'written' && value === 'bolts')) return [];
    const say =
      'What it wrote is taken out by what it says: an empty line, an empty key or a letter of it may stay.';
    return [{ code: 'by-meaning', say }];
  }
  if (verb !== 'removed' || piece === undefined || !standsBare(now, piece)) return [];
  return [{ code: 'by-meaning', say: `${piece} stays in the file, with nothing said of it.` }];
}

/** It would say something else, or touch other bytes. */
function unfit(fault: string): Recorded {
  const fix = 'Run putback check on the file and mend what it says; nothing was written.';
  return { ok: false, unsaved: { code: 'unfit', say: `${capital(fault)}.`, fix } };
}

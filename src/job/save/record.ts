/** One wish to the disk: read what is there now, judge again, splice, check, save. */
import { fold } from '../fold.ts';
import { judge } from '../judge.ts';
import { withMark } from '../mark.ts';
import { type Read, readJob } from '../read.ts';
import { isFail } from '../splice.ts';
import type { Entry, Job, Recorded, Warning, Wish } from '../types.ts';
import { type SaveOptions, saveFile } from './save.ts';

/** The form of job file that this program writes. */
export const WRITES = 1;

export interface Clock {
  now(): string;
  id(): string;
}

/**
 * Judges a wish against the file as it is now and writes its entry. `ok: true` means that the mark is on disk,
 * or that it was so already. Nothing is written with a refusal, with faults that hide the job, or when the
 * result would change any other byte.
 */
export async function record(
  file: string,
  wish: Wish,
  clock: Clock,
  options: SaveOptions = {},
): Promise<Recorded> {
  const stamp = { at: clock.now(), id: clock.id() };
  let judged: { before: Job; entry: Entry; warnings: Warning[]; read: Read } | null = null;
  const saved = await saveFile<Recorded>(
    file,
    (text) => {
      const read = readJob(text, file);
      if (read.unreadable) return { stop: { ok: false, faults: read.faults } };
      if (read.upper.version > WRITES) {
        const faults = read.faults.filter((f) => f.code === 'newer-version');
        return { stop: { ok: false, faults } };
      }
      const before = fold(read.upper, read.entries);
      const verdict = judge(before, wish, stamp);
      if (!verdict.ok) return { stop: { ...verdict, job: before } };
      const { entry, edits, warnings } = verdict;
      if (!entry) {
        return { stop: { ok: true, changed: false, entry: null, warnings, job: before, before } };
      }
      const next = withMark(text, read, entry, edits, file);
      if (isFail(next)) return { stop: unfit(next.fault) };
      judged = { before, entry, warnings, read: next.read };
      return { text: next.text };
    },
    options,
  );
  if (!saved.ok) {
    return { ok: false, unsaved: { code: saved.code, say: saved.say, fix: saved.fix } };
  }
  if ('stopped' in saved) return saved.stopped;
  return written(judged);
}

function written(
  judged: { before: Job; entry: Entry; warnings: Warning[]; read: Read } | null,
): Recorded {
  if (!judged) throw new Error('saved without having been judged');
  const { before, entry, warnings, read } = judged;
  const job = fold(read.upper, read.entries);
  return { ok: true, changed: true, entry, warnings, job, before };
}

/** It would say something else, or touch other bytes. */
function unfit(fault: string): Recorded {
  const fix = 'Run putback check on the file and mend what it says; nothing was written.';
  return { ok: false, unsaved: { code: 'unfit', say: sentence(fault), fix } };
}

const sentence = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;

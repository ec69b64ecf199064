/** Writes marks again that were shown as done, and that are gone because somebody saved an older text over the file. */

import type { Edit, Entry, Fault, Job } from '../../model/types.ts';
import { lostEntries } from '../diary/lost.ts';
import { isFail } from '../edit/splice.ts';
import { withMark } from '../edit/with-mark.ts';
import { writtenBack } from '../judge/person/write.ts';
import { jobOf, type Read, readJob } from '../read.ts';
import { noJob } from '../same-job.ts';
import type { SaveOptions } from './change.ts';
import { WRITES } from './record.ts';
import { saveFile } from './save.ts';

type Again =
  /** All of `shown` is on disk; `written` is what had to be written, oldest first. */
  | { ok: true; written: Entry[]; job: Job; faults: Fault[]; text: string; stamp: string }
  /** Nothing was written; `say` is why, a sentence. */
  | { ok: false; say: string };

/**
 * The text with those of `shown` that it lacks behind what it has, in their order, each checked like all marks. All
 * of them or none: then why not. A text that such a mark put into the person's part goes there again, where that
 * still has room for it; what somebody changed elsewhere stays.
 */
export function withEntries(
  text: string,
  shown: readonly Entry[],
  file: string,
): { text: string; written: Entry[] } | { no: string } {
  let read = readJob(text, file);
  if (read.unreadable || noJob(read).length > 0) return { no: 'The file cannot be read just now.' };
  if (read.upper.version > WRITES) return { no: 'The file has a newer form now.' };
  const written = lostEntries(shown, read.entries);
  let next = text;
  for (const entry of written) {
    const put = withMark(next, read, entry, textOf(read, entry), file);
    const more = isFail(put) ? withMark(next, read, entry, [], file) : put;
    if (isFail(more)) return { no: 'Its diary has no room for them.' };
    ({ text: next, read } = more);
  }
  return { text: next, written };
}

/**
 * Writes them into the file, under its lock, if it still says what was judged to be whole and this job: `seen`.
 */
export async function writeAgain(
  file: string,
  shown: readonly Entry[],
  seen: string,
  options: SaveOptions = {},
): Promise<Again> {
  let written: Entry[] = [];
  const saved = await saveFile<string>(
    file,
    (text) => {
      if (text !== seen) return { stop: 'It is being changed just now.' };
      const next = withEntries(text, shown, file);
      if ('no' in next) return { stop: next.no };
      ({ written } = next);
      return { text: next.text };
    },
    options,
  );
  if (!saved.ok) return { ok: false, say: `${saved.say} ${saved.fix}` };
  if ('stopped' in saved) return { ok: false, say: saved.stopped };
  const { text, stamp } = saved;
  const read = readJob(text, file);
  const job = jobOf(read);
  return { ok: true, written, job, faults: read.faults, text, stamp };
}

/** The text that the entry wrote, to be put in as a redo would. */
function textOf(read: Read, entry: Entry): Edit[] {
  if (entry.verb !== 'written') return [];
  return writtenBack(jobOf(read), entry, 'again').edits;
}

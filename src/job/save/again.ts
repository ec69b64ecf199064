/** Marks that were shown, and that somebody's old text has swept out of the file, written again. */

import type { Edit, Entry, Fault, Job } from '../../model/types.ts';
import { lostEntries } from '../diary/lost.ts';
import { isFail } from '../edit/splice.ts';
import { withMark } from '../edit/with-mark.ts';
import { fold } from '../fold/fold.ts';
import { writtenBack } from '../judge/write.ts';
import { type Read, readJob } from '../read.ts';
import { WRITES } from './record.ts';
import { type SaveOptions, saveFile } from './save.ts';

export type Again =
  /** All of `shown` is on disk; `written` is what had to be written, oldest first. */
  | { ok: true; written: Entry[]; job: Job; faults: Fault[] }
  /** Nothing was written; `say` is why, a sentence. */
  | { ok: false; say: string };

/**
 * Adds those of `shown` that the file lacks behind what it has now, under its lock and in their order, each
 * checked like all marks. All of them or none. A text that such a mark put into the person's part goes there again,
 * where that still has room for it; what somebody changed elsewhere in the file stays.
 */
export async function writeAgain(
  file: string,
  shown: readonly Entry[],
  options: SaveOptions = {},
): Promise<Again> {
  let written: Entry[] = [];
  const saved = await saveFile<string>(
    file,
    (text) => {
      let read = readJob(text, file);
      if (read.unreadable) return { stop: 'The file cannot be read just now.' };
      if (read.upper.version > WRITES) return { stop: 'The file has a newer form now.' };
      written = lostEntries(shown, read.entries);
      let next = text;
      for (const entry of written) {
        const put = withMark(next, read, entry, textOf(read, entry), file);
        const more = isFail(put) ? withMark(next, read, entry, [], file) : put;
        if (isFail(more)) return { stop: 'Its diary has no room for them.' };
        ({ text: next, read } = more);
      }
      return { text: next };
    },
    options,
  );
  if (!saved.ok) return { ok: false, say: `${saved.say} ${saved.fix}` };
  if ('stopped' in saved) return { ok: false, say: saved.stopped };
  const read = readJob(saved.text, file);
  return { ok: true, written, job: fold(read.upper, read.entries), faults: read.faults };
}

/** The text that the entry wrote, to be put in as a redo would. */
function textOf(read: Read, entry: Entry): Edit[] {
  if (entry.verb !== 'written') return [];
  return writtenBack(fold(read.upper, read.entries), entry, false).edits;
}

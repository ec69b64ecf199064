/** Marks that were shown, and that somebody's old text has swept out of the file, written again. */
import { fold } from '../fold.ts';
import { lostEntries } from '../lost.ts';
import { withMark } from '../mark.ts';
import { readJob } from '../read.ts';
import { isFail } from '../splice.ts';
import type { Entry, Fault, Job } from '../types.ts';
import { WRITES } from './record.ts';
import { type SaveOptions, saveFile } from './save.ts';

export type Again =
  /** All of `shown` is on disk; `written` is what had to be written, oldest first. */
  | { ok: true; written: Entry[]; job: Job; faults: Fault[] }
  /** Nothing was written; `say` is why, a sentence. */
  | { ok: false; say: string };

/**
 * Adds those of `shown` that the file lacks behind what it has now, under its lock and in their order, each
 * checked like all marks. All of them or none. What somebody changed elsewhere in the file stays.
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
        const more = withMark(next, read, entry, [], file);
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

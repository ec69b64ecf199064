/** A line of a diary that was found, as somebody says it. */
import { parseEntryLine } from '../job/diary/entry.ts';
import { jobOf, readJob } from '../job/read.ts';
import type { Job } from '../model/types.ts';
import { verbRow } from '../model/verbs/verbs.ts';
import { entrySaid } from './prose.ts';

/** A job that says nothing: names of tasks and parts are told by their keys then. */
let nothing: Job | null = null;

/**
 * `2 stuck; “soaking”` for the text of a line; `job`: the one it stands in, where that was read. Null for a line that is no
 * entry, and for one that speaks of another entry where that cannot be looked up.
 */
export function foundSaid(text: string, job: Job | null): string | null {
  const entry = parseEntryLine(text);
  if (entry === null || (job === null && verbRow(entry.verb).value === 'id')) return null;
  nothing ??= jobOf(readJob('putback: 1\njob: nothing\n', ''));
  return entrySaid(entry, job ?? nothing);
}

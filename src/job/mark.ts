/** A mark in the text of a job file as the reader will find it again. */
import { type Read, readJob } from './read.ts';
import { addEntry, type Fail, isFail } from './splice.ts';
import type { Edit, Entry } from './types.ts';

/**
 * The text with the entry and its edits, and what it says now: everything that was there, and this entry behind
 * it. A fault where it would say anything else; `before` is what the text says without it.
 */
export function withMark(
  text: string,
  before: Read,
  entry: Entry,
  edits: Edit[],
  file: string,
): { text: string; read: Read } | Fail {
  const next = addEntry(text, entry, edits);
  if (isFail(next)) return next;
  const read = readJob(next, file);
  const { entries, unreadable } = read;
  const found = !unreadable && entries.length === before.entries.length + 1;
  if (found && entries.at(-1)?.id === entry.id) return { text: next, read };
  return { fault: 'the file is written in a way that hides a new entry' };
}

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
  if (before.plain && edits.length === 0 && isAtEnd(text, next)) {
    // The reader takes such a diary line by line, and addEntry has read this line back.
    return { text: next, read: { ...before, entries: [...before.entries, entry] } };
  }
  const read = readJob(next, file);
  const { entries, unreadable } = read;
  const found = !unreadable && entries.length === before.entries.length + 1;
  if (found && entries.at(-1)?.id === entry.id) return { text: next, read };
  return { fault: 'the file is written in a way that hides a new entry' };
}

/** One line more, as deep as the one before it, and nothing else. */
function isAtEnd(text: string, next: string): boolean {
  if (!text.endsWith('\n') || !next.endsWith('\n') || !next.startsWith(text)) return false;
  const last = text.slice(text.lastIndexOf('\n', text.length - 2) + 1);
  const added = next.slice(text.length);
  const depth = last.indexOf('- {');
  return depth >= 0 && depth === added.indexOf('- {') && added.indexOf('\n') === added.length - 1;
}

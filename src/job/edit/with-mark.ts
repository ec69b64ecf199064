/** A mark in the text of a job file as the reader will find it again. */

import type { Edit, Entry } from '../../model/types.ts';
import { parseEntryLine, printEntry } from '../diary/entry.ts';
import { type Read, readJob } from '../read.ts';
import { addEntry, type Fail, isFail } from './splice.ts';

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
  const more = before.plain && edits.length === 0 ? atTheEnd(text, entry) : null;
  // The reader takes such a diary line by line, so one more line is one more entry.
  if (more) return { text: more, read: { ...before, entries: [...before.entries, entry] } };
  const next = addEntry(text, entry, edits);
  if (isFail(next)) return next;
  const read = readJob(next, file);
  const { entries, unreadable } = read;
  const found = !unreadable && entries.length === before.entries.length + 1;
  if (found && entries.at(-1)?.id === entry.id) return { text: next, read };
  return { fault: 'the file is written in a way that hides a new entry' };
}

/** One text is the other with one line behind it, as most marks leave a file: nothing else can have changed. */
export function isLineMore(was: string, now: string): boolean {
  const end = now.length - 1;
  return (
    was.endsWith('\n') && now.indexOf('\n', was.length) === end && now.slice(0, was.length) === was
  );
}

const LAST = /(?:^|\n)( *)- \{[^\n]*\}\n$/;

/** One line more behind an entry that ends the file, as deep as that one; null for every other end of a file. */
function atTheEnd(text: string, entry: Entry): string | null {
  const from = text.lastIndexOf('\n', text.length - 2);
  const indent = from > 0 ? LAST.exec(text.slice(from))?.[1] : undefined;
  const line = printEntry(entry);
  const back = parseEntryLine(line);
  if (indent === undefined || !back || printEntry(back) !== line) return null;
  return `${text}${indent}${line}\n`;
}

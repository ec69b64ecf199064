/** A mark in the text of a job file, checked before anybody relies on it. */

import type { Edit, Entry } from '../../model/types.ts';
import { parseEntryLine, printEntry } from '../diary/entry.ts';
import { appendEntry, findDiary } from './diary.ts';
import { type Fail, isFail, openDoc, plainOf, sameValue, type Value } from './doc.ts';
import { applyEdits } from './upper.ts';

/**
 * The text with the edits made and the entry as the last of the diary. Checked: the bytes before and behind the
 * new line are the old ones, and the line alone reads back as the entry; where the diary is not a block of lines,
 * reading the whole file shows it. A fault changes nothing.
 */
export function addEntry(text: string, entry: Entry, edits: Edit[] = []): string | Fail {
  const edited = applyEdits(text, edits);
  if (isFail(edited)) return edited;
  const line = printEntry(entry);
  const back = parseEntryLine(line);
  if (!back || printEntry(back) !== line)
    return { fault: 'the entry does not read back as itself' };
  const next = appendEntry(edited, line);
  const place = findDiary(edited);
  const good = place ? isOnlyLine(edited, next, place.at, line) : isOnlyEntry(edited, next, line);
  return good ? next : { fault: 'the diary is written in a way that has no room for an entry' };
}

function isOnlyLine(before: string, after: string, at: number, line: string): boolean {
  const end = after.length - (before.length - at);
  return (
    end > at &&
    after.slice(0, at) === before.slice(0, at) &&
    after.slice(end) === before.slice(at) &&
    after.slice(at, end).trim() === line
  );
}

function isOnlyEntry(before: string, after: string, line: string): boolean {
  const [old, now, entry] = [before, after, line].map(read);
  if (!(now instanceof Map) || !Array.isArray(entry)) return false;
  const was = old instanceof Map ? old : new Map<string, Value>();
  const entries = was.get('diary') ?? [];
  const diary = [...(Array.isArray(entries) ? entries : []), ...entry];
  return sameValue(now, new Map<string, Value>([...was, ['diary', diary]]));
}

function read(text: string): Value | null {
  const doc = openDoc(text);
  return isFail(doc) ? null : plainOf(doc.contents);
}

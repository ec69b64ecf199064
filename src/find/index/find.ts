/**
 * Finds lines in the job files of a folder. What the index has of a file as it is now is asked of the index; all
 * other files are read. So the answer is that of a plain scan, whatever has become of the index.
 */
import type { DatabaseSync } from 'node:sqlite';
import { linesOf } from '../lines.ts';
import { answersIn, type Held, type Question } from '../question.ts';
import { abandon, isBusy, openIndex } from './database.ts';
import { type FolderFile, filesOf, jobText } from './folder.ts';
import { askIndex, bringUp, type Progress, rowsOf, unreadIn } from './keep.ts';

export interface Answers {
  held: Held[];
  /** Sentences about files that could not be read. */
  unread: string[];
}

/** Throws the system's error where the folder cannot be read. */
export function findIn(folder: string, ask: Question, progress: Progress): Answers {
  const files = filesOf(folder);
  const db = files.length === 0 ? null : openIndex(folder);
  if (db === null) return scan(folder, files, ask);
  try {
    return byIndex(db, folder, files, ask, progress);
  } catch (error) {
    if (!isBusy(error)) giveUp(folder);
    return scan(folder, files, ask);
  } finally {
    db.close();
  }
}

function giveUp(folder: string): void {
  try {
    abandon(folder);
  } catch {
    // It cannot be written: the next one who asks finds it odd again.
  }
}

function byIndex(
  db: DatabaseSync,
  folder: string,
  files: readonly FolderFile[],
  ask: Question,
  progress: Progress,
): Answers {
  let rows = rowsOf(db);
  if (!isFresh(rows, files)) {
    try {
      bringUp(db, folder, files, rows, progress);
    } catch (error) {
      // Somebody else is writing it: what it has counts, the rest is read.
      if (!isBusy(error)) throw error;
    }
  }
  db.exec('BEGIN');
  rows = rowsOf(db);
  const fresh = files.filter((f) => rows.get(f.name)?.stamp === f.stamp);
  const good = new Map(fresh.flatMap((f) => rowEntry(rows, f.name)));
  const held = askIndex(db, good, ask);
  const unread = unreadIn(db, good);
  db.exec('COMMIT');
  const rest = scan(
    folder,
    files.filter((f) => !good.has(f.name)),
    ask,
  );
  return { held: held.concat(rest.held), unread: unread.concat(rest.unread) };
}

function isFresh(rows: ReadonlyMap<string, { stamp: string }>, files: readonly FolderFile[]) {
  return rows.size === files.length && files.every((f) => rows.get(f.name)?.stamp === f.stamp);
}

function rowEntry<T>(rows: ReadonlyMap<string, T>, name: string): [string, T][] {
  const row = rows.get(name);
  return row === undefined ? [] : [[name, row]];
}

/** All files, read one by one. */
export function scan(folder: string, files: readonly FolderFile[], ask: Question): Answers {
  const held: Held[] = [];
  const unread: string[] = [];
  for (const { name } of files) {
    const found = jobText(folder, name);
    if (found === null) continue;
    if ('unread' in found) unread.push(found.unread);
    else held.push(...answersIn(name, linesOf(found.text), ask));
  }
  return { held, unread };
}

/** The same without an index. */
export function scanFolder(folder: string, ask: Question): Answers {
  return scan(folder, filesOf(folder), ask);
}

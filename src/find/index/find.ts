/**
 * Finds lines in the job files of a folder. What the index has of a file as it is now is asked of the index; all
 * other files are read. So the answer is that of a plain scan, whatever has become of the index.
 */
import type { DatabaseSync } from 'node:sqlite';
import { linesOf } from '../lines.ts';
import { answersIn, type Held, type Question, type Titles, titlesOf } from '../question.ts';
import { abandon, isBusy, openIndex } from './database.ts';
import { type FolderFile, filesOf, jobText } from './folder.ts';
import { askIndex, bringUp, type Progress, type Row, rowsOf, titlesIn, unreadIn } from './keep.ts';

export interface Answers {
  held: Held[];
  /** Sentences about files that could not be read. */
  unread: string[];
}

/** Throws the system's error where the folder cannot be read. */
export function findIn(folder: string, ask: Question, progress: Progress): Answers {
  return withIndex<Answers>(folder, progress, {
    known: (db, good) => ({ held: askIndex(db, good, ask), unread: unreadIn(db, good) }),
    rest: (files) => scan(folder, files, ask),
    both: (a, b) => ({ held: a.held.concat(b.held), unread: a.unread.concat(b.unread) }),
  });
}

/** Titles of all jobs of a folder, by the names of their files. */
export function titlesOfFolder(folder: string, progress: Progress): Map<string, Titles> {
  return withIndex<Map<string, Titles>>(folder, progress, {
    known: titlesIn,
    rest: (files) =>
      new Map(
        files.flatMap(({ name }): [string, Titles][] => {
          const found = jobText(folder, name);
          return found && 'text' in found ? [[name, titlesOf(linesOf(found.text))]] : [];
        }),
      ),
    both: (a, b) => new Map([...a, ...b]),
  });
}

/** What is asked: of the index for files that it has as they are, of the others by reading them. */
interface Asking<T> {
  known(db: DatabaseSync, good: ReadonlyMap<string, Row>): T;
  rest(files: readonly FolderFile[]): T;
  both(known: T, rest: T): T;
}

function withIndex<T>(folder: string, progress: Progress, ask: Asking<T>): T {
  const files = filesOf(folder);
  const db = files.length === 0 ? null : openIndex(folder);
  if (db === null) return ask.rest(files);
  try {
    return byIndex(db, folder, files, progress, ask);
  } catch (error) {
    if (!isBusy(error)) giveUp(folder);
    return ask.rest(files);
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

function byIndex<T>(
  db: DatabaseSync,
  folder: string,
  files: readonly FolderFile[],
  progress: Progress,
  ask: Asking<T>,
): T {
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
  const known = ask.known(db, good);
  db.exec('COMMIT');
  return ask.both(known, ask.rest(files.filter((f) => !good.has(f.name))));
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

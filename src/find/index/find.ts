/**
 * Finds lines in the job files of a folder. What the index has of a file as it is now is asked of the index; all
 * other files are read. So the answer is that of a plain scan, whatever has become of the index.
 */
import type { DatabaseSync } from 'node:sqlite';
import { linesOf } from '../lines.ts';
import { answersIn, type Held, type Question, type Titles, titlesOf } from '../question.ts';
import { abandon, isBusy, openIndex } from './database.ts';
import { type FolderFile, filesOf, jobText } from './folder.ts';
import { askIndex, bringUp, indexRows, type Row, type Step, titlesIn, unreadIn } from './keep.ts';
import { leaveLittleGarbage } from './lean.ts';

export interface Answers {
  held: Held[];
  /** Sentences about files that could not be read. */
  unread: string[];
}

/** Told after each step of reading what the index lacks. */
export type Progress = (step: Step) => void;

/** Throws the system's error where the folder cannot be read. */
export function findIn(folder: string, ask: Question, progress: Progress): Answers {
  return drained(folder, answersTo(ask), progress);
}

/** Titles of all jobs of a folder, by the names of their files. */
export function titlesOfFolder(folder: string, progress: Progress): Map<string, Titles> {
  return drained(folder, TITLES, progress);
}

/** The same in steps, between which other things may happen; who asks may leave it after any. */
export const findSteps = (folder: string, ask: Question) => inSteps(folder, answersTo(ask));
export const titleSteps = (folder: string) => inSteps(folder, TITLES, FEW);

/** Files. The titles of fewer are read in a moment, and nothing is kept of them. */
const FEW = 50;

function answersTo(ask: Question): Asking<Answers> {
  return {
    known: (db, good) => ({ held: askIndex(db, good, ask), unread: unreadIn(db, good) }),
    rest: (files, folder) => scan(folder, files, ask),
    both: (a, b) => ({ held: a.held.concat(b.held), unread: a.unread.concat(b.unread) }),
    none: { held: [], unread: [] },
  };
}

const TITLES: Asking<Map<string, Titles>> = {
  known: titlesIn,
  rest: (files, folder) =>
    new Map(
      files.flatMap(({ name }): [string, Titles][] => {
        const found = jobText(folder, name);
        return found && 'text' in found ? [[name, titlesOf(linesOf(found.text))]] : [];
      }),
    ),
  both: (a, b) => new Map([...a, ...b]),
  none: new Map(),
};

/** What is asked: of the index for files that it has as they are, of the others by reading them. */
interface Asking<T> {
  known(db: DatabaseSync, good: ReadonlyMap<string, Row>): T;
  rest(files: readonly FolderFile[], folder: string): T;
  both(known: T, rest: T): T;
  none: T;
}

function drained<T>(folder: string, ask: Asking<T>, progress: Progress): T {
  const steps = inSteps(folder, ask);
  for (;;) {
    const { value, done } = steps.next();
    if (done) return value;
    progress(value);
  }
}

function* inSteps<T>(folder: string, ask: Asking<T>, least = 1): Generator<Step, T> {
  const files = filesOf(folder);
  const db = files.length < least ? null : openIndex(folder);
  if (db === null) return yield* readRest(folder, files, ask);
  try {
    return yield* byIndex(db, folder, files, ask);
  } catch (error) {
    if (!isBusy(error)) giveUp(folder);
  } finally {
    db.close();
  }
  return yield* readRest(folder, files, ask);
}

function giveUp(folder: string): void {
  try {
    abandon(folder);
  } catch {
    // It cannot be written: the next one who asks finds it odd again.
  }
}

/** Files a step, where they are read without an index. */
const PART = 50;

function* readRest<T>(
  folder: string,
  files: readonly FolderFile[],
  ask: Asking<T>,
): Generator<Step, T> {
  let found = ask.none;
  for (let i = 0; i < files.length; i += PART) {
    found = ask.both(found, ask.rest(files.slice(i, i + PART), folder));
    if (files.length > PART) yield { done: Math.min(i + PART, files.length), of: files.length };
  }
  return found;
}

function* byIndex<T>(
  db: DatabaseSync,
  folder: string,
  files: readonly FolderFile[],
  ask: Asking<T>,
): Generator<Step, T> {
  let rows = indexRows(db);
  if (!isFresh(rows, files)) {
    leaveLittleGarbage();
    try {
      yield* bringUp(db, folder, files, rows);
    } catch (error) {
      // Somebody else is writing it: what it has counts, the rest is read.
      if (!isBusy(error)) throw error;
    }
  }
  db.exec('BEGIN');
  rows = indexRows(db);
  const fresh = files.filter((f) => rows.get(f.name)?.stamp === f.stamp);
  const good = new Map(fresh.flatMap((f) => rowEntry(rows, f.name)));
  const known = ask.known(db, good);
  db.exec('COMMIT');
  const rest = files.filter((f) => !good.has(f.name));
  return ask.both(known, yield* readRest(folder, rest, ask));
}

function isFresh(rows: ReadonlyMap<string, { stamp: string }>, files: readonly FolderFile[]) {
  return rows.size === files.length && files.every((f) => rows.get(f.name)?.stamp === f.stamp);
}

function rowEntry<T>(rows: ReadonlyMap<string, T>, name: string): [string, T][] {
  const row = rows.get(name);
  return row === undefined ? [] : [[name, row]];
}

/** All files, read one by one. */
function scan(folder: string, files: readonly FolderFile[], ask: Question): Answers {
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

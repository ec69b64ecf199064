/** The index brought up to date with the files, and asked which lines may answer. */
import type { DatabaseSync, SQLInputValue, SQLOutputValue } from 'node:sqlite';
import { type FindFile, LINE_KINDS, linesOf } from '../lines.ts';
import {
  type Held,
  heldOf,
  kindNumber,
  type Question,
  searched,
  type Titles,
  titlesOf,
} from '../question.ts';
import { type Asked, isNumber } from '../words.ts';
import { type FolderFile, jobText } from './folder.ts';

/** Ids of lines: those of file n lie from n times this on. A job file has fewer lines. */
const ROOM = 2 ** 23;
/** Files a step: so long another program waits for the index. */
const STEP = 20;
/** ms. What was changed so shortly before it was read may be changed again with the same stamp. */
const YOUNG = 2000;

/** `other`: it is no job. */
export type Head = Titles & { unread?: string; other?: true };

export interface Row {
  id: number;
  stamp: string;
}

/** Ids and stamps of all files in the index, by name. */
export function indexRows(db: DatabaseSync): Map<string, Row> {
  const all = rowsAsLists(db, 'SELECT id, name, stamp FROM files');
  return new Map(
    all.map(([id, name, stamp]) => [String(name), { id: Number(id), stamp: String(stamp) }]),
  );
}

type Cell = SQLOutputValue;

/** Lists of cells cost a third of objects. */
function rowsAsLists(db: DatabaseSync, sql: string, ...values: SQLInputValue[]): Cell[][] {
  const asked = db.prepare(sql);
  asked.setReturnArrays(true);
  return asked.all(...values) as unknown as Cell[][];
}

/** How many files were read, of how many that were changed. */
export interface Step {
  done: number;
  of: number;
}

/**
 * Reads what was changed, in small steps, each of them whole or not at all: it can be left after any. Throws what
 * SQLite says. `before`: what the index has.
 */
export function* bringUp(
  db: DatabaseSync,
  folder: string,
  files: readonly FolderFile[],
  before: ReadonlyMap<string, Row>,
): Generator<Step, void> {
  const ready = prepared(db);
  const names = new Set(files.map((f) => f.name));
  const gone = [...before.keys()].filter((name) => !names.has(name));
  const changed = files.filter((f) => before.get(f.name)?.stamp !== f.stamp);
  if (gone.length > 0) {
    inOne(db, () => {
      for (const name of gone) forget(ready, name);
    });
  }
  for (let i = 0; i < changed.length; i += STEP) {
    yield { done: i, of: changed.length };
    const step = changed.slice(i, i + STEP);
    inOne(db, () => {
      for (const file of step) take(ready, folder, file);
    });
  }
  yield { done: changed.length, of: changed.length };
}

function inOne(db: DatabaseSync, does: () => void): void {
  db.exec('BEGIN IMMEDIATE');
  try {
    does();
    db.exec('COMMIT');
  } catch (error) {
    db.exec('ROLLBACK');
    throw error;
  }
}

/** Statements that are run for each file. */
function prepared(db: DatabaseSync) {
  return {
    find: db.prepare('SELECT id, stamp FROM files WHERE name=?'),
    dropWords: db.prepare(
      'DELETE FROM words WHERE rowid IN (SELECT id FROM lines WHERE id>=? AND id<?)',
    ),
    dropLines: db.prepare('DELETE FROM lines WHERE id>=? AND id<?'),
    dropFile: db.prepare('DELETE FROM files WHERE id=?'),
    putFile: db.prepare('INSERT INTO files(name, stamp, head) VALUES(?,?,?)'),
    putLine: db.prepare('INSERT INTO lines VALUES(?,?,?,?,?,?)'),
    putWords: db.prepare('INSERT INTO words(rowid, own) VALUES(?,?)'),
  };
}
type Ready = ReturnType<typeof prepared>;

function forget(ready: Ready, name: string): void {
  const row = ready.find.get(name);
  if (!row) return;
  const from = Number(row.id) * ROOM;
  const until = from + ROOM;
  ready.dropWords.run(from, until);
  ready.dropLines.run(from, until);
  ready.dropFile.run(Number(row.id));
}

const NONE: FindFile = linesOf('');

function take(ready: Ready, folder: string, file: FolderFile): void {
  const stands = ready.find.get(file.name);
  // Another program was quicker.
  if (stands?.stamp === file.stamp) return;
  if (stands) forget(ready, file.name);
  const found = jobText(folder, file.name);
  const read = found && 'text' in found ? linesOf(found.text) : null;
  const { lines } = read ?? NONE;
  const head: Head = { ...titlesOf(read ?? NONE), ...(found === null ? { other: true } : {}) };
  const unread = found && 'unread' in found ? { unread: found.unread } : {};
  const young = Date.now() - file.changed < YOUNG;
  const stamp = young ? `${file.stamp} young` : file.stamp;
  const text = JSON.stringify({ ...head, ...unread });
  const { lastInsertRowid } = ready.putFile.run(file.name, stamp, text);
  const from = Number(lastInsertRowid) * ROOM;
  lines.forEach((l, i) => {
    ready.putLine.run(from + i, l.line, kindNumber(l.kind), l.piece, l.day, l.text);
    ready.putWords.run(from + i, wordsOf(l.text, l.day));
  });
}

/** Tokens of a line; of those with a digit also all their ends, and its day in one. */
function wordsOf(text: string, day: string | null): string {
  const all = new Set<string>();
  for (const token of searched({ text, day })) {
    all.add(token);
    if (isNumber(token)) for (let i = 1; i < token.length; i++) all.add(token.slice(i));
  }
  if (day !== null) all.add(dayWord(day));
  return [...all].join(' ');
}

/** Letters in front, so that it is no part of a number. */
const dayWord = (day: string): string => `day${day.replaceAll('-', '')}`;

/** What any line that holds the word has in its row of words. */
function matchOf({ tokens, day }: Asked): string {
  const said = tokens.map((t, i) => `"${t}"${i === tokens.length - 1 ? '*' : ''}`).join(' AND ');
  return day === null ? said : `(${said}) OR "${dayWord(day)}"*`;
}

/** Titles of these files, by name; without what is no job. */
export function titlesIn(db: DatabaseSync, rows: ReadonlyMap<string, Row>): Map<string, Head> {
  const all = rowsAsLists(db, 'SELECT name, head FROM files');
  return new Map(
    all.flatMap(([name, text]): [string, Head][] => {
      const head = JSON.parse(String(text)) as Head;
      return rows.has(String(name)) && !head.other ? [[String(name), head]] : [];
    }),
  );
}

/** Files that the index has and that could not be read: sentences. */
export function unreadIn(db: DatabaseSync, rows: ReadonlyMap<string, Row>): string[] {
  const all = rowsAsLists(db, `SELECT name, head FROM files WHERE head LIKE '%"unread":%'`);
  return all.flatMap(([name, head]) =>
    rows.has(String(name)) ? ((JSON.parse(String(head)) as Head).unread ?? []) : [],
  );
}

/** Lines of these files that answer; they must be as the index has them. */
export function askIndex(db: DatabaseSync, rows: ReadonlyMap<string, Row>, ask: Question): Held[] {
  const byId = new Map([...rows].map(([name, { id }]) => [id, name]));
  const heads = headsIn(db);
  const found: Held[] = [];
  for (const [id, number, kind, piece, day, text] of linesAsked(db, ask)) {
    const file = fileOf(id);
    const name = byId.get(file);
    if (name === undefined) continue;
    const head = heads(file);
    const line = {
      line: Number(number),
      kind: LINE_KINDS[Number(kind)] ?? 'other',
      piece: textOrNull(piece),
      day: textOrNull(day),
      text: String(text),
    };
    const held = heldOf(name, head, line, ask);
    if (held) found.push(held);
  }
  return found;
}

const fileOf = (id: Cell | undefined): number => Math.floor(Number(id) / ROOM);
const textOrNull = (cell: Cell | undefined): string | null => (cell == null ? null : String(cell));

/** Lines with any of the words, each once, of the files that can answer. */
function linesAsked(db: DatabaseSync, { asked }: Question): Cell[][] {
  const [only, other] = asked;
  if (only && !other) {
    const sql = `SELECT l.id, l.line, l.kind, l.piece, l.day, l.text FROM words w JOIN lines l ON l.id=w.rowid
      WHERE words MATCH ?`;
    return rowsAsLists(db, sql, matchOf(only));
  }
  const each = asked.map((word) =>
    rowsAsLists(db, 'SELECT rowid FROM words WHERE words MATCH ?', matchOf(word)).map(([id]) =>
      Number(id),
    ),
  );
  // A title is a line too: a file that has not all of the words somewhere has no line that answers. Of the others no
  // line is read: that is most of the time that a question takes.
  const [first = new Set<number>(), ...rest] = each.map((ids) => new Set(ids.map(fileOf)));
  const inAll = new Set([...first].filter((file) => rest.every((files) => files.has(file))));
  const wanted = new Set(each.flat().filter((id) => inAll.has(fileOf(id))));
  const sql = `SELECT id, line, kind, piece, day, text FROM lines
    WHERE id IN (SELECT value FROM json_each(?)) ORDER BY id`;
  return rowsAsLists(db, sql, JSON.stringify([...wanted]));
}

/** Titles of files, read when they are asked for. */
function headsIn(db: DatabaseSync): (id: number) => Head {
  const known = new Map<number, Head>();
  const get = db.prepare('SELECT head FROM files WHERE id=?');
  return (id) => {
    let head = known.get(id);
    if (head === undefined) {
      head = JSON.parse(String(get.get(id)?.head)) as Head;
      known.set(id, head);
    }
    return head;
  };
}

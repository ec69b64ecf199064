/**
 * The index as a file of SQLite in `.putback/`. It is only a cache: what is odd about it, or was made by somebody
 * else, is thrown away. A repository can bring such a file along, so its tables must be just these, and no row
 * counts but by the stamp of a file on this disk.
 */
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { DatabaseSync } from 'node:sqlite';
import { disk, drop } from '../../job/save/disk.ts';
import { INDEX_FILE, lookAt, SIDE } from '../../job/save/plain.ts';
import { openSide } from '../../job/save/side.ts';

/** Goes up whenever what stands in the tables changes its meaning. */
const VERSION = 6;
/** ms. So long another program's step is waited for. */
const PATIENCE = 2000;

const TABLES = [
  `CREATE TABLE files (id INTEGER PRIMARY KEY, name TEXT NOT NULL UNIQUE, stamp TEXT NOT NULL, head TEXT NOT NULL)`,
  `CREATE TABLE lines (id INTEGER PRIMARY KEY, line INTEGER NOT NULL, kind INTEGER NOT NULL, piece TEXT, day TEXT, text TEXT NOT NULL)`,
  `CREATE TABLE rows (name TEXT PRIMARY KEY, stamp TEXT NOT NULL, day TEXT NOT NULL, row TEXT NOT NULL)`,
  `CREATE VIRTUAL TABLE words USING fts5(own, content='', contentless_delete=1, detail=none, tokenize='ascii')`,
];

/** Bytes of the file that are mapped into memory, at most. */
const MAPPED = 64 * 1024 * 1024;

type Sqlite = typeof import('node:sqlite');

/** Node's own SQLite; null where this Node has none. */
function sqlite(): Sqlite | null {
  const before = process.emitWarning;
  // Some Nodes call it experimental on stderr, each time.
  process.emitWarning = () => {};
  try {
    return process.getBuiltinModule('node:sqlite') ?? null;
  } catch {
    return null;
  } finally {
    process.emitWarning = before;
  }
}

/**
 * Opens the index of a folder, made where it is missing; null where there can be none: no SQLite, nothing to be
 * written there. A file that is odd gets a successor under another name, so that two programs never open one name
 * and mean two files.
 */
export function openIndex(folder: string): DatabaseSync | null {
  const lite = sqlite();
  if (lite === null) return null;
  try {
    const side = openSide(disk, join(folder, 'find'));
    if (!side.beside) return null;
    const numbers = readdirSync(side.folder).flatMap((n) => Number(INDEX_FILE.exec(n)?.[1] ?? 0));
    const newest = Math.max(0, ...numbers);
    for (const number of newest === 0 ? [1] : [newest, newest + 1]) {
      const db = openAt(lite, join(side.folder, `find-${number}.db`));
      if (db === null) continue;
      if (numbers.some((n) => n < number && n > 0)) dropBefore(side.folder, number);
      return db;
    }
  } catch {
    // The folder cannot be written: everything is answered without an index.
  }
  return null;
}

function openAt({ DatabaseSync }: Sqlite, path: string): DatabaseSync | null {
  for (const end of ['', '-wal', '-shm', '-journal']) {
    const found = lookAt(disk, path + end);
    if (found && (found.odd !== null || found.stat.nlink > 1n)) return null;
  }
  let db: DatabaseSync | null = null;
  try {
    db = new DatabaseSync(path, { timeout: PATIENCE, allowExtension: false });
    db.exec('PRAGMA trusted_schema=OFF; PRAGMA journal_mode=WAL; PRAGMA synchronous=NORMAL');
    // Most of a question's time would go into reading it page by page.
    db.exec(`PRAGMA mmap_size=${MAPPED}`);
    make(db);
    if (isOurs(db)) return db;
  } catch (error) {
    // Somebody writes for longer than one waits: it is his, and in order.
    if (isBusy(error)) {
      db?.close();
      throw error;
    }
  }
  db?.close();
  return null;
}

/** The tables, where there are none at all. */
function make(db: DatabaseSync): void {
  if (schemaOf(db).length > 0) return;
  db.exec('BEGIN IMMEDIATE');
  if (schemaOf(db).length === 0) {
    for (const table of TABLES) db.exec(table);
    db.exec(`PRAGMA user_version=${VERSION}`);
  }
  db.exec('COMMIT');
}

function schemaOf(db: DatabaseSync): string[] {
  const rows = db.prepare('SELECT sql, name FROM sqlite_schema').all();
  return rows.flatMap(({ sql, name }) =>
    sql === null || String(name).startsWith('words_') ? [] : [String(sql)],
  );
}

function isOurs(db: DatabaseSync): boolean {
  const version = db.prepare('PRAGMA user_version').get()?.user_version;
  const tables = schemaOf(db);
  return (
    version === VERSION &&
    tables.length === TABLES.length &&
    TABLES.every((t) => tables.includes(t))
  );
}

export function isBusy(error: unknown): boolean {
  return error instanceof Error && /database is locked|busy/i.test(error.message);
}

/** The file is odd: the next one who opens makes another. */
export function abandon(folder: string): void {
  const side = join(folder, SIDE);
  if (!existsSync(side)) return;
  const numbers = readdirSync(side).flatMap((n) => Number(INDEX_FILE.exec(n)?.[1] ?? 0));
  const next = Math.max(0, ...numbers) + 1;
  const lite = sqlite();
  if (lite) openAt(lite, join(side, `find-${next}.db`))?.close();
  dropBefore(side, next);
}

/** Nobody makes a lower number again, so none of these is opened by a name that means another file. */
function dropBefore(side: string, number: number): void {
  for (const name of readdirSync(side)) {
    const n = INDEX_FILE.exec(name)?.[1];
    if (n !== undefined && Number(n) < number && lookAt(disk, join(side, name))?.odd === null) {
      drop(disk, join(side, name));
    }
  }
}

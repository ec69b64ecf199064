/** A line of text for each job of a folder, kept in the index: for who lists them without reading each. */
import type { DatabaseSync } from 'node:sqlite';
import { openIndex } from './database.ts';

export interface KeptRow {
  name: string;
  /** Of the file that it was made from. */
  stamp: string;
  /** The day that it holds on; empty: as long as the file is the same. */
  day: string;
  row: string;
}

export interface KeptRows {
  /** What was kept of a file as it is now, for this day. */
  get(name: string, stamp: string, day: string): string | null;
  /** All of them, or none where somebody else is writing. */
  put(rows: readonly KeptRow[]): void;
  close(): void;
}

/** Null where there can be no index. */
export function openRows(folder: string): KeptRows | null {
  const db = openIndex(folder);
  return db && keptIn(db);
}

function keptIn(db: DatabaseSync): KeptRows {
  let known: Map<string, KeptRow> | null = null;
  return {
    get(name, stamp, day) {
      known ??= all(db);
      const found = known.get(name);
      return found?.stamp === stamp && (found.day === '' || found.day === day) ? found.row : null;
    },
    put(rows) {
      try {
        db.exec('BEGIN IMMEDIATE');
        const insert = db.prepare('INSERT OR REPLACE INTO rows VALUES(?,?,?,?)');
        for (const { name, stamp, day, row } of rows) insert.run(name, stamp, day, row);
        db.exec('COMMIT');
      } catch {
        // It is only kept to be quicker the next time.
        if (db.isTransaction) db.exec('ROLLBACK');
      }
    },
    close: () => db.close(),
  };
}

function all(db: DatabaseSync): Map<string, KeptRow> {
  try {
    const rows = db.prepare('SELECT name, stamp, day, row FROM rows').all() as unknown[];
    return new Map((rows as KeptRow[]).map((row) => [row.name, row]));
  } catch {
    return new Map();
  }
}

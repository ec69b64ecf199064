/**
 * Writing into the file itself, for files that a rename would harm: hard links, another owner, an access list
 * that cannot be copied, a folder that cannot be written. What is to be written goes to a journal first, so that
 * a write cut short is finished by whoever takes the lock next. The journal lies in the user's own folder: one
 * that lies in a bench may have come with it, and is not read.
 */
import { createHash } from 'node:crypto';
import { type BigIntStats, constants } from 'node:fs';
import { join } from 'node:path';
import { type Disk, drop, writeNew } from './disk.ts';
import { self } from './holder.ts';
import { LARGEST_FILE, openPlain, readOpen, readPlain, stampOf } from './plain.ts';
import { stateFolders } from './state.ts';

/** First line: what the journal is of; then the old bytes, the new bytes, and a mark that it is whole. */
interface Head {
  path: string;
  /** As text: they may be larger than a number holds. */
  dev: string;
  ino: string;
  boot: string;
  before: number;
  after: number;
}
const WHOLE = Buffer.from('\nwhole\n');

export interface Journal extends Head {
  bytes: { before: Buffer; after: Buffer };
}

let named = { file: '', name: '' };

/** By the whole path: several benches may have a file of one name. */
export function journalName(file: string): string {
  if (named.file !== file) {
    const name = `${createHash('sha256').update(file).digest('hex').slice(0, 32)}.journal`;
    named = { file, name };
  }
  return named.name;
}

function journalOf(file: string, stat: BigIntStats, before: Buffer, after: Buffer): Buffer {
  const { boot } = self();
  const head: Head = {
    path: file,
    dev: String(stat.dev),
    ino: String(stat.ino),
    boot,
    before: before.length,
    after: after.length,
  };
  return Buffer.concat([Buffer.from(`${JSON.stringify(head)}\n`), before, after, WHOLE]);
}

function readHead(text: string): Head | null {
  try {
    const h = JSON.parse(text) as Record<string, unknown>;
    const texts = [h.path, h.dev, h.ino, h.boot].every((x) => typeof x === 'string');
    const sizes = [h.before, h.after].every((x) => Number.isSafeInteger(x) && Number(x) >= 0);
    return texts && sizes ? (h as unknown as Head) : null;
  } catch {
    return null;
  }
}

/** Null: it is not whole, so nothing was begun. */
function parse(bytes: Buffer): Journal | null {
  const feed = bytes.indexOf(10);
  const head = readHead(bytes.subarray(0, Math.max(feed, 0)).toString('utf8'));
  if (!head) return null;
  const { before: a, after: b } = head;
  const body = bytes.subarray(feed + 1);
  if (body.length !== a + b + WHOLE.length || !body.subarray(a + b).equals(WHOLE)) return null;
  return { ...head, bytes: { before: body.subarray(0, a), after: body.subarray(a, a + b) } };
}

/** A journal that this user's putback wrote: nobody else could have put it there. Null: there is none such. */
export function readJournal(d: Disk, path: string): Journal | null {
  const stat = d.lstatSync(path, { throwIfNoEntry: false });
  if (!stat?.isFile() || stat.nlink !== 1) return null;
  const me = process.getuid?.();
  if (me !== undefined && (stat.uid !== me || (stat.mode & 0o077) !== 0)) return null;
  return parse(readPlain(path, 3 * LARGEST_FILE, d).bytes);
}

/** Writes what differs and answers the stamp that the file has then. */
function overwrite(d: Disk, fd: number, before: Uint8Array, after: Uint8Array): string {
  let start = 0;
  while (start < before.length && start < after.length && before[start] === after[start]) start++;
  for (let at = start; at < after.length; ) at += d.writeSync(fd, after, at, after.length - at, at);
  d.ftruncateSync(fd, after.length);
  d.fsyncSync(fd);
  return stampOf(d.fstatSync(fd, { bigint: true }));
}

/**
 * Replaces the file's bytes and answers its new stamp; the old ones are put back where the system refuses in the
 * middle. Null, and nothing done, when the file is another by now, or `still` says no when the journal stands.
 */
export function writeInPlace(
  d: Disk,
  file: string,
  folder: string,
  before: Buffer,
  after: Buffer,
  still: () => boolean,
): string | null {
  const fd = openPlain(d, file, constants.O_RDWR);
  const journal = join(folder, journalName(file));
  try {
    const stat = d.fstatSync(fd, { bigint: true });
    drop(d, journal);
    writeNew(d, journal, journalOf(file, stat, before, after), { mode: 0o600, sync: true });
    let stamp: string | null = null;
    try {
      if (still() && readOpen(d, fd).bytes.equals(before)) stamp = overwrite(d, fd, before, after);
    } catch (error) {
      // Where even this fails the journal stays, and the next save puts it right.
      if (!readOpen(d, fd).bytes.equals(before)) overwrite(d, fd, new Uint8Array(), before);
      drop(d, journal);
      throw error;
    }
    drop(d, journal);
    return stamp;
  } finally {
    d.closeSync(fd);
  }
}

/** Whether the bytes can be what is left of a write from `before` to `after` that was cut short. */
function isTorn(bytes: Buffer, { before, after }: Journal['bytes']): boolean {
  const [short, long] = [
    Math.min(before.length, after.length),
    Math.max(before.length, after.length),
  ];
  if (bytes.length < short || bytes.length > long) return false;
  // A power cut may leave a block that was never written as zeros.
  return bytes.every((byte, i) => byte === before[i] || byte === after[i] || byte === 0);
}

/** Whether it is of this very file; the number of a disk may change with a start of the host. */
function isOf(journal: Journal, file: string, stat: BigIntStats): boolean {
  const sameDisk = journal.boot !== self().boot || journal.dev === String(stat.dev);
  return journal.path === file && journal.ino === String(stat.ino) && sameDisk;
}

/** Finishes what a process that died has begun; the file's lock is held. A file edited since stays as it is. */
export function recover(d: Disk, file: string, state?: string): void {
  const name = journalName(file);
  for (const folder of stateFolders(d, state, name)) {
    const path = join(folder, name);
    const journal = readJournal(d, path);
    if (journal) finish(d, file, journal);
    drop(d, path);
  }
}

function finish(d: Disk, file: string, journal: Journal): void {
  const fd = openPlain(d, file, constants.O_RDWR);
  try {
    const { bytes, stat } = readOpen(d, fd);
    const { before, after } = journal.bytes;
    if (!isOf(journal, file, stat) || bytes.equals(before) || bytes.equals(after)) return;
    if (isTorn(bytes, journal.bytes)) overwrite(d, fd, new Uint8Array(), after);
  } finally {
    d.closeSync(fd);
  }
}

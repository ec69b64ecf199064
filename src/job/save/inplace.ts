/**
 * Writing into the file itself, for files that a rename would harm: hard links, another owner, a folder that
 * cannot be written. What is to be written goes to a journal first, so that a write cut short is finished by
 * whoever takes the lock next.
 */
import { type Disk, drop, writeNew } from './disk.ts';
import type { Side } from './side.ts';

/** First line: length of the old bytes; then the old bytes, the new bytes, and a mark that it is whole. */
const WHOLE = Buffer.from('\nwhole\n');

function journalOf(before: Uint8Array, after: Uint8Array): Buffer {
  return Buffer.concat([Buffer.from(`${before.length} ${after.length}\n`), before, after, WHOLE]);
}

function readJournal(bytes: Buffer): { before: Buffer; after: Buffer } | null {
  const feed = bytes.indexOf(10);
  const [a, b] = bytes.subarray(0, Math.max(feed, 0)).toString('latin1').split(' ').map(Number);
  if (a === undefined || b === undefined || !Number.isSafeInteger(a + b)) return null;
  const body = bytes.subarray(feed + 1);
  if (body.length !== a + b + WHOLE.length || !body.subarray(a + b).equals(WHOLE)) return null;
  return { before: body.subarray(0, a), after: body.subarray(a, a + b) };
}

function overwrite(d: Disk, file: string, before: Uint8Array, after: Uint8Array): void {
  let start = 0;
  while (start < before.length && start < after.length && before[start] === after[start]) start++;
  const fd = d.openSync(file, 'r+');
  try {
    for (let at = start; at < after.length; )
      at += d.writeSync(fd, after, at, after.length - at, at);
    d.ftruncateSync(fd, after.length);
    d.fsyncSync(fd);
  } finally {
    d.closeSync(fd);
  }
}

/**
 * Replaces the file's bytes; the old ones are put back where the system refuses in the middle. `still` is asked
 * when the journal stands; when it says no nothing is done and the answer is false.
 */
export function writeInPlace(
  d: Disk,
  file: string,
  side: Side,
  before: Uint8Array,
  after: Uint8Array,
  still: () => boolean,
): boolean {
  writeNew(d, side.journal, journalOf(before, after), { mode: 0o600, sync: true });
  try {
    if (!still()) {
      drop(d, side.journal);
      return false;
    }
    overwrite(d, file, before, after);
  } catch (error) {
    if (!d.readFileSync(file).equals(before)) overwrite(d, file, new Uint8Array(), before);
    drop(d, side.journal);
    throw error;
  }
  drop(d, side.journal);
  return true;
}

/** Whether the bytes can be what is left of a write from `before` to `after` that was cut short. */
function isTorn(bytes: Buffer, before: Buffer, after: Buffer): boolean {
  const [short, long] = [
    Math.min(before.length, after.length),
    Math.max(before.length, after.length),
  ];
  if (bytes.length < short || bytes.length > long) return false;
  // A power cut may leave a block that was never written as zeros.
  return bytes.every((byte, i) => byte === before[i] || byte === after[i] || byte === 0);
}

/** Finishes what a process that died has begun; the file's lock is held. A file edited since stays as it is. */
export function recover(d: Disk, file: string, side: Side): void {
  const journal = readJournal(d.readFileSync(side.journal));
  if (journal) {
    const now = d.readFileSync(file);
    const { before, after } = journal;
    if (!now.equals(before) && !now.equals(after) && isTorn(now, before, after)) {
      overwrite(d, file, new Uint8Array(), after);
    }
  }
  drop(d, side.journal);
}

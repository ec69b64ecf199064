/** One save at a time on a job file, over processes: a lock file that only one can make. */
import { randomInt, randomUUID } from 'node:crypto';
import { type Disk, drop, errorCode } from './disk.ts';
import { type Holder, holding, letGo, lifeOf, readHolder, self } from './holder.ts';
import { NotPlain, readPlain, stampOf } from './plain.ts';
import type { Locks } from './side.ts';

export interface Lock {
  path: string;
  text: string;
  nonce: string;
  /** Open while it is held: until then no other file can have its number. */
  fd: number;
  stamp: string;
}
export interface Patience {
  /** Longest wait for a living holder, ms; while several hold it by turns, `HANDS` times as long. */
  wait: number;
  /** How long a lock stands still before it counts as left behind, if its holder is stopped or cannot be asked, ms; infinite: it never does. */
  still: number;
}
/** A save takes milliseconds: who holds a lock for seconds is stopped, asleep or gone. */
export const PATIENCE: Patience = { wait: 4000, still: 5000 };

/** Longest pause between two tries, ms: eight writers then still find their turn. */
const LONGEST_PAUSE = 40;
/** How many times as long as `wait` one waits while the lock goes from one living holder to the next. */
const HANDS = 5;
/** A pause that took this much longer means that this process slept: it did not wait then, nor did it look. */
const SLEPT = 1000;

/** An empty lock was made just now, or its maker died before it could write: it counts as left behind after this time, ms. */
const WORDLESS = 300;
/** Age at which a second lock is known to be left behind, ms: it is held for an instant. */
const OLD = 60_000;

const clock = (): number => performance.now();
const sleep = (ms: number): Promise<void> => new Promise((done) => setTimeout(done, ms));

/** The lock, or null when somebody holds it; throws the system's error where none can be made. */
function take(d: Disk, path: string): Lock | null {
  const nonce = randomUUID();
  const holder: Holder = { ...self(), nonce, at: new Date().toISOString() };
  const text = `${JSON.stringify(holder)}\n`;
  let fd: number;
  try {
    fd = d.openSync(path, 'wx');
  } catch (error) {
    if (errorCode(error) === 'EEXIST') return null;
    throw error;
  }
  try {
    // Not synced: after a power cut it is nobody's.
    d.writeFileSync(fd, text);
    const stamp = stampOf(d.fstatSync(fd, { bigint: true }));
    holding(nonce);
    return { path, text, nonce, fd, stamp };
  } catch (error) {
    d.closeSync(fd);
    drop(d, path);
    throw error;
  }
}

/** A lock is one short line. */
const MOST = 4096;

/** What stands in a lock; null: it is gone, or may not be read. Throws where no lock of anybody's can lie there. */
function readLock(d: Disk, path: string): string | null {
  try {
    return readPlain(path, MOST, d).bytes.toString('utf8');
  } catch (error) {
    if (error instanceof NotPlain) throw error;
    return null;
  }
}

/** Whether nobody has taken the lock away meanwhile. */
export function isOurs(d: Disk, lock: Lock): boolean {
  try {
    const stat = d.lstatSync(lock.path, { bigint: true, throwIfNoEntry: false });
    if (stat === undefined) return false;
    return stampOf(stat) === lock.stamp || readLock(d, lock.path) === lock.text;
  } catch {
    return false;
  }
}

export function release(d: Disk, lock: Lock): void {
  const ours = isOurs(d, lock);
  try {
    d.closeSync(lock.fd);
  } catch {
    // The lock counts by its name; that its bytes may not be on disk does no harm.
  }
  if (ours) drop(d, lock.path);
  letGo(lock.nonce);
}

function isOld(d: Disk, path: string, age = OLD): boolean {
  const stat = d.lstatSync(path, { throwIfNoEntry: false });
  return stat !== undefined && Math.abs(Date.now() - stat.mtimeMs) > age;
}

/**
 * Takes away a lock that was found to be left behind, if it still is that same lock. Only who holds the second
 * lock may, or two who saw the same dead lock could take away each other's new one.
 */
function breakLock(d: Disk, side: Locks, seen: string): boolean {
  const second = take(d, side.breaking);
  if (!second) {
    // Somebody is at it, which takes an instant, or died in that instant.
    const text = readLock(d, side.breaking);
    const life = text === null ? 'alive' : lifeOf(readHolder(text));
    if (life === 'dead' || (life === 'unknown' && isOld(d, side.breaking))) drop(d, side.breaking);
    return false;
  }
  try {
    if (readLock(d, side.lock) === seen) drop(d, side.lock);
    return true;
  } finally {
    release(d, second);
  }
}

/**
 * Waits for the lock of a file. A dead holder's is taken away at once; that of one who is stopped or cannot be
 * asked (another host) after it has stood still for a while; a working one's never: then the answer is who holds
 * it. Whoever takes a lock first removes the files being written (`cleanTemps`): a holder that comes back after
 * its lock was taken away finds nothing to rename, and begins again.
 */
export async function acquire(
  d: Disk,
  side: Locks,
  patience: Patience = PATIENCE,
): Promise<Lock | { heldBy: Holder | null }> {
  /** Since the first look: a slow disk before it is no wait. */
  let begun: number | null = null;
  let seen: string | null = null;
  let since = 0;
  let pause = 1;
  for (;;) {
    const lock = take(d, side.lock);
    if (lock) return lock;
    const now = clock();
    begun ??= now;
    const text = readLock(d, side.lock);
    if (text !== seen) {
      seen = text;
      since = now;
    }
    const holder = text === null ? null : readHolder(text);
    const life = text === null ? 'alive' : lifeOf(holder);
    const still = text === '' ? Math.min(patience.still, WORDLESS) : patience.still;
    // Even a caller that does not wait gives an empty lock this moment: its maker may be about to write into it.
    const unwritten = text === '' && isOld(d, side.lock, WORDLESS);
    const left = life === 'dead' || unwritten || (life === 'unknown' && now - since > still);
    if (left && text !== null && breakLock(d, side, text)) continue;
    // Where no lock ever counts as left behind there is nothing to wait for.
    const longer = Number.isFinite(patience.still) ? patience.wait + patience.still : patience.wait;
    const limit = life === 'alive' ? patience.wait : longer;
    // While it goes from hand to hand its turn comes: then only what stands still is given up soon.
    const waited = life === 'alive' ? Math.max(now - since, (now - begun) / HANDS) : now - begun;
    if (waited >= limit) return { heldBy: holder };
    await sleep(pause + randomInt(pause + 1));
    const slept = clock() - now;
    if (slept > SLEPT + 2 * pause) {
      begun += slept - pause;
      since = clock();
    }
    pause = Math.min(pause * 2, LONGEST_PAUSE);
  }
}

/**
 * What may be opened: a plain file, and nothing that a link, a pipe or a device has put in its place. Every reader
 * and writer of a bench goes through here; the table in DEVELOPERS.md says what may be written where.
 */
import { type BigIntStats, constants, realpathSync } from 'node:fs';
import { MOST_WITH_DIARY } from '../yaml/doc.ts';
import { type Disk, disk, errorCode } from './disk.ts';

/** The folder of ours beside job files (side.ts). */
export const SIDE = '.putback';
/** The index of the folder's jobs in it, which is only a cache (find/index). */
export const INDEX_FILE = /^find-(\d{1,9})\.db(?:-wal|-shm|-journal)?$/;

/** Windows knows neither. Opened so, nothing waits for the other end of a pipe. */
const { O_NOFOLLOW = 0, O_NONBLOCK = 0 } = constants;
const CAREFUL = O_NOFOLLOW | O_NONBLOCK;

/** What lies there is no plain file: as an error with code `ENOTPLAIN`, like those of the system. */
export class NotPlain extends Error {
  readonly code = 'ENOTPLAIN';
  readonly path: string;
  /** `a link`, `a folder`, `a pipe` … */
  readonly is: string;

  constructor(path: string, is: string) {
    super(`${path} is ${is}`);
    this.path = path;
    this.is = is;
  }
}

type Kind = Pick<
  BigIntStats,
  'isFile' | 'isSymbolicLink' | 'isDirectory' | 'isFIFO' | 'isSocket' | 'isCharacterDevice'
>;

/** What it is where it is no plain file; null: it is one. */
export function oddKind(stat: Kind): string | null {
  if (stat.isFile()) return null;
  if (stat.isSymbolicLink()) return 'a link';
  if (stat.isDirectory()) return 'a folder';
  if (stat.isFIFO()) return 'a pipe';
  return stat.isSocket() ? 'a socket' : 'a device';
}

/** What lies at the path itself, links not followed; null: nothing. Throws the system's error. */
export function lookAt(d: Disk, path: string): { odd: string | null; stat: BigIntStats } | null {
  const stat = d.lstatSync(path, { bigint: true, throwIfNoEntry: false });
  return stat ? { odd: oddKind(stat), stat } : null;
}

/** Opens a plain file that is there; throws the system's error, or NotPlain. */
export function openPlain(d: Disk, path: string, flags: number): number {
  return openSeen(d, path, flags).fd;
}

function openSeen(d: Disk, path: string, flags: number): { fd: number; stat: BigIntStats } {
  const before = d.lstatSync(path, { bigint: true });
  const odd = oddKind(before);
  if (odd !== null) throw new NotPlain(path, odd);
  let fd: number;
  try {
    fd = d.openSync(path, flags | CAREFUL);
  } catch (error) {
    // It became something else in this instant.
    if (errorCode(error) === 'ELOOP') throw new NotPlain(path, 'a link');
    throw error;
  }
  const stat = d.fstatSync(fd, { bigint: true });
  const now = oddKind(stat);
  if (now === null) return { fd, stat };
  d.closeSync(fd);
  throw new NotPlain(path, now);
}

/** So many bytes of UTF-8 are always more characters than a job file may have. */
export const LARGEST_FILE = 3 * MOST_WITH_DIARY + 4;
const PART = 1 << 16;

export interface Bytes {
  bytes: Buffer;
  /** False: there are more of them than `most`. */
  whole: boolean;
  stat: BigIntStats;
}

/** The bytes behind an open file, from its start. */
export function readOpen(
  d: Disk,
  fd: number,
  most = LARGEST_FILE,
  stat = d.fstatSync(fd, { bigint: true }),
): Bytes {
  // One more than it says there are: the read that finds none ends it.
  let buffer = Buffer.allocUnsafe(Math.min(Number(stat.size), most) + 1);
  let size = 0;
  while (size <= most) {
    if (size === buffer.length) {
      buffer = Buffer.concat([buffer], Math.min(Math.max(2 * size, PART), most + 1));
    }
    const got = d.readSync(fd, buffer, size, buffer.length - size, size);
    if (got === 0) return { bytes: buffer.subarray(0, size), whole: true, stat };
    size += got;
  }
  return { bytes: buffer.subarray(0, size), whole: false, stat };
}

/** The bytes of a plain file; of a larger one than `most` one more than that. */
export function readPlain(path: string, most = LARGEST_FILE, d: Disk = disk): Bytes {
  const { fd, stat } = openSeen(d, path, constants.O_RDONLY);
  try {
    return readOpen(d, fd, most, stat);
  } finally {
    d.closeSync(fd);
  }
}

/** Another text whenever a file was changed: what a rename keeps of it, so that it is known before the rename. */
export function stampOf(stat: BigIntStats): string {
  return `${stat.ino} ${stat.size} ${stat.mtimeNs}`;
}

/**
 * The bytes of a file that a person named: here alone a link is followed. Of one that is too big to be a job, as
 * many whole characters as show that it is.
 */
export function readNamed(path: string): Bytes {
  const read = readPlain(realpathSync(path));
  if (read.whole) return read;
  const { bytes } = read;
  let end = bytes.length - 1;
  while (end > 0 && ((bytes[end] ?? 0) & 0xc0) === 0x80) end--;
  return { ...read, bytes: bytes.subarray(0, end) };
}

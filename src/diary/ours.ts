/**
 * The files of a bench beside its jobs. Only a plain file is written, never through a link, and nothing that
 * somebody else made is written over; what lies there instead is told and left.
 */
import { constants } from 'node:fs';
import { basename } from 'node:path';
import { disk, errorCode, writeNew } from '../job/save/disk.ts';
import { lookAt, openPlain, readPlain } from '../job/save/plain.ts';

/** `left`: a sentence that says why it is as it was. */
export type Wrote = 'written' | 'same' | { left: string };

/** These are small files; one that is larger is none of ours. */
const MOST = 1 << 22;

const left = (path: string, what: string): Wrote => ({
  left: `${basename(path)} is ${what}: it is left alone.`,
});

/** Why it may not be written; null: it is a plain file of one name, or not there. */
function odd(path: string): Wrote | null {
  const found = lookAt(disk, path);
  if (found?.odd) return left(path, found.odd);
  return found && found.stat.nlink > 1n ? left(path, 'one file under several names') : null;
}

/** A file that is not there yet; one that is stays as it is. */
export function writeIfMissing(path: string, text: string): Wrote {
  const no = odd(path);
  if (no) return no;
  try {
    writeNew(disk, path, text, { sync: false });
    return 'written';
  } catch (error) {
    if (errorCode(error) === 'EEXIST') return 'same';
    throw error;
  }
}

/** The file with this text, if it is not there or `isOurs` knows what stands in it as made by putback. */
export function writeOver(path: string, text: string, isOurs: (old: string) => boolean): Wrote {
  const made = writeIfMissing(path, text);
  if (made !== 'same') return made;
  const { bytes, whole } = readPlain(path, MOST);
  const old = bytes.toString('utf8');
  if (whole && old === text) return 'same';
  if (!whole || !isOurs(old)) return left(path, 'not made by putback');
  writeInto(path, constants.O_WRONLY | constants.O_TRUNC, text);
  return 'written';
}

/** Adds to the end of what stands in the file; `more` says what, from the old text. Empty: nothing is missing. */
export function addTo(path: string, more: (old: string) => string): Wrote {
  const no = odd(path);
  if (no) return no;
  if (!lookAt(disk, path)) {
    const text = more('');
    return text === '' ? 'same' : writeIfMissing(path, text);
  }
  const { bytes, whole } = readPlain(path, MOST);
  if (!whole) return left(path, 'too large to be read');
  const text = more(bytes.toString('utf8'));
  if (text === '') return 'same';
  writeInto(path, constants.O_WRONLY | constants.O_APPEND, text);
  return 'written';
}

function writeInto(path: string, flags: number, text: string): void {
  const fd = openPlain(disk, path, flags);
  try {
    disk.writeFileSync(fd, text);
  } finally {
    disk.closeSync(fd);
  }
}

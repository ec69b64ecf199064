/** Reading what may be anything: a file of gigabytes, a device without an end. */
import { closeSync, openSync, readSync } from 'node:fs';
import { MOST_CHARACTERS } from '../yaml/doc.ts';

/** So many bytes of UTF-8 are always more characters than a job file may have. */
const MOST_BYTES = 3 * MOST_CHARACTERS + 4;
const PART = 1 << 16;

/**
 * The bytes of a file or a pipe; of one that is too big to be a job, as many whole characters as show that it
 * is. Throws the system's error.
 */
export function readBounded(path: string): Buffer {
  const fd = openSync(path, 'r');
  const parts: Buffer[] = [];
  let size = 0;
  try {
    while (size <= MOST_BYTES) {
      const part = Buffer.allocUnsafe(PART);
      const got = readSync(fd, part, 0, PART, null);
      if (got === 0) return Buffer.concat(parts);
      parts.push(part.subarray(0, got));
      size += got;
    }
  } finally {
    closeSync(fd);
  }
  const bytes = Buffer.concat(parts);
  let end = bytes.length - 1;
  while (end > 0 && ((bytes[end] ?? 0) & 0xc0) === 0x80) end--;
  return bytes.subarray(0, end);
}

/** A file's bytes as text and back, without a byte more or less. */
import { isUtf8 } from 'node:buffer';
import { basename } from 'node:path';
import { failOf, type SaveFail, saveFail } from './fail.ts';
import { readNamed, stampOf } from './plain.ts';

/** What was written last: most often it is just that which is read next. */
let last: { bytes: Buffer; text: string } | null = null;

/** The bytes of a text, as it is about to be written. */
export function bytesOfText(text: string): Buffer {
  const bytes = Buffer.from(text);
  last = { bytes, text };
  return bytes;
}

/** The text, its byte order mark kept; a fault with its line where the bytes are not UTF-8. */
export function textOfBytes(bytes: Buffer, file: string): string | SaveFail {
  if (last?.bytes.equals(bytes)) return last.text;
  if (isUtf8(bytes)) return bytes.toString();
  return saveFail(
    'not-text',
    `Line ${badLine(bytes)} of ${basename(file)} is not UTF-8 text.`,
    'Open it in an editor and save it as UTF-8.',
  );
}

/** First line, from 1, that is not UTF-8. A line feed is never part of another character. */
function badLine(bytes: Uint8Array): number {
  let start = 0;
  for (let line = 1; ; line++) {
    const feed = bytes.indexOf(10, start);
    if (feed < 0 || !isUtf8(bytes.subarray(start, feed))) return line;
    start = feed + 1;
  }
}

/** The text of a file that a person named, and its stamp (`stampOf`). Links are followed. */
export function readText(file: string): { ok: true; text: string; stamp: string } | SaveFail {
  try {
    const { bytes, stat } = readNamed(file);
    const text = textOfBytes(bytes, file);
    return typeof text === 'string' ? { ok: true, text, stamp: stampOf(stat) } : text;
  } catch (error) {
    return failOf(error, file, 'read');
  }
}

/** A text as a YAML value on one line. */
import { isPlain, quote } from '../diary/entry.ts';

/** Plain where every YAML reader gives the same text back, else in double quotes. */
export function textOfScalar(text: string): string {
  const words = /^[\p{L}][\p{L}\p{N} ,.()/-]*$/u;
  const plain = words.test(text) && !text.endsWith(' ');
  return isPlain(text) || (plain && isPlain(text.replace(/[^A-Za-z0-9]/g, 'x')))
    ? text
    : quote(text);
}

/** One fault as a few lines to read. */
import { pattern } from '../../model/pattern.ts';
import { safeLine } from '../../model/safe.ts';
import type { Fault } from '../../model/types.ts';

/** Columns of the file's line that an excerpt shows; the caret is always among them. */
const WIDTH = 100;

/** A line of the file, harmless and cut to what fits, and a caret below the character at `at`. */
export function excerptOf(line: string, at: number): string {
  const from = at > WIDTH - 20 ? at - 40 : 0;
  const head = `${from > 0 ? '…' : ''}${safeLine(line.slice(from, at))}`;
  const tail = safeLine(line.slice(at, from + WIDTH));
  const cut = line.length > from + WIDTH ? '…' : '';
  return `${head}${tail}${cut}\n${' '.repeat(columns(head))}^`;
}

/** East Asian wide characters and pictures take two columns, marks above letters none. */
const WIDE = pattern(
  () =>
    /[\u1100-\u115f\u2e80-\u303e\u3041-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6]|\p{Emoji_Presentation}/gu,
);

function columns(text: string): number {
  return [...text.replace(/\p{Mn}/gu, '').replace(WIDE.made, '  ')].length;
}

/**
 * A fault as lines: `FILE:LINE:COLUMN: what [code]`, the line of the file with a caret, and the way out.
 * Without a line break at the end.
 */
export function printFault(fault: Fault): string {
  const place = `${safeLine(fault.file)}:${fault.line}:${fault.column}`;
  const mark = fault.severity === 'warning' ? 'warning: ' : '';
  const excerpt = fault.excerpt.split('\n').map((line) => `    ${line}`.trimEnd());
  return [`${place}: ${mark}${fault.say} [${fault.code}]`, ...excerpt, `  ${fault.fix}`].join('\n');
}

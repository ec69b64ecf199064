/** Faults with their places: offsets become lines and columns. */

import type { Fault } from '../../model/types.ts';
import { type Found, fillText } from './faults.ts';
import { excerptOf } from './print.ts';
import { faultTexts } from './table.late.ts';

/** More than these are counted, not shown: nobody mends a thousand faults one by one. */
const MOST = 500;

/** Faults of a text, sorted by line and column. */
export function toFaults(found: readonly Found[], text: string, file: string): Fault[] {
  const sorted = [...found].sort((a, b) => a.at - b.at);
  const starts = sorted.length > 0 ? lineStarts(text) : [];
  const shown = sorted.slice(0, MOST);
  if (sorted.length > MOST) {
    const last = shown.at(-1)?.at ?? 0;
    shown.push({ code: 'more', at: last, data: { count: sorted.length - MOST } });
  }
  return shown.map((f) => toFault(f, text, file, starts));
}

function toFault(found: Found, text: string, file: string, starts: readonly number[]): Fault {
  const at = Math.min(Math.max(found.at, 0), text.length);
  const line = lineOf(starts, at);
  const start = starts[line - 1] ?? 0;
  const words = lineText(text, start);
  const { severity, say, fix } = faultTexts().FAULTS[found.code];
  const said = typeof found.data === 'function' ? found.data() : found.data;
  const data: Record<string, string | number> = { ...said };
  for (const [key, place] of Object.entries(found.lines ?? {})) data[key] = lineOf(starts, place);
  return {
    code: found.code,
    severity,
    file,
    line,
    column: [...text.slice(start, at)].length + 1,
    say: fillText(say, data),
    fix: fillText(fix, data).trim(),
    excerpt: excerptOf(words, at - start),
  };
}

/** Offsets of the lines' first characters. */
function lineStarts(text: string): number[] {
  const starts = [0];
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) starts.push(at + 1);
  return starts;
}

/** Line of an offset, from 1. */
function lineOf(starts: readonly number[], at: number): number {
  let low = 0;
  let high = starts.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((starts[middle] ?? 0) <= at) low = middle + 1;
    else high = middle;
  }
  return Math.max(low, 1);
}

function lineText(text: string, start: number): string {
  const end = text.indexOf('\n', start);
  return text.slice(start, end < 0 ? text.length : end).replace(/\r$/, '');
}

/** Values of the job file's form taken from its data: whatever stands there, each of these answers. */

import { oneLine } from '../../model/safe.ts';
import type { AsWritten } from '../../model/types.ts';
import type { Report } from '../faults/faults.ts';
import { type Spot, type TextSpot, valueAt } from '../yaml/spot.ts';

/** The text of the file, for places inside a value, and where faults go. */
export interface Reading {
  source: string;
  report: Report;
}

/** The text behind a key, on one line; null when there is none. */
export function textAt(spot: Spot | null, key: string): string | null {
  const found = textSpotAt(spot, key);
  return found ? oneLine(found.text) : null;
}

export function textSpotAt(spot: Spot | null, key: string): TextSpot | null {
  const value = valueAt(spot, key);
  return value?.is === 'text' ? value : null;
}

/** One text or a list of them. */
export function textSpotsOf(value: Spot | null): TextSpot[] {
  if (value?.is === 'text') return [value];
  return value?.is === 'list' ? value.items.filter((item) => item.is === 'text') : [];
}

export function textsAt(spot: Spot | null, key: string): string[] {
  return textSpotsOf(valueAt(spot, key)).map((t) => oneLine(t.text));
}

export function isTrueAt(spot: Spot | null, key: string): boolean {
  return textAt(spot, key) === 'true';
}

/**
 * From the index of a character in a text to its offset in the file; the text's own start where quotes or
 * folding hide it.
 */
export function placer(source: string, spot: TextSpot): (index: number) => number {
  if (spot.style === 'literal') return blockPlacer(source, spot);
  const start = spot.at + (spot.style === 'quoted' ? 1 : 0);
  const same = source.startsWith(spot.text, start);
  return (index) => (same ? start + index : spot.at);
}

function blockPlacer(source: string, spot: TextSpot): (index: number) => number {
  const lines: { index: number; at: number }[] = [];
  let index = 0;
  let start = source.indexOf('\n', spot.at) + 1;
  for (const words of spot.text.split('\n')) {
    const feed = source.indexOf('\n', start);
    const end = feed < 0 ? source.length : feed;
    const length = end - start - (source[end - 1] === '\r' ? 1 : 0);
    // What a block text leaves out of a line is its indentation.
    lines.push({ index, at: start + Math.max(0, length - words.length) });
    index += words.length + 1;
    start = end + 1;
  }
  return (at) => {
    const line = lines[lineOf(lines, at)];
    return line ? line.at + at - line.index : spot.at;
  };
}

/** The last line that starts at or before an index. */
function lineOf(lines: readonly { index: number }[], index: number): number {
  let low = 0;
  let high = lines.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((lines[middle]?.index ?? 0) <= index) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}

/** Reads a text by one of the small languages; what it cannot read is a fault and null. */
export function readAt<T>(
  { report }: Reading,
  spot: Spot | null,
  key: string,
  read: (text: string) => T | null,
  code: Parameters<Report>[0],
): T | null {
  const value = textSpotAt(spot, key);
  if (!value) return null;
  const answer = read(value.text);
  if (answer === null) report(code, value.at, { value: value.text });
  return answer;
}

/** How these keys are written; nothing when none of them is there. */
export function asWritten(
  spot: Spot | null,
  keys: readonly (keyof AsWritten)[],
): { asWritten?: AsWritten } {
  const said: AsWritten = {};
  for (const key of keys) {
    const text = textAt(spot, key);
    if (text !== null && text !== '') said[key] = text;
  }
  return Object.keys(said).length === 0 ? {} : { asWritten: said };
}

/** Reads the plain values of a job file, texts and lists of texts. None throws, whatever the file has there. */

import { oneLine } from '../../model/safe.ts';
import type { Report } from '../faults/faults.ts';
import { type Spot, type TextSpot, valueAt } from '../yaml/spot.ts';

/** The text of the file, for places inside a value, and where faults go. */
export interface Reading {
  source: string;
  report: Report;
}

/** The text of a value, on one line; null when there is none. */
export function textOf(value: Spot | null): string | null {
  return value?.is === 'text' ? oneLine(value.text) : null;
}

/** The text behind a key, on one line; null when there is none. */
export function textAt(spot: Spot | null, key: string): string | null {
  return textOf(valueAt(spot, key));
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

export function textListOf(value: Spot | null): string[] {
  return textSpotsOf(value).map((t) => oneLine(t.text));
}

export function textsAt(spot: Spot | null, key: string): string[] {
  return textListOf(valueAt(spot, key));
}

/** The version that a text says; 1 where it says none. */
export function readVersion(text: string): number {
  return /^[1-9][0-9]{0,8}$/.test(text) ? Number(text) : 1;
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
    // A line of a block text is shorter than the file's line by its indentation.
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

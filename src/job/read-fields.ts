/** Values of the job file's form taken from its data: whatever stands there, each of these answers. */
import type { Report } from './faults.ts';
import { type Spot, type TextSpot, valueAt } from './yaml-spot.ts';

/** The text of the file, for places inside a value, and where faults go. */
export interface Reading {
  source: string;
  report: Report;
}

/** The text behind a key; null when there is none. Line breaks at the end do not count. */
export function textAt(spot: Spot | null, key: string): string | null {
  return textSpotAt(spot, key)?.text.trimEnd() ?? null;
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
  return textSpotsOf(valueAt(spot, key)).map((t) => t.text.trimEnd());
}

export function isTrueAt(spot: Spot | null, key: string): boolean {
  return textAt(spot, key) === 'true';
}

/** Offset in the file of a character of a text; the text's own start where quotes or folding hide it. */
export function placeIn(source: string, spot: TextSpot, index: number): number {
  if (spot.style === 'literal') return placeInBlock(source, spot, index);
  const lead = spot.style === 'quoted' ? 1 : 0;
  return source.startsWith(spot.text, spot.at + lead) ? spot.at + lead + index : spot.at;
}

function placeInBlock(source: string, spot: TextSpot, index: number): number {
  const before = spot.text.slice(0, index).split('\n');
  let start = source.indexOf('\n', spot.at) + 1;
  for (let n = 1; n < before.length; n += 1) start = source.indexOf('\n', start) + 1;
  const words = spot.text.split('\n')[before.length - 1] ?? '';
  const line = source.slice(start, source.indexOf('\n', start) >>> 0);
  // What a block text leaves out of a line is its indentation.
  const indent = Math.max(0, line.replace(/\r$/, '').length - words.length);
  return start + indent + (before.at(-1)?.length ?? 0);
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

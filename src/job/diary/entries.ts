/** The entries of a diary from the file's data, whatever form somebody gave them by hand. */

import { BESIDE, type Entry } from '../../model/types.ts';
import { type Spot, valueAt } from '../yaml/spot.ts';
import { entryOf, placeInEntry } from './entry.ts';

/** An entry and where it stands: in its line as the program writes it, or in the file's data. */
export interface PlacedEntry {
  entry: Entry;
  /** Where the entry starts, behind its dash. */
  at: number;
  /** Its line and where that starts, or its data. */
  from: { line: string; start: number } | { spot: Spot };
}

/** Where the value of a key of this entry stands. */
export function placeInDiary({ at, from }: PlacedEntry, key: string): number {
  if ('spot' in from) return valueAt(from.spot, key)?.at ?? at;
  const place = placeInEntry(from.line, key);
  return place < 0 ? at : from.start + place;
}

/** Entries that can be read, and the items that cannot. */
export function readEntries(root: Spot | null): {
  entries: PlacedEntry[];
  odd: { index: number; spot: Spot }[];
} {
  const diary = valueAt(root, 'diary');
  const entries: PlacedEntry[] = [];
  const odd: { index: number; spot: Spot }[] = [];
  if (diary?.is !== 'list') return { entries, odd };
  for (const [index, spot] of diary.items.entries()) {
    const entry = entryOfSpot(spot);
    if (entry) entries.push({ entry, at: spot.at, from: { spot } });
    else odd.push({ index, spot });
  }
  return { entries, odd };
}

/** A text beside the verb may stand empty; everything else must say something. */
function entryOfSpot(spot: Spot): Entry | null {
  if (spot.is !== 'map') return null;
  const raw = new Map<string, string | string[]>();
  for (const { key, value } of spot.pairs.values()) {
    if (value.is === 'text') raw.set(key, value.text);
    else if (value.is === 'list' && key === 'hole') {
      const names = value.items.map((item) => (item.is === 'text' ? item.text : ''));
      raw.set(key, names);
    } else if (value.is !== 'nothing' || !(BESIDE as readonly string[]).includes(key)) return null;
  }
  return entryOf(raw);
}

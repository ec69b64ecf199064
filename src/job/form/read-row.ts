/** The holes of a piece as a job file tells them: its row, its picture, its sequence. */

import type { RowItem } from '../../model/types.ts';
import { readMap } from '../../piece/map.ts';
import { isHoleName } from '../../piece/names.ts';
import { readItem, rowWords } from '../../piece/row.ts';
import { type Spot, type TextSpot, valueAt } from '../yaml/spot.ts';
import { placer, type Reading, textSpotsOf, textsAt } from './read-fields.ts';

/** One item of the row and where it stands. */
export interface Placed<T> {
  value: T;
  at: number;
}

/** The row in any of its spellings: a text, a list of words, a list of `{kind, with}`. Null: nothing is said. */
export function readRow(reading: Reading, spot: Spot | null): Placed<RowItem>[] | null {
  if (spot?.is === 'text') return wordsOf(reading, spot);
  if (spot?.is !== 'list') return null;
  return spot.items.flatMap((item) => {
    if (item.is === 'text') return wordsOf(reading, item);
    const kind = valueAt(item, 'kind');
    if (kind?.is !== 'text') return [];
    const word = [kind.text, ...textsAt(item, 'with')].join('+');
    return [{ value: itemOf(reading, word, kind.at), at: kind.at }];
  });
}

function wordsOf(reading: Reading, spot: TextSpot): Placed<RowItem>[] {
  const place = placer(reading.source, spot);
  return rowWords(spot.text).map(({ word, at }) => {
    return { value: itemOf(reading, word, place(at)), at: place(at) };
  });
}

/** What is no bolt keeps its place in the row, so that the holes behind it keep theirs. */
function itemOf({ report }: Reading, word: string, at: number): RowItem {
  const item = readItem(word);
  if (item) return item;
  report('bad-row', at, { value: word });
  return { kind: word, with: [] };
}

/** Names of holes in a list or in one text with blanks or commas between. */
export function readHoleNames(reading: Reading, spot: Spot | null): Placed<string>[] | null {
  if (spot === null) return null;
  return textSpotsOf(spot).flatMap((text) => {
    const place = placer(reading.source, text);
    return [...text.text.matchAll(/[^\s,;]+/g)].flatMap((word) => {
      const at = place(word.index);
      if (isHoleName(word[0])) return [{ value: word[0], at }];
      reading.report('bad-hole', at, { value: word[0] });
      return [];
    });
  });
}

/** The picture of the holes. */
export function readPicture(reading: Reading, spot: Spot | null): string | null {
  if (spot?.is !== 'text') return null;
  const { source, report } = reading;
  if (spot.style !== 'literal' && /[\r\n]/.test(source.slice(spot.at, spot.end).trimEnd())) {
    // A folded text of one line loses nothing: its header is the first line.
    const lines = source.slice(spot.at, spot.end).trimEnd().split('\n').length;
    if (spot.style !== 'folded' || lines > 2) {
      report('folded-map', spot.at);
      return null;
    }
  }
  const lines = spot.text.split('\n');
  const starts: number[] = [];
  lines.reduce((at, line) => {
    starts.push(at);
    return at + line.length + 1;
  }, 0);
  const place = placer(source, spot);
  for (const fault of readMap(spot.text).faults) {
    const line = [...(lines[fault.line - 1] ?? '')];
    const index = (starts[fault.line - 1] ?? 0) + line.slice(0, fault.column - 1).join('').length;
    report(fault.code, fault.code === 'map-empty' ? spot.at : place(index), mapData(fault.say));
  }
  return spot.text;
}

/** The figures and names in what the map's reader says. */
function mapData(say: string): Record<string, string> {
  const [count = '', first = ''] = say.match(/\d+/g) ?? [];
  const value = say.startsWith('hole ') ? (say.split(' ')[1] ?? '') : (say.split(' ')[0] ?? '');
  return { value, count, first };
}

/** One word of a piece's row, changed in place in whatever spelling the file uses. */
import { isMap, isScalar, isSeq, type Node, type Scalar, type YAMLMap } from 'yaml';
import { rowWords } from '../../piece/row.ts';
import { quote } from '../diary/entry.ts';
import {
  type Cut,
  endOfPair,
  type Fail,
  pairOf,
  plainOf,
  rangeOf,
  scalarText,
  type Value,
} from './doc.ts';
import { columnOf, endingAt, lineAt } from './lines.ts';

export interface RowChange {
  index: number;
  was: string;
  word: string;
}

/** The words of a row in any of its spellings; null when it has none. */
export function wordsOf(row: Value): string[] | null {
  if (typeof row === 'string') return rowWords(row).map((w) => w.word);
  if (!Array.isArray(row)) return null;
  const words = row.map(wordOf);
  return words.every((w) => w !== null) ? words : null;
}

function wordOf(item: Value): string | null {
  if (typeof item === 'string') return item;
  if (!(item instanceof Map)) return null;
  const kind = item.get('kind');
  const under = item.get('with') ?? [];
  if (typeof kind !== 'string') return null;
  const list = typeof under === 'string' ? (under === '' ? [] : under.split('+')) : under;
  if (!Array.isArray(list) || !list.every((u) => typeof u === 'string')) return null;
  return [kind, ...list].join('+');
}

/** The cuts that change the row; several ways, the least change first, for the caller to try. */
export function rowCuts(text: string, row: Node, change: RowChange): Cut[][] | Fail {
  const words = wordsOf(plainOf(row));
  if (!words) return { fault: 'the row is written in a way that only a hand can change' };
  const found = words[change.index];
  if (found === undefined)
    return { fault: `the row has ${words.length} words, none at ${change.index + 1}` };
  if (found !== change.was) return { fault: `there stands ${found} now, not ${change.was}` };
  if (isScalar(row)) return textCuts(text, row, words, change);
  const item = isSeq(row) ? (row.items[change.index] as Node | undefined) : undefined;
  if (isScalar(item)) {
    const [from, to] = rangeOf(item);
    return [[{ from, to, put: inStyleOf(item, change.word) }]];
  }
  if (isMap(item)) return [itemCuts(text, item, change.word)];
  return { fault: 'the row is written in a way that only a hand can change' };
}

/** The word in place; where its quoting or folding is in the way, the whole row quoted anew. */
function textCuts(text: string, row: Scalar, words: string[], change: RowChange): Cut[][] {
  const [start, end] = rangeOf(row);
  const block = row.type === 'BLOCK_LITERAL' || row.type === 'BLOCK_FOLDED';
  const quoted = row.type === 'QUOTE_DOUBLE' || row.type === 'QUOTE_SINGLE';
  const from = block ? lineAt(text, start).next : start + (quoted ? 1 : 0);
  const source = text.slice(from, quoted ? end - 1 : end);
  const place = rowWords(source)[change.index];
  const ways: Cut[][] = [];
  if (place) {
    const at = from + place.at;
    ways.push([{ from: at, to: at + place.word.length, put: change.word }]);
  }
  if (!block) {
    const all = words.map((w, i) => (i === change.index ? change.word : w)).join(' ');
    ways.push([{ from: start, to: end, put: quote(all) }]);
  }
  return ways;
}

function inStyleOf(node: Scalar, value: string): string {
  if (node.type === 'QUOTE_SINGLE') return `'${value.replaceAll("'", "''")}'`;
  if (node.type === 'QUOTE_DOUBLE') return quote(value);
  return scalarText(value, 'flow');
}

/** `{kind: M, with: clip}`: only what differs. */
function itemCuts(text: string, item: YAMLMap, word: string): Cut[] {
  const [letter = '', ...under] = word.split('+');
  const cuts: Cut[] = [];
  const kind = pairOf(item, 'kind');
  if (!kind || !isScalar(kind.value)) return cuts;
  if (String(kind.value.value) !== letter) {
    const [from, to] = rangeOf(kind.value);
    cuts.push({ from, to, put: inStyleOf(kind.value, letter) });
  }
  const pair = pairOf(item, 'with');
  const now = wordOf(plainOf(item))?.split('+').slice(1) ?? [];
  if (now.join('+') === under.join('+')) return cuts;
  const list = under.map((u) => scalarText(u, 'flow'));
  const put = list.length === 1 ? (list[0] ?? '') : `[${list.join(', ')}]`;
  if (pair?.value) {
    const [from, to] = rangeOf(pair.value);
    const ends = text.slice(from, to).search(/\s*$/);
    cuts.push({ from, to: from + ends, put: from === to ? ` ${put}` : put });
  } else {
    const at = endOfPair(kind);
    const gap = item.flow
      ? ', '
      : endingAt(text, at) + ' '.repeat(columnOf(text, rangeOf(kind.key)[0]));
    cuts.push({ from: at, to: at, put: `${gap}with: ${put}` });
  }
  return cuts;
}

/** Items of a list or a map, put in and taken out by their own bytes. */
import { isScalar, isSeq, type Node, type YAMLMap, type YAMLSeq } from 'yaml';
import type { Edit } from '../../model/types.ts';
import { quote } from '../diary/entry.ts';
import {
  type Cut,
  type Fail,
  type KeyPair,
  plainOf,
  rangeOf,
  scalarText,
  styleOf,
  type YamlStyle,
} from './doc.ts';
import { behindKey, insert, insertBelow } from './insert.ts';
import { columnOf, endingAt, lineAt, lineStart } from './lines.ts';
import { itemsOf, spell, textOfNode } from './value.ts';

/** Between the text of a list of one and the text that came behind it: by the wide gap an undo leaves it a list. */
const ONE_WAS_LIST = ',  ';
const BY_HAND = 'is written in a way that only a hand can change';

/**
 * A text more behind those of a key that has some. A single text becomes a list of two, and one that can stand bare
 * only outside of a list gets quotes and a space before them: by that space an undo knows that they were not there.
 */
export function oneMore(
  text: string,
  pair: KeyPair,
  value: Node,
  put: string,
  into: YamlStyle,
): Cut[][] | Fail {
  const [from, to] = rangeOf(value);
  const item = spell(put, 'flow');
  if (isScalar(value)) {
    const old = String(value.value);
    if (value.type === 'BLOCK_LITERAL' || value.type === 'BLOCK_FOLDED') {
      const below = itemBelow(text, pair, value, put);
      if (/#/.test(text.slice(from, lineAt(text, from).end))) return [below];
      const ending = text.slice(from, to).endsWith('\n') ? endingAt(text, to) : '';
      return [below, [{ from, to, put: `[${quote(old)}, ${item}]${ending}` }]];
    }
    return [text.slice(from, to), ` ${spell(old, 'flow')}`].map((was) => [
      { from, to, put: `[${was}, ${item}]` },
    ]);
  }
  if (!isSeq(value)) return { fault: `${plainOf(pair.key)} ${BY_HAND}` };
  const last = itemsOf(value).at(-1);
  if (value.flow) {
    const at = last ? rangeOf(last)[1] : from + 1;
    const wasList = itemsOf(value).length === 1 ? ONE_WAS_LIST : ', ';
    return [[{ from: at, to: at, put: last ? `${wasList}${item}` : item }]];
  }
  if (into === 'flow') return { fault: `${plainOf(pair.key)} ${BY_HAND}` };
  return [
    [insertBelow(text, pair, { list: true }, (indent) => [`${indent}- ${spell(put, 'block')}`])],
  ];
}

/** A text of several lines keeps them: it becomes the first item of a list that stands under the key's first letter. */
function itemBelow(text: string, pair: KeyPair, value: Node, put: string): Cut[] {
  const from = rangeOf(value)[0];
  const item = `${' '.repeat(columnOf(text, rangeOf(pair.key)[0]))}- `;
  const end = lineAt(text, spanOf(text, value)[1]).next;
  return [
    { from: behindKey(text, pair), to: from, put: `${endingAt(text, from)}${item}` },
    insert(text, end, [`${item}${spell(put, 'block')}`]),
  ];
}

/** Behind its key again, where it is the only one left of such a list. */
function behindAgain(text: string, pair: KeyPair, left: Node, found: Node): Cut[] {
  const [from] = rangeOf(left);
  const isBlock = isScalar(left) && /^BLOCK_/.test(left.type ?? '');
  const inLine = columnOf(text, from) === columnOf(text, rangeOf(pair.key)[0]) + '- '.length;
  const back = isBlock && inLine && from < rangeOf(found)[0];
  return back ? [{ from: behindKey(text, pair), to: from, put: ' ' }] : [];
}

/** A text less; with its last one the key goes. */
export function oneLess(
  text: string,
  map: YAMLMap,
  pair: KeyPair,
  value: Node,
  edit: Extract<Edit, { edit: 'text' }>,
): Cut[][] | Fail {
  const gone = { fault: `${edit.key} of ${edit.piece} does not say so any more` };
  if (isScalar(value)) {
    return textOfNode(value) === edit.text ? [withoutItem(text, map, pair)] : gone;
  }
  if (!isSeq(value)) return gone;
  const items = itemsOf(value);
  // The last of equal ones is the one that came last.
  const found = items.findLast((item) => textOfNode(item) === edit.text);
  if (!found) return gone;
  if (items.length === 1) return [withoutItem(text, map, pair)];
  const less = withoutItem(text, value, found);
  const [left] = items.filter((item) => item !== found);
  if (items.length > 2 || !left) return [less];
  if (!value.flow) return [[...behindAgain(text, pair, left, found), ...less], less];
  // One text was a plain value before the second made a list of it: it becomes one again.
  const [from, to] = rangeOf(value);
  const [start, end] = rangeOf(left);
  const [a, b] = rangeOf(found);
  const rest = text.slice(from + 1, to - 1);
  const between =
    start < a
      ? text.slice(end, a) + text.slice(b, to - 1)
      : text.slice(from + 1, a) + text.slice(b, start) + text.slice(end, to - 1);
  const wasList = text.slice(end).startsWith(ONE_WAS_LIST);
  if (
    wasList ||
    rest.includes('\n') ||
    between.replaceAll(/[\s,]/g, '') !== '' ||
    left.range === null
  )
    return [less];
  const alone = text.slice(start, end);
  const bare = scalarText(String(plainOf(left)), styleOf(map));
  const wasBare = text.startsWith('[ ', from) && alone === spell(String(plainOf(left)), 'flow');
  return [[{ from, to, put: wasBare ? bare : alone }], less];
}

/** An item of a list, or a key of a map with what stands behind it. */
export function withoutItem(text: string, parent: YAMLMap | YAMLSeq, item: Node | KeyPair): Cut[] {
  const items = parent.items as (Node | KeyPair)[];
  const at = items.indexOf(item);
  const [start, end] = spanOf(text, item);
  if (parent.flow) {
    const [before, after] = [items[at - 1], items[at + 1]];
    const from = before ? spanOf(text, before)[1] : start;
    const to = after ? spanOf(text, after)[0] : end;
    const remark = (a: number, b: number) => text.slice(a, b).includes('#');
    // A remark beside a comma stays, and the comma with it.
    if (before && !remark(from, start)) return [{ from, to: end, put: '' }];
    if (after && !remark(end, to)) return [{ from: start, to, put: '' }];
    const comma = after ? text.indexOf(',', end) + 1 : end;
    return [{ from: start, to: comma, put: '' }];
  }
  const from = lineStart(text, start);
  return [{ from, to: lineAt(text, end).next, put: '' }];
}

/** From its first character to its last, without the line breaks that a block text takes with it. */
export function spanOf(text: string, item: Node | KeyPair): [number, number] {
  const [first, last] = 'key' in item ? [item.key, item.value ?? item.key] : [item, item];
  const from = rangeOf(first as Node)[0];
  const end = rangeOf(last as Node)[1];
  return [from, from + text.slice(from, end).trimEnd().length];
}

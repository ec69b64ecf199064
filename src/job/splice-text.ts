/** Texts in the keys of a piece: one more, one less, one in the place of another; only their bytes change. */
import { isMap, isScalar, isSeq, type Node, type Pair, type YAMLMap, type YAMLSeq } from 'yaml';
import {
  type Cut,
  documentEnd,
  type Fail,
  isNothing,
  pairOf,
  plainOf,
  rangeOf,
  type Value,
} from './splice-doc.ts';
import { behindKey, insert, intoFlow } from './splice-insert.ts';
import { blockEnd, columnOf, endingAt, lineAt, lineStart } from './splice-lines.ts';
import { itemsOf, oneText, sameTexts, spell, textOfNode, textsOf } from './splice-value.ts';
import type { Edit } from './types.ts';

export type TextEdit = Extract<Edit, { edit: 'text' | 'instead' }>;
type KeyPair = Pair<Node, Node | null>;

const BY_HAND = 'is written in a way that only a hand can change';

/** A key with a text, as lines of a block piece; a picture stands below its key. */
export function linesOf(key: string, text: string, step: number): string[] {
  if (!text.includes('\n')) return [`${key}: ${spell(text, false)}`];
  return [`${key}: |`, ...text.split('\n').map((line) => ' '.repeat(step) + line)];
}

export const flowPair = (key: string, text: string): string => `${key}: ${spell(text, true)}`;

/** The cuts for a piece that stands in the file; several ways, the least change first, for the caller to try. */
export function textCuts(
  text: string,
  piece: KeyPair,
  edit: TextEdit,
  step: number,
): Cut[][] | Fail {
  const map = piece.value;
  if (!isNothing(map) && !isMap(map)) {
    return { fault: `${edit.piece} is written as a text, not with keys` };
  }
  const pair = isMap(map) ? pairOf(map, edit.key) : null;
  const value = pair?.value ?? null;
  if (edit.edit === 'text') {
    if (edit.in) {
      if (pair && value && !isNothing(value))
        return oneMore(text, pair, value, edit.text, isMap(map) && map.flow === true);
      return newKey(text, piece, pair, edit.key, edit.text, step);
    }
    if (!isMap(map) || !pair || !value)
      return { fault: `${edit.key} of ${edit.piece} does not say so any more` };
    return oneLess(text, map, pair, value, edit);
  }
  const now = oneText(edit.key, value ? plainOf(value) : undefined);
  if (now !== oneText(edit.key, edit.was ?? undefined)) {
    return { fault: `${edit.key} of ${edit.piece} was changed in the file since` };
  }
  if (edit.text === null) return isMap(map) && pair ? [withoutItem(text, map, pair)] : [];
  if (!pair || !value || isNothing(value))
    return newKey(text, piece, pair, edit.key, edit.text, step);
  return [instead(text, pair, value, edit.text, isMap(map) && map.flow === true, step)];
}

/** A key that is not there yet, or has nothing behind it. */
function newKey(
  text: string,
  piece: KeyPair,
  pair: KeyPair | null,
  key: string,
  put: string,
  step: number,
): Cut[][] {
  if (pair) {
    const at = behindKey(text, pair);
    return [[{ from: at, to: at, put: `${pair.value ? '' : ':'} ${spell(put, true)}` }]];
  }
  const lines = linesOf(key, put, step);
  const map = piece.value;
  if (isMap(map) && map.flow) return [[intoFlow(map, flowPair(key, put))]];
  const column = columnOf(text, rangeOf(piece.key)[0]);
  const below = lineAt(text, rangeOf(piece.key)[1]).next;
  if (isMap(map)) {
    const indent = ' '.repeat(columnOf(text, rangeOf(map)[0]));
    const end = blockEnd(text, below, column, false, documentEnd(text));
    return [
      [
        insert(
          text,
          end.at,
          lines.map((line) => indent + line),
        ),
      ],
    ];
  }
  const end = behindKey(text, piece);
  const beside = [{ from: end, to: end, put: `${map ? '' : ':'} {${flowPair(key, put)}}` }];
  const inFlow = /[,}]/.test(text.slice(end, lineAt(text, end).end));
  const indent = ' '.repeat(column + step);
  return inFlow
    ? [beside]
    : [
        [
          insert(
            text,
            below,
            lines.map((line) => indent + line),
          ),
        ],
        beside,
      ];
}

function oneMore(
  text: string,
  pair: KeyPair,
  value: Node,
  put: string,
  flow: boolean,
): Cut[][] | Fail {
  const [from, to] = rangeOf(value);
  const item = spell(put, true);
  if (isScalar(value)) {
    const old = String(value.value);
    if (value.type === 'BLOCK_LITERAL' || value.type === 'BLOCK_FOLDED') {
      if (/#/.test(text.slice(from, lineAt(text, from).end)))
        return { fault: `${plainOf(pair.key)} ${BY_HAND}` };
      const ending = text.slice(from, to).endsWith('\n') ? endingAt(text, to) : '';
      return [[{ from, to, put: `[${JSON.stringify(old)}, ${item}]${ending}` }]];
    }
    return [text.slice(from, to), spell(old, true)].map((was) => [
      { from, to, put: `[${was}, ${item}]` },
    ]);
  }
  if (!isSeq(value)) return { fault: `${plainOf(pair.key)} ${BY_HAND}` };
  const last = itemsOf(value).at(-1);
  if (value.flow) {
    const at = last ? rangeOf(last)[1] : from + 1;
    return [[{ from: at, to: at, put: last ? `, ${item}` : item }]];
  }
  if (flow) return { fault: `${plainOf(pair.key)} ${BY_HAND}` };
  const column = columnOf(text, rangeOf(pair.key)[0]);
  const end = blockEnd(
    text,
    lineAt(text, rangeOf(pair.key)[1]).next,
    column,
    true,
    documentEnd(text),
  );
  const indent = ' '.repeat(end.column ?? column);
  return [[insert(text, end.at, [`${indent}- ${spell(put, false)}`])]];
}

function oneLess(
  text: string,
  map: YAMLMap,
  pair: KeyPair,
  value: Node,
  edit: Extract<TextEdit, { edit: 'text' }>,
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
  if (!value.flow || items.length > 2 || !left) return [less];
  // One text needs no list: this is what a second one made of it.
  const [from, to] = rangeOf(value);
  const [start, end] = rangeOf(left);
  const [a, b] = rangeOf(found);
  const rest = text.slice(from + 1, to - 1);
  const between =
    start < a
      ? text.slice(end, a) + text.slice(b, to - 1)
      : text.slice(from + 1, a) + text.slice(b, start) + text.slice(end, to - 1);
  return rest.includes('\n') || between.replaceAll(/[\s,]/g, '') !== '' || left.range === null
    ? [less]
    : [[{ from, to, put: text.slice(start, end) }], less];
}

/** An item of a list, or a key of a map with what stands behind it. */
function withoutItem(text: string, parent: YAMLMap | YAMLSeq, item: Node | KeyPair): Cut[] {
  const items = parent.items as (Node | KeyPair)[];
  const at = items.indexOf(item);
  const [start, end] = spanOf(text, item);
  if (parent.flow) {
    const [before, after] = [items[at - 1], items[at + 1]];
    if (before) return [{ from: spanOf(text, before)[1], to: end, put: '' }];
    return [{ from: start, to: after ? spanOf(text, after)[0] : end, put: '' }];
  }
  const from = lineStart(text, start);
  return [{ from, to: lineAt(text, end).next, put: '' }];
}

/** From its first character to its last, without the line breaks that a block text takes with it. */
function spanOf(text: string, item: Node | KeyPair): [number, number] {
  const [first, last] = 'key' in item ? [item.key, item.value ?? item.key] : [item, item];
  const from = rangeOf(first as Node)[0];
  const end = rangeOf(last as Node)[1];
  return [from, from + text.slice(from, end).trimEnd().length];
}

function instead(
  text: string,
  pair: KeyPair,
  value: Node,
  put: string,
  flow: boolean,
  step: number,
): Cut[] {
  const from = rangeOf(value)[0];
  const to = spanOf(text, value)[1];
  if (!put.includes('\n') || flow) {
    // What stood on lines of its own gives way to a text behind the key.
    const below = isSeq(value) && !value.flow;
    return [
      {
        from: below ? behindKey(text, pair) : from,
        to,
        put: (below ? ' ' : '') + spell(put, flow),
      },
    ];
  }
  const ending = endingAt(text, from);
  const literal = isScalar(value) && value.type === 'BLOCK_LITERAL';
  const first = lineAt(text, from).next;
  const drawn = literal && first < to ? /^( *)\S/m.exec(text.slice(first, to))?.[1] : undefined;
  const indent = drawn ?? ' '.repeat(columnOf(text, rangeOf(pair.key)[0]) + step);
  const lines = put.split('\n').map((line) => indent + line);
  if (drawn !== undefined) return [{ from: first, to, put: lines.join(ending) }];
  return [{ from, to, put: ['|', ...lines].join(ending) }];
}

/** Whether the key says what the edit wants, given what it said before. */
export function isAsWanted(
  before: Value | undefined,
  after: Value | undefined,
  edit: TextEdit,
): boolean {
  if (edit.edit === 'instead')
    return oneText(edit.key, after) === oneText(edit.key, edit.text ?? undefined);
  const [was, now] = [textsOf(before), textsOf(after)];
  const [less, more] = edit.in ? [was, now] : [now, was];
  if (less === null || more === null || less.length + 1 !== more.length) return false;
  const at = edit.in ? more.length - 1 : more.lastIndexOf(edit.text);
  return more[at] === edit.text && sameTexts(less, more.toSpliced(at, 1));
}

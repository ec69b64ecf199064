/** Texts in the keys of a piece: one more, one less, one in the place of another; only their bytes change. */
import { isMap, isScalar, isSeq, type Node, type YAMLMap } from 'yaml';
import type { Edit, Way } from '../../model/types.ts';
import {
  type Cut,
  type Fail,
  isNothing,
  type KeyPair,
  pairOf,
  plainOf,
  rangeOf,
  styleOf,
  type Value,
  type YamlStyle,
} from './doc.ts';
import { behindKey, insert, intoFlow } from './insert.ts';
import { blockEnd, columnOf, endingAt, lineAt } from './lines.ts';
import { oneLess, oneMore, spanOf, withoutItem } from './list.ts';
import { oneText, sameTexts, spell, textsOfNode } from './value.ts';

export type TextEdit = Extract<Edit, { edit: 'text' | 'instead' }>;

/** A key with a text, as lines of a block piece; a picture stands below its key. */
export function keyLines(key: string, text: string, step: number): string[] {
  if (key !== 'map') return [`${key}: ${spell(text, 'block')}`];
  return [`${key}: |`, ...text.split('\n').map((line) => ' '.repeat(step) + line)];
}

export const flowPair = (key: string, text: string): string => `${key}: ${spell(text, 'flow')}`;

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
  if (edit.edit === 'text' && edit.way) return inWay(text, pair, edit, edit.way, step);
  const value = pair?.value ?? null;
  if (edit.edit === 'text') {
    if (edit.in) {
      if (pair && value && !isNothing(value))
        return oneMore(text, pair, value, edit.text, styleOf(map));
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
  return [instead(text, pair, value, edit.text, styleOf(map), step)];
}

/** In the one way of a caution or tip that says its ways apart, as if that were a key of a piece. */
function inWay(
  text: string,
  said: KeyPair | null,
  { way: _, ...edit }: Extract<TextEdit, { edit: 'text' }>,
  way: Way,
  step: number,
): Cut[][] | Fail {
  if (!said) return { fault: `${edit.key} of ${edit.piece} does not say so any more` };
  const pair = isMap(said.value) ? pairOf(said.value, way) : null;
  const { value } = pair ?? {};
  if (edit.in) {
    return pair && value && !isNothing(value)
      ? oneMore(text, pair, value, edit.text, styleOf(said.value))
      : newKey(text, said, pair, way, edit.text, step);
  }
  if (!isMap(said.value) || !pair || !value)
    return { fault: `${edit.key} of ${edit.piece} does not say so any more` };
  return oneLess(text, said.value, pair, value, edit);
}

/** A key that is not there yet, or has nothing behind it. */
function newKey(
  text: string,
  piece: KeyPair,
  pair: KeyPair | null,
  key: string,
  said: string,
  step: number,
): Cut[][] {
  if (pair) {
    const at = behindKey(text, pair);
    return [[{ from: at, to: at, put: `${pair.value ? '' : ':'} ${spell(said, 'flow')}` }]];
  }
  const lines = keyLines(key, said, step);
  const map = piece.value;
  if (isMap(map) && map.flow) return [[intoFlow(map, flowPair(key, said))]];
  const column = columnOf(text, rangeOf(piece.key)[0]);
  const below = lineAt(text, rangeOf(piece.key)[1]).next;
  if (isMap(map)) {
    const indent = ' '.repeat(columnOf(text, rangeOf(map)[0]));
    const at =
      key === 'under'
        ? behindName(text, map, below)
        : blockEnd(text, 'map', { from: below, column }).at;
    const put = lines.map((line) => indent + line);
    return [[insert(text, at, put)]];
  }
  const end = behindKey(text, piece);
  const beside = [{ from: end, to: end, put: `${map ? '' : ':'} {${flowPair(key, said)}}` }];
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

/** What a piece lies under stands at its top, behind its name. */
function behindName(text: string, map: YAMLMap, top: number): number {
  const [first] = map.items as KeyPair[];
  const name = pairOf(map, 'name');
  if (!name || name !== first) return top;
  return lineAt(text, spanOf(text, name)[1]).next;
}

function instead(
  text: string,
  pair: KeyPair,
  value: Node,
  put: string,
  into: YamlStyle,
  step: number,
): Cut[] {
  const from = rangeOf(value)[0];
  const to = spanOf(text, value)[1];
  if (plainOf(pair.key) !== 'map' || into === 'flow') {
    // What stood on lines of its own gives way to a text behind the key.
    const below = isSeq(value) && !value.flow;
    return [
      {
        from: below ? behindKey(text, pair) : from,
        to,
        put: (below ? ' ' : '') + spell(put, into),
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
  const [was, now] = [textsOfNode(before), textsOfNode(after)];
  const [less, more] = edit.in ? [was, now] : [now, was];
  if (less === null || more === null || less.length + 1 !== more.length) return false;
  const at = edit.in ? more.length - 1 : more.lastIndexOf(edit.text);
  return more[at] === edit.text && sameTexts(less, more.toSpliced(at, 1));
}

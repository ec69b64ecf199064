/** Changes of the person's part, by meaning, as cuts in the bytes of this moment. */
import { isMap, type Node, type Pair, type YAMLMap } from 'yaml';
import type { Edit } from '../../model/types.ts';
import { findDiary } from './diary.ts';
import {
  type Cut,
  cut,
  endOfPair,
  type Fail,
  isFail,
  isNothing,
  openDoc,
  pairOf,
  plainOf,
  rangeOf,
  sameValue,
  scalarText,
  type Value,
} from './doc.ts';
import {
  behindKey,
  insert,
  insertBelow,
  intoFlow,
  newSection,
  type Section,
  stepOf,
} from './insert.ts';
import { columnOf, lineAt } from './lines.ts';
import { putPairs, takePairsOut } from './pairs.ts';
import { rowCuts, wordsOf } from './row.ts';
import { asValue, figureCuts, flowOf, lessCuts, topCuts, unnamedCuts } from './section.ts';
import { flowPair, isAsWanted, keyLines, textCuts } from './text.ts';

/** Keys of a piece that its row comes behind. */
const ABOVE_ROW = ['name', 'under'];

/**
 * The text with the edits made, one after the other. A fault, and nothing is changed, when the file cannot be
 * read, when what an edit rests on does not stand there any more, or when reading the result shows that
 * anything but the wanted path would change.
 */
export function applyEdits(text: string, edits: Edit[]): string | Fail {
  if (edits.length === 0) return text;
  const place = findDiary(text);
  // The diary is long and no edit touches it: blanked, so that places stay and reading is quick.
  const diary = place ? text.slice(place.from, place.at) : '';
  let upper = place ? swap(text, place.from, diary.replace(/[^\r\n]/g, ' ')) : text;
  for (const edit of edits) {
    for (const one of waysApart(upper, edit)) {
      const next = applyOne(upper, one);
      // A letter that somebody has written otherwise since is no longer the mark's: it stays.
      if (isFail(next) && one.edit === 'unkind') continue;
      if (isFail(next)) return next;
      upper = next;
    }
  }
  const from = place && findDiary(upper)?.from;
  return typeof from === 'number' ? swap(upper, from, diary) : upper;
}

/** A caution that says coming off and going on apart is told one more text for each. */
function waysApart(text: string, edit: Edit): Edit[] {
  if (edit.edit !== 'text' || (edit.key !== 'caution' && edit.key !== 'tip')) return [edit];
  const doc = openDoc(text);
  const said = isFail(doc) ? undefined : at(plainOf(doc.contents), pathOf(edit));
  if (!(said instanceof Map)) return [edit];
  return (['removal', 'fitting'] as const).map((way) => ({ ...edit, way }));
}

/** As much of the text as `put` is long, from `at`, replaced by it. */
function swap(text: string, at: number, put: string): string {
  return text.slice(0, at) + put + text.slice(at + put.length);
}

function applyOne(text: string, edit: Edit): string | Fail {
  if (edit.edit === 'pairs') return putPairs(text, edit);
  if (edit.edit === 'pairs-out') return takePairsOut(text, edit);
  const doc = openDoc(text);
  if (isFail(doc)) return doc;
  const root: unknown = doc.contents;
  if (!isMap(root)) return { fault: 'the file has no keys' };
  const ways = cutsFor(text, root, edit);
  if (isFail(ways)) return ways;
  const before = plainOf(root);
  for (const cuts of ways) {
    // What goes out as a whole takes its remark along; what is only put anew does not.
    const anew =
      'text' in edit && edit.edit !== 'text' && edit.edit !== 'kind' && edit.text !== null;
    if (anew && cuts.some((c) => losesRemark(text.slice(c.from, c.to), c.put))) continue;
    const next = cut(text, cuts);
    const read = openDoc(next);
    if (!isFail(read) && onlyThat(before, plainOf(read.contents), edit)) return next;
  }
  return { fault: 'the file is written in a way that only a hand can change' };
}

/** Somebody's remark stands in what is cut out, and not in what is put there. */
function losesRemark(out: string, put: string): boolean {
  return [...out.matchAll(/(?:^|\s)(#.*)/g)].some(
    ([, remark = '']) => !put.includes(remark.trim()),
  );
}

/** An edit of one place. */
type OneEdit = Exclude<Edit, { edit: 'pairs' | 'pairs-out' }>;

function cutsFor(text: string, root: YAMLMap, edit: OneEdit): Cut[][] | Fail {
  if (edit.edit === 'kind') {
    return newPair(text, root, 'bolts', edit.letter, {
      flow: scalarText(edit.text, 'flow'),
      block: scalarText(edit.text, 'block'),
    });
  }
  if (edit.edit === 'named') {
    return newPair(text, root, edit.section, edit.key, inBoth(flowOf(edit.fields)));
  }
  if (edit.edit === 'unnamed') return unnamedCuts(text, root, edit);
  if (edit.edit === 'top') return topCuts(text, root, edit);
  if (edit.edit === 'figure') return figureCuts(text, root, edit, stepOf(text, root));
  if (edit.edit === 'unkind') return lessCuts(text, root, 'bolts', edit.letter, edit.text);
  if (edit.edit === 'letter') return otherLetter(root, edit.from, edit.to);
  const pieces = pairOf(root, 'pieces')?.value;
  const piece = isMap(pieces) ? pairOf(pieces, edit.piece) : null;
  if (edit.edit === 'row-word') {
    const row = isMap(piece?.value) ? pairOf(piece.value, 'bolts')?.value : null;
    if (!row) return { fault: `${edit.piece} has no row in the file` };
    return rowCuts(text, row, edit);
  }
  if (edit.edit === 'piece') {
    return newPair(text, root, 'pieces', edit.piece, inBoth('{}'));
  }
  if (edit.edit === 'text' || edit.edit === 'instead') {
    const step = stepOf(text, root);
    if (piece) return textCuts(text, piece, edit, step);
    const { key, text: put } = edit;
    if (put === null || (edit.edit === 'text' && !edit.in))
      return { fault: `there is no ${edit.piece} any more` };
    return newPair(text, root, 'pieces', edit.piece, {
      flow: `{${flowPair(key, put)}}`,
      block: keyLines(key, put, step),
    });
  }
  const row = scalarText(edit.row, 'flow');
  if (!piece) {
    return newPair(text, root, 'pieces', edit.piece, {
      flow: `{bolts: ${row}}`,
      block: [`bolts: ${row}`],
    });
  }
  return intoPiece(text, piece, row, edit.piece);
}

function otherLetter(root: YAMLMap, from: string, to: string): Cut[][] | Fail {
  const kinds = pairOf(root, 'bolts')?.value;
  const pair = isMap(kinds) ? pairOf(kinds, from) : null;
  if (!pair) return { fault: `${from} does not stand in bolts any more` };
  const [start, end] = rangeOf(pair.key);
  return [[{ from: start, to: end, put: scalarText(to, 'flow') }]];
}

/** What stands behind a key: in brackets, and in a block behind the colon or on lines below it. */
interface InStyles {
  flow: string;
  block: string | readonly string[];
}

const inBoth = (value: string): InStyles => ({ flow: value, block: value });

/** `key: value` as the last pair of a section at the top, which is made where it is missing. */
function newPair(
  text: string,
  root: YAMLMap,
  section: Section,
  key: string,
  { flow, block }: InStyles,
): Cut[][] | Fail {
  const name = scalarText(key, 'block');
  const step = stepOf(text, root);
  const lines = (indent: string) =>
    typeof block === 'string'
      ? [`${indent}${name}: ${block}`]
      : [`${indent}${name}:`, ...block.map((line) => `${indent}${' '.repeat(step)}${line}`)];
  const pair = pairOf(root, section);
  const column = columnOf(text, rangeOf(root)[0]);
  if (!pair) {
    if (root.flow) return [[intoFlow(root, `${section}: {${name}: ${flow}}`)]];
    return [[newSection(text, root, section, column, lines(' '.repeat(column + step)))]];
  }
  if (isMap(pair.value)) {
    if (pairOf(pair.value, key)) return { fault: `${key} stands in ${section} already` };
    if (pair.value.flow) return [[intoFlow(pair.value, `${name}: ${flow}`)]];
  } else if (!isNothing(pair.value)) {
    return { fault: `${section} is no list of keys` };
  }
  if (root.flow) {
    const at = behindKey(text, pair);
    return [[{ from: at, to: at, put: ` {${name}: ${flow}}` }]];
  }
  return [[insertBelow(text, pair, { step }, lines)]];
}

function intoPiece(
  text: string,
  piece: Pair<Node, Node | null>,
  row: string,
  key: string,
): Cut[][] | Fail {
  const put = `bolts: ${row}`;
  if (isNothing(piece.value)) {
    const at = rangeOf(piece.key)[1];
    const inFlow = /[,}]/.test(text.slice(at, lineAt(text, at).end));
    const indent = ' '.repeat(columnOf(text, rangeOf(piece.key)[0]) + 2);
    const below = [insert(text, lineAt(text, at).next, [indent + put])];
    const colon = piece.value ? '' : ':';
    const end = behindKey(text, piece);
    const beside = [{ from: end, to: end, put: `${colon} {${put}}` }];
    return inFlow ? [beside] : [below, beside];
  }
  if (!isMap(piece.value)) return { fault: `${key} is written as a text, not with keys` };
  const map = piece.value;
  const old = pairOf(map, 'bolts');
  if (old) {
    if (!isNothing(old.value)) return { fault: `${key} has a row already` };
    const at = behindKey(text, old);
    return [[{ from: at, to: at, put: `${old.value ? '' : ':'} ${row}` }]];
  }
  if (map.flow) return [[intoFlow(map, put)]];
  const pairs = map.items as Pair<Node, Node | null>[];
  const indent = ' '.repeat(columnOf(text, rangeOf(map)[0]));
  const above = pairs.filter((p, i) => i < ABOVE_ROW.length && isAbove(p)).at(-1);
  const end = above ? endOfPair(above) : rangeOf(piece.key)[1];
  const at = end > 0 && text[end - 1] === '\n' ? end : lineAt(text, end).next;
  return [[insert(text, at, [indent + put])]];
}

const isAbove = (pair: Pair<Node, Node | null>): boolean =>
  ABOVE_ROW.includes(String(plainOf(pair.key)));

/** Whether the only difference between the two is what the edit wants. */
function onlyThat(before: Value, after: Value, edit: OneEdit): boolean {
  const path = pathOf(edit);
  const now = at(after, path);
  if (
    edit.edit === 'unnamed' ||
    edit.edit === 'unkind' ||
    ((edit.edit === 'top' || edit.edit === 'figure') && edit.text === null)
  ) {
    return now === undefined && sameValue(without(before, path), without(after, path));
  }
  if (edit.edit === 'letter') {
    const [was, is] = [at(before, ['bolts', edit.from]), at(after, path)];
    const same = was !== undefined && is !== undefined && sameValue(was, is);
    return same && sameValue(without(before, ['bolts', edit.from]), without(after, path));
  }
  if (edit.edit === 'text' || edit.edit === 'instead') {
    if (!isAsWanted(at(before, path), now, edit)) return false;
    return sameValue(without(before, path), without(after, path));
  }
  if (now === undefined) return false;
  if (edit.edit === 'row-word') {
    const old = wordsOf(at(before, path) ?? '');
    const words = wordsOf(now);
    if (!old || words?.join(' ') !== old.with(edit.index, edit.word).join(' ')) return false;
  } else if (edit.edit === 'named') {
    if (!sameValue(now, asValue(edit.fields))) return false;
  } else if (edit.edit === 'top' || edit.edit === 'figure') {
    if (now !== edit.text) return false;
  } else if (edit.edit === 'piece') {
    if (!(now instanceof Map) || now.size > 0) return false;
  } else if (now !== (edit.edit === 'kind' ? edit.text : edit.row)) return false;
  return sameValue(without(before, path), without(after, path));
}

function pathOf(edit: OneEdit): string[] {
  if (edit.edit === 'kind' || edit.edit === 'unkind') return ['bolts', edit.letter];
  if (edit.edit === 'letter') return ['bolts', edit.to];
  if (edit.edit === 'named' || edit.edit === 'unnamed') return [edit.section, edit.key];
  if (edit.edit === 'top') return [edit.key];
  if (edit.edit === 'figure') return ['tasks', edit.task, edit.key];
  if (edit.edit === 'text' && edit.way) return ['pieces', edit.piece, edit.key, edit.way];
  if (edit.edit === 'text' || edit.edit === 'instead') return ['pieces', edit.piece, edit.key];
  return edit.edit === 'piece' ? ['pieces', edit.piece] : ['pieces', edit.piece, 'bolts'];
}

function at(value: Value, path: readonly string[]): Value | undefined {
  let here: Value | undefined = value;
  for (const key of path) here = here instanceof Map ? here.get(key) : undefined;
  return here;
}

/** The value without the path, and without maps that are empty when it is gone. */
function without(value: Value, path: readonly string[]): Value {
  const [key, ...rest] = path;
  if (key === undefined || !(value instanceof Map)) return value;
  const copy = new Map(value);
  const child = copy.get(key);
  const left = child === undefined || rest.length === 0 ? '' : without(child, rest);
  const empty = left === '' || (left instanceof Map && left.size === 0);
  if (empty) copy.delete(key);
  else copy.set(key, left);
  return copy;
}

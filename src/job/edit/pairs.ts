/** Keys that are filled from an earlier job: put in with their values, and taken out again if nobody changed them. */
import { isMap, stringify, type YAMLMap } from 'yaml';
import { sumOf } from '../../model/sum.ts';
import type { Edit, Said } from '../../model/types.ts';
import {
  type Cut,
  cut,
  type Fail,
  isFail,
  isNothing,
  type KeyPair,
  openDoc,
  pairOf,
  plainOf,
  rangeOf,
  sameValue,
  type Value,
} from './doc.ts';
import { behindKey, insert, insertBelow, intoFlow, newSection, stepOf } from './insert.ts';
import { columnOf, lineAt } from './lines.ts';
import { withoutItem } from './list.ts';

type PairsIn = Extract<Edit, { edit: 'pairs' }>;
type PairsOut = Extract<Edit, { edit: 'pairs-out' }>;

const STYLE = {
  lineWidth: 0,
  compat: 'yaml-1.1',
  defaultKeyType: 'PLAIN',
  defaultStringType: 'PLAIN',
  flowCollectionPadding: false,
} as const;

/** A key and what stands behind it as lines of a block, or as a pair of a flow mapping. */
export function pairLines(key: string, value: Said, indent: number): string[] {
  const text = stringify({ [key]: value }, { ...STYLE, indent });
  return text.trimEnd().split('\n');
}

/** On one line, however long: a picture has its line breaks as signs. */
const FLOW = {
  ...STYLE,
  collectionStyle: 'flow',
  blockQuote: false,
  doubleQuotedMinMultiLineLength: Number.MAX_SAFE_INTEGER,
} as const;

function flowText(key: string, value: Said): string {
  return `${key}: ${stringify(value, FLOW).trim()}`;
}

function yamlOf(said: Said): Value {
  if (typeof said === 'string') return said;
  if (Array.isArray(said)) return said.map(yamlOf);
  return new Map(Object.entries(said).map(([key, value]) => [key, yamlOf(value)]));
}

export function saidOfValue(value: Value): Said {
  if (typeof value === 'string') return value;
  if (Array.isArray(value)) return value.map(saidOfValue);
  return Object.fromEntries([...value].map(([key, v]) => [key, saidOfValue(v)]));
}

/** The text with all of them put in. A fault changes nothing: a key that stands there already, or has no place. */
export function putPairs(text: string, { pairs }: PairsIn): string | Fail {
  let now = text;
  for (const { path, value } of pairs) {
    const next = putOne(now, path, value);
    if (isFail(next)) return next;
    now = next;
  }
  return now;
}

const BY_HAND = { fault: 'the file is written in a way that only a hand can change' };

function putOne(text: string, path: readonly string[], value: Said): string | Fail {
  const root = rootOf(text);
  if (isFail(root)) return root;
  const before = plainOf(root);
  const wanted = withValue(before, path, yamlOf(value));
  if (wanted === null) return { fault: `${path.join(' ')} stands in the file already` };
  for (const cuts of waysIn(text, root, path, value)) {
    const next = cut(text, cuts);
    const read = rootOf(next);
    if (!isFail(read) && sameValue(plainOf(read), wanted)) return next;
  }
  return BY_HAND;
}

function rootOf(text: string): YAMLMap | Fail {
  const doc = openDoc(text);
  if (isFail(doc)) return doc;
  const root: unknown = doc.contents;
  return isMap(root) ? (root as YAMLMap) : { fault: 'the file has no keys' };
}

/** Null where something stands there. */
function withValue(before: Value, path: readonly string[], value: Value): Value | null {
  const [key = '', ...rest] = path;
  const map =
    before instanceof Map ? new Map(before) : before === '' ? new Map<string, Value>() : null;
  if (map === null) return null;
  const old = map.get(key);
  if (rest.length === 0) {
    if (old !== undefined && old !== '') return null;
    map.set(key, value);
    return map;
  }
  const inner = withValue(old ?? '', rest, value);
  if (inner === null) return null;
  map.set(key, inner);
  return map;
}

function waysIn(text: string, root: YAMLMap, path: readonly string[], value: Said): Cut[][] {
  const step = stepOf(text, root);
  let map = root;
  let pair: KeyPair | null = null;
  let at = 0;
  // As far as the file has the path.
  for (; at < path.length; at++) {
    const next = pairOf(map, path[at] ?? '') as KeyPair | null;
    if (!next) break;
    pair = next;
    if (!isMap(next.value)) {
      at++;
      break;
    }
    map = next.value as YAMLMap;
  }
  const rest = path.slice(at);
  const inner = nested(rest.slice(1), value);
  const [key] = rest;
  if (pair && !isMap(pair.value)) {
    if (!isNothing(pair.value)) return [];
    return below(text, pair, rest.length === 0 ? value : { [key ?? '']: inner }, step);
  }
  if (key === undefined) return [];
  if (map.flow) return [[intoFlow(map, flowText(key, inner))]];
  if (pair === null) {
    if (key !== 'bolts' && key !== 'pieces') return [];
    const lines = pairLines(key, inner, step).slice(1);
    return [[newSection(text, root, key, columnOf(text, rangeOf(root)[0]), lines)]];
  }
  const lines = pairLines(key, inner, step);
  return [[insertBelow(text, pair, { step }, (indent) => lines.map((line) => indent + line))]];
}

function nested(path: readonly string[], value: Said): Said {
  return path.reduceRight<Said>((said, key) => ({ [key]: said }), value);
}

/** The value of a key that is there and still empty. */
function below(text: string, pair: KeyPair, value: Said, step: number): Cut[][] {
  const end = behindKey(text, pair);
  const colon = pair.value ? '' : ':';
  const beside = [{ from: end, to: end, put: `${colon} ${flowText('x', value).slice(3)}` }];
  const inFlow = /[,}]/.test(text.slice(end, lineAt(text, end).end));
  if (inFlow) return [beside];
  const indent = ' '.repeat(columnOf(text, rangeOf(pair.key)[0]));
  const [head = '', ...lines] = pairLines('x', value, step);
  const behind = head.slice(2);
  const put = { from: end, to: end, put: colon + behind };
  const under = insert(
    text,
    lineAt(text, end).next,
    lines.map((line) => indent + line),
  );
  return [
    [...(colon + behind === '' ? [] : [put]), ...(lines.length === 0 ? [] : [under])],
    beside,
  ];
}

/**
 * The text without those that still say what their sum is of. Others stay, and a key that is not there is no
 * fault. A mapping that is empty then stays as an empty place.
 */
export function takePairsOut(text: string, { pairs }: PairsOut): string | Fail {
  let now = text;
  for (const { path, sum } of pairs.toReversed()) {
    const root = rootOf(now);
    if (isFail(root)) return root;
    const found = findPair(root, path);
    const value = found ? emptied(plainOf(found.pair.value)) : '';
    if (!found || sumOf(JSON.stringify(saidOfValue(value))) !== sum) continue;
    const next = cut(now, withoutItem(now, found.map, found.pair));
    const read = rootOf(next);
    if (isFail(read)) return BY_HAND;
    const wanted = withoutPath(plainOf(root), path);
    if (!sameValue(emptied(plainOf(read)), emptied(wanted))) return BY_HAND;
    now = next;
  }
  return now;
}

function findPair(root: YAMLMap, path: readonly string[]): { map: YAMLMap; pair: KeyPair } | null {
  let map = root;
  for (const [i, key] of path.entries()) {
    const pair = pairOf(map, key) as KeyPair | null;
    if (!pair) return null;
    if (i === path.length - 1) return { map, pair };
    if (!isMap(pair.value)) return null;
    map = pair.value as YAMLMap;
  }
  return null;
}

function withoutPath(value: Value, path: readonly string[]): Value {
  const [key = '', ...rest] = path;
  if (!(value instanceof Map)) return value;
  const copy = new Map(value);
  const inner = copy.get(key);
  if (rest.length === 0 || inner === undefined) copy.delete(key);
  else copy.set(key, withoutPath(inner, rest));
  return copy;
}

/** An empty mapping counts as nothing. */
function emptied(value: Value): Value {
  if (!(value instanceof Map)) return value;
  if (value.size === 0) return '';
  return new Map([...value].map(([key, v]) => [key, emptied(v)]));
}

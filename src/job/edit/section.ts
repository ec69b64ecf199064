/** Keys of the file itself, and what stands under the names of its sections. */
import { isMap, isScalar, type Node, type Pair, type YAMLMap } from 'yaml';
import { oneLine } from '../../model/safe.ts';
import type { Edit, Fields } from '../../model/types.ts';
import {
  type Cut,
  type Fail,
  isNothing,
  pairOf,
  plainOf,
  rangeOf,
  sameValue,
  scalarText,
  styleOf,
  type Value,
} from './doc.ts';
import { behindKey, insert, intoFlow, type Section } from './insert.ts';
import { columnOf, lineAt } from './lines.ts';
import { spanOf, withoutItem } from './list.ts';
import { textCuts } from './text.ts';

/** The fields of a new item as a flow map. */
export function flowOf(fields: Fields): string {
  const pairs = Object.entries(fields).map(([key, value]) => {
    if (typeof value === 'string') return `${key}: ${spelled(key, value)}`;
    return `${key}: [${value.map((text) => scalarText(text, 'flow')).join(', ')}]`;
  });
  return `{${pairs.join(', ')}}`;
}

/** A number and a truth, as people write them: every reader may take them for such. */
const MEANT_PLAIN: Record<string, RegExp> = {
  once: /^true$/,
  count: /^[1-9][0-9]{0,5}$/,
  likely: /^[0-9]{1,5}(?:\.[0-9]{1,5})?$/,
};

const spelled = (key: string, value: string): string =>
  MEANT_PLAIN[key]?.test(value) ? value : scalarText(value, 'flow');

/** The fields as the file's data. */
export function asValue(fields: Fields): Value {
  const pairs = Object.entries(fields).map(([key, value]): [string, Value] => {
    return [key, typeof value === 'string' ? value : [...value]];
  });
  return new Map(pairs);
}

/** Takes an item out again; where its fields are said, as long as it says just these. */
export function unnamedCuts(
  text: string,
  root: YAMLMap,
  { section, key, fields }: Extract<Edit, { edit: 'unnamed' }>,
): Cut[][] | Fail {
  return lessCuts(text, root, section, key, fields && asValue(fields));
}

/** Takes a name out of a section. `says`: as long as this stands behind it. */
export function lessCuts(
  text: string,
  root: YAMLMap,
  section: Section,
  key: string,
  says?: Value,
): Cut[][] | Fail {
  const whole = pairOf(root, section);
  const map = whole?.value;
  const pair = isMap(map) ? pairOf(map, key) : null;
  if (!whole || !isMap(map) || !pair) {
    return { fault: `there is no ${key} under ${section} any more` };
  }
  if (says !== undefined && !sameValue(pair.value ? plainOf(pair.value) : '', says)) {
    return { fault: `${key} in ${section} was changed in the file since` };
  }
  // A section goes with its last item, unless it holds somebody's remark, or stood there empty in braces before: one that
  // is written for an item has none.
  const [from, to] = spanOf(text, whole);
  const last = map.items.length === 1 && map.flow !== true && !text.slice(from, to).includes('#');
  return last
    ? [withoutItem(text, root, whole), withoutItem(text, map, pair)]
    : [withoutItem(text, map, pair)];
}

/** A figure of a task, as a text behind its key. */
export function figureCuts(
  text: string,
  root: YAMLMap,
  { task, key, text: put }: Extract<Edit, { edit: 'figure' }>,
  step: number,
): Cut[][] | Fail {
  const map = pairOf(root, 'tasks')?.value;
  const pair = isMap(map) ? pairOf(map, task) : null;
  if (!pair) return { fault: `there is no task ${task} any more` };
  const value = isMap(pair.value) ? pairOf(pair.value, key)?.value : null;
  const was = value && isScalar(value) ? oneLine(String(value.value)).trim() : null;
  // Keys of a task are spliced as those of a piece are.
  const edit = { edit: 'instead', piece: task, key: key as 'takes', was, text: put } as const;
  return textCuts(text, pair, edit, step);
}

/** Keys of the file that stand above it, the nearest last. */
const ABOVE = ['putback', 'job', 'machine', 'complaint'];

/** The one text of a key of the file instead of what stood there. */
export function topCuts(
  text: string,
  root: YAMLMap,
  { key, was, text: put }: Extract<Edit, { edit: 'top' }>,
): Cut[][] | Fail {
  const pair = pairOf(root, key);
  const said = pair?.value && isScalar(pair.value) ? oneLine(String(pair.value.value)).trim() : '';
  if (said !== (was ?? '')) return { fault: `${key} was changed in the file since` };
  if (put === null) return pair ? [withoutItem(text, root, pair)] : [];
  if (pair && isNothing(pair.value)) {
    const at = behindKey(text, pair);
    return [[{ from: at, to: at, put: `${pair.value ? '' : ':'} ${scalarText(put, 'block')}` }]];
  }
  if (pair?.value) {
    const [from, to] = [rangeOf(pair.value)[0], spanOf(text, pair.value)[1]];
    return [[{ from, to, put: scalarText(put, styleOf(root)) }]];
  }
  if (root.flow) return [[intoFlow(root, `${key}: ${scalarText(put, 'flow')}`)]];
  const above = (root.items as Pair<Node, Node | null>[]).findLast((p) =>
    ABOVE.includes(String(plainOf(p.key))),
  );
  const at = above ? lineAt(text, spanOf(text, above)[1]).next : 0;
  const indent = ' '.repeat(columnOf(text, rangeOf(root)[0]));
  return [[insert(text, at, [`${indent}${key}: ${scalarText(put, 'block')}`])]];
}

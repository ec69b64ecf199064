/** Where a key or a section goes that is not in the file yet, in the file's own style. */
import type { Node, Pair, YAMLMap } from 'yaml';
import { isMap } from 'yaml';
import { type Cut, endOfPair, plainOf, rangeOf } from './doc.ts';
import { blockEnd, columnOf, documentEnd, endingAt, lineAt, lineStart } from './lines.ts';

/** What comes below a section that has to be made, in the order of a job file. */
const BELOW = {
  bolts: ['pieces', 'suspects', 'checks', 'tasks', 'buy', 'diary'],
  pieces: ['suspects', 'checks', 'tasks', 'buy', 'diary'],
  suspects: ['checks', 'tasks', 'buy', 'diary'],
  checks: ['tasks', 'buy', 'diary'],
  tasks: ['buy', 'diary'],
  buy: ['diary'],
} as const;

export type Section = keyof typeof BELOW;

/** How far children are indented in this file. */
export function stepOf(text: string, root: YAMLMap): number {
  const column = columnOf(text, rangeOf(root)[0]);
  for (const { value } of root.items as Pair<Node, Node | null>[]) {
    if (isMap(value) && !value.flow) return columnOf(text, rangeOf(value)[0]) - column;
  }
  return 2;
}

/** A section before what belongs below it, comments above that included; a blank line behind it if one is before. */
export function newSection(
  text: string,
  root: YAMLMap,
  section: Section,
  column: number,
  lines: string[],
): Cut {
  const below = (root.items as Pair<Node, Node | null>[]).find((p) =>
    (BELOW[section] as readonly string[]).includes(String(plainOf(p.key))),
  );
  const head = `${' '.repeat(column)}${section}:`;
  if (!below) return insert(text, documentEnd(text), [head, ...lines]);
  const at = aboveComments(text, lineStart(text, rangeOf(below.key)[0]));
  const spaced = at > 0 && text.slice(lineStart(text, at - 1), at).trim() === '';
  return insert(text, at, [head, ...lines, ...(spaced ? [''] : [])]);
}

/** Start of the comment lines directly above a line; the line itself when they are the file's header. */
function aboveComments(text: string, at: number): number {
  let start = at;
  while (start > 0) {
    const before = lineStart(text, start - 1);
    if (before >= start || !/^\s*#/.test(text.slice(before, start))) return start;
    start = before;
  }
  return at;
}

/** Directly behind a key's colon; behind the key itself where a flow map leaves the colon out. */
export function behindKey(text: string, pair: Pair<Node, Node | null>): number {
  const end = rangeOf(pair.key)[1];
  return pair.value ? text.indexOf(':', end) + 1 : end;
}

/** Behind the last pair of a flow map, or as its first. */
export function intoFlow(map: YAMLMap, put: string): Cut {
  const last = map.items.at(-1) as Pair<Node, Node | null> | undefined;
  const at = last ? endOfPair(last) : rangeOf(map)[0] + 1;
  return { from: at, to: at, put: last ? `, ${put}` : put };
}

/**
 * Whole lines behind the last item of the block below a key; `lines` is told how far items are indented there, `step` more
 * than the key where there is none. `list`: items may stand in the key's own column.
 */
export function insertBelow(
  text: string,
  { key }: Pair<Node, Node | null>,
  { list = false, step = 0 }: { list?: boolean; step?: number },
  lines: (indent: string) => readonly string[],
): Cut {
  const [from, to] = rangeOf(key);
  const column = columnOf(text, from);
  const end = blockEnd(text, list ? 'list' : 'map', { from: lineAt(text, to).next, column });
  return insert(text, end.at, lines(' '.repeat(end.column ?? column + step)));
}

/** Whole lines at the start of a line or at the end of the text; see `putLines`. */
export function insert(text: string, at: number, lines: readonly string[]): Cut {
  const ending = endingAt(text, at);
  const open = at === text.length && !/(^\uFEFF?|\n)$/.test(text);
  const block = lines.join(ending);
  return { from: at, to: at, put: open ? ending + block : block + ending };
}

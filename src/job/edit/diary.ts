/** One more entry in the text of a job file: one more line, and no other byte. */
import { isMap, isSeq, type Node, type YAMLMap } from 'yaml';
import {
  endOfPair,
  isFail,
  isNothing,
  openDoc,
  pairOf,
  rangeOf,
  styleOf,
  type YamlStyle,
} from './doc.ts';
import { blockEnd, columnOf, documentEnd, lineAt, nextLine, putLines } from './lines.ts';

export interface DiaryPlace {
  /** Start of the line of the key `diary`. */
  key: number;
  /** Start of the first line below it. */
  from: number;
  /** Where the next entry's line goes: a line's start, or the end of the text. */
  at: number;
  /** What stands before an entry's dash. */
  indent: string;
}

/**
 * Where the diary stands, found by its lines alone and so at no cost; null when there is no key `diary` at the
 * top, or its entries are not a block below it. Above it in a readable file no line can look like that key:
 * whatever runs over several lines is indented.
 */
export function findDiary(text: string): DiaryPlace | null {
  const root = rootColumn(text);
  if (root === null) return null;
  const key = new RegExp(
    `^(\uFEFF?) {${root}}(?:diary|"diary"|'diary')[ \\t]*:(?:[ \\t]+#.*)?[ \\t]*\\r?$`,
    'm',
  ).exec(text);
  if (!key) return null;
  const start = key.index + (key[1]?.length ?? 0);
  const from = nextLine(text, start);
  const { at, column } = blockEnd(text, 'list', { from, column: root });
  return { key: start, from, at, indent: ' '.repeat(column ?? root + 2) };
}

/** Column of the keys at the top; null when they do not stand on lines of their own. */
function rootColumn(text: string): number | null {
  for (let start = text.startsWith('\uFEFF') ? 1 : 0; start < text.length; ) {
    const line = lineAt(text, start);
    const words = text.slice(line.start, line.end);
    if (!/^\s*(#.*)?$|^%|^---(\s+#.*)?\s*$/.test(words)) {
      return /^ *[{[?]|^---/.test(words) ? null : words.search(/[^ ]/);
    }
    start = line.next;
  }
  return null;
}

/**
 * The text with one entry (`- {…}`, one line, without indentation) behind the last entry of the diary.
 *
 * Every other byte stays: line endings, byte order mark, a missing last newline (the new last line then has
 * none either), comments. A comment directly below the last entry and as deep stays above the new line; one
 * further out, or behind a blank line, stays below it (see `blockEnd`). Without a key `diary` it is added at
 * the end; an empty `[]` behind the key goes, and a flow list gets the entry as its last item.
 *
 * Where the file's form has no room for an entry (its root is a list, `diary` is a text or an explicit key) the
 * text comes back unchanged.
 */
export function appendEntry(text: string, line: string): string {
  const entry = line.trim();
  const place = findDiary(text);
  if (place) return putLines(text, place.at, [place.indent + entry]);
  return appendByParse(text, entry);
}

function appendByParse(text: string, entry: string): string {
  const doc = openDoc(text);
  if (isFail(doc)) return text;
  const root: unknown = doc.contents;
  if (root === null || isNothing(root as Node)) return addDiary(text, entry, 0);
  if (!isMap(root)) return text;
  const pair = pairOf(root, 'diary');
  if (!pair) {
    return root.flow
      ? intoFlowMap(text, root, entry)
      : addDiary(text, entry, columnOf(text, rangeOf(root)[0]));
  }
  if (isSeq(pair.value) && pair.value.flow) {
    return intoFlowList(text, pair.value, entry, styleOf(root));
  }
  if (root.flow && isNothing(pair.value)) {
    const at = endOfPair(pair);
    return `${text.slice(0, at)}${pair.value ? '' : ':'} [${flowItem(entry)}]${text.slice(at)}`;
  }
  return text;
}

function addDiary(text: string, entry: string, column: number): string {
  const indent = ' '.repeat(column);
  return putLines(text, documentEnd(text), [`${indent}diary:`, `${indent}  ${entry}`]);
}

const flowItem = (entry: string): string => entry.replace(/^-\s*/, '');

function intoFlowMap(text: string, map: YAMLMap, entry: string): string {
  const last = map.items.at(-1);
  const at = last ? endOfPair(last as Parameters<typeof endOfPair>[0]) : rangeOf(map)[0] + 1;
  return `${text.slice(0, at)}${last ? ', ' : ''}diary: [${flowItem(entry)}]${text.slice(at)}`;
}

function intoFlowList(text: string, list: Node, entry: string, root: YamlStyle): string {
  const [start, end] = rangeOf(list);
  const last = isSeq(list) ? (list.items.at(-1) as Node | undefined) : undefined;
  if (last) {
    const at = rangeOf(last)[1];
    return `${text.slice(0, at)}, ${flowItem(entry)}${text.slice(at)}`;
  }
  const colon = /[ \t]*$/.exec(text.slice(0, start))?.index ?? start;
  const bare = text[colon - 1] === ':' && /^\[\s*\]$/.test(text.slice(start, end));
  if (!bare || root === 'flow') {
    return `${text.slice(0, start + 1)}${flowItem(entry)}${text.slice(start + 1)}`;
  }
  const opened = text.slice(0, colon) + text.slice(end);
  return findDiary(opened) ? appendEntry(opened, entry) : text;
}

/**
 * The fast way through a job file: the diary stands last and its lines are as the program writes them. Then the
 * person's part is parsed once, and of the diary only the lines that were not there before. What this gives is
 * what the whole parse gives; in every other case it gives nothing.
 */

import type { Entry } from '../../model/types.ts';
import type { PlacedEntry } from './entries.ts';
import { parseEntryLine } from './entry.ts';

export interface Split {
  /** The person's part, up to and with the line `diary:`. */
  upper: string;
  /** Where the key stands. */
  key: number;
  entries: PlacedEntry[];
}

/** The key at the start of its line, nothing behind it but a comment; `#5` could be a text that was cut. */
const KEY = /diary:(?:[ \t]+#(?![0-9])[^\r\n]*|[ \t]*)(?:\r?\n|$)/y;

/** Where the first line of the diary begins; 0 where the key stands otherwise. */
function behindKey(text: string, key: number): number {
  if (text.startsWith(BARE_KEY, key)) return key + BARE_KEY.length;
  KEY.lastIndex = key;
  return KEY.test(text) ? KEY.lastIndex : 0;
}

const BARE_KEY = 'diary:\n';

/** Lines of the file read last; a mark adds one line to them. */
let known: readonly ReadLine[] = [];

interface ReadLine extends PlacedEntry {
  from: { line: string; start: number };
}

/** The entry of a line that was read before: most often the next one, else looked for among all. */
function remembered(lines: readonly ReadLine[]): (line: string) => Entry | undefined {
  let next = 0;
  let all: Map<string, number> | null = null;
  return (line) => {
    if (lines[next]?.from.line !== line) {
      if (lines.length === 0) return undefined;
      all ??= new Map(lines.map(({ from }, i) => [from.line, i]));
      next = all.get(line) ?? lines.length;
    }
    return lines[next++]?.entry;
  };
}

/** Else where it is not so: the first line of the diary that is otherwise, or 0. */
export function splitDiary(text: string): Split | number {
  const key = text.lastIndexOf('\ndiary:') + 1;
  if (key === 0) return 0;
  const from = behindKey(text, key);
  if (from === 0) return 0;
  if (text.includes('\0', from) || text.includes('\uFFFD', from)) return 0;
  const entries = readLines(text, from);
  return typeof entries === 'number' ? entries : { upper: text.slice(0, from), key, entries };
}

function readLines(text: string, from: number): PlacedEntry[] | number {
  const entries: ReadLine[] = [];
  const before = remembered(known);
  let indent = -1;
  for (let start = from; start < text.length; ) {
    const feed = text.indexOf('\n', start);
    const stop = feed < 0 ? text.length : feed;
    const end = feed > start && text.charCodeAt(feed - 1) === 13 ? feed - 1 : stop;
    const line = text.slice(start, end);
    const entry = before(line) ?? parseEntryLine(line);
    if (entry) {
      const dash = line.indexOf('-');
      if (indent >= 0 && dash !== indent) return start;
      indent = dash;
      entries.push({ entry, at: start + dash + 2, from: { line, start } });
    } else if (!/^ *(?:#.*)?$/.test(line)) return start;
    start = stop + 1;
  }
  known = entries;
  return entries;
}

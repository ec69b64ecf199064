/**
 * The person's part of three versions of a job file merged key by key, as text: what only one side changed is
 * taken from that side with its comments, byte by byte; what both changed in the same key differs, and is left
 * between git's markers.
 */
import { isMap, type Node, type Pair, type YAMLMap } from 'yaml';
import { mergeFlow, mergeRow, three } from './merge-line.ts';
import { byText, interleave } from './merge-order.ts';
import { endOfPair, isFail, openDoc, plainOf, rangeOf } from './splice-doc.ts';
import { lineAt, lineStart } from './splice-lines.ts';

export interface Merged {
  text: string;
  /** False where git's markers are left. */
  clean: boolean;
}
/** Merges three texts line by line, as `git merge-file` does. */
export type LineMerge = (base: string, ours: string, theirs: string) => Merged;

/** Without git at hand: nothing is merged by lines, all that differs is between markers. */
export const marked: LineMerge = (_, ours, theirs) => ({
  text: markers(ours, theirs),
  clean: false,
});

export function markers(ours: string, theirs: string): string {
  const closed = (text: string) => (text === '' || text.endsWith('\n') ? text : `${text}\n`);
  return `<<<<<<< ours\n${closed(ours)}=======\n${closed(theirs)}>>>>>>> theirs\n`;
}

/** A map in block style: its pairs with the comments above each, and what is left below the last. */
interface Block {
  chunks: Map<string, Chunk>;
  rest: string;
}
interface Chunk {
  key: string;
  /** Comments and blank lines above the key's line. */
  lead: string;
  /** The key's line, and what belongs to it. */
  text: string;
  /** The key's line alone, when a block map stands below it. */
  head: string;
  below: Block | null;
}

const EMPTY: Block = { chunks: new Map(), rest: '' };

/** Texts have line feeds only, and end with one. Null when one of them cannot be taken apart by keys. */
export function mergeUpper(
  base: string,
  ours: string,
  theirs: string,
  lines: LineMerge,
): Merged | null {
  const [b, o, t] = [base, ours, theirs].map(blockOf);
  if (!b || !o || !t) return null;
  const merge = new Merge(lines);
  const text = merge.blocks(b, o, t);
  return { text, clean: merge.clean };
}

function blockOf(text: string): Block | null {
  if (text.trim() === '') return { chunks: new Map(), rest: text };
  const doc = openDoc(text);
  if (isFail(doc)) return null;
  const root: unknown = doc.contents;
  if (root === null) return { chunks: new Map(), rest: text };
  return isMap(root) ? block(text, root, 0, text.length) : null;
}

/** The block between two line starts; null for a map in flow style, or one that does not begin its lines. */
function block(text: string, map: YAMLMap, start: number, end: number): Block | null {
  if (map.flow) return null;
  const chunks = new Map<string, Chunk>();
  let at = start;
  for (const pair of map.items as Pair<Node, Node | null>[]) {
    const line = lineStart(text, rangeOf(pair.key)[0]);
    const column = rangeOf(pair.key)[0] - line;
    const key = String(plainOf(pair.key));
    if (text.slice(line, line + column).trim() !== '' || line < at || chunks.has(key)) return null;
    const to = withComments(text, endOf(text, pair), column, end);
    const first = lineAt(text, line).next;
    const inner = isMap(pair.value) && rangeOf(pair.value)[0] >= first ? pair.value : null;
    const below = inner ? block(text, inner, first, to) : null;
    const head = below ? text.slice(line, first) : '';
    chunks.set(key, { key, lead: text.slice(at, line), text: text.slice(line, to), head, below });
    at = to;
  }
  return { chunks, rest: text.slice(at, end) };
}

/** Start of the line below a pair. */
function endOf(text: string, pair: Pair<Node, Node | null>): number {
  const end = endOfPair(pair);
  return end > 0 && text[end - 1] === '\n' ? end : lineAt(text, end).next;
}

/** Comments below that are deeper than the key belong to it still. */
function withComments(text: string, from: number, column: number, end: number): number {
  let to = from;
  for (let at = from; at < end; ) {
    const line = lineAt(text, at);
    const words = text.slice(line.start, line.end);
    const indent = words.search(/[^ ]/);
    if (words.trim() !== '' && (words[indent] !== '#' || indent <= column)) break;
    if (words.trim() !== '') to = line.next;
    at = line.next;
  }
  return to;
}

class Merge {
  clean = true;
  readonly lines: LineMerge;

  constructor(lines: LineMerge) {
    this.lines = lines;
  }

  blocks(base: Block, ours: Block, theirs: Block): string {
    const keys = interleave([...ours.chunks.keys()], [...theirs.chunks.keys()], (k) => k, byText);
    const parts = keys.map((key) =>
      this.chunk(base.chunks.get(key), ours.chunks.get(key), theirs.chunks.get(key)),
    );
    const rest = three(base.rest, ours.rest, theirs.rest);
    return parts.join('') + (rest ?? this.byLines(base.rest, ours.rest, theirs.rest));
  }

  private chunk(b: Chunk | undefined, o: Chunk | undefined, t: Chunk | undefined): string {
    const whole = (c: Chunk | undefined) => (c ? c.lead + c.text : '');
    const taken = three(whole(b), whole(o), whole(t));
    if (taken !== null) return taken;
    // Taken out on one side, changed on the other.
    if (!o || !t) return this.differ(whole(o), whole(t));
    const lead = three(b?.lead ?? '', o.lead, t.lead);
    const body = this.body(b, o, t);
    if (body === null) return this.byLines(whole(b), whole(o), whole(t));
    return (lead ?? this.byLines(b?.lead ?? '', o.lead, t.lead)) + body;
  }

  private body(b: Chunk | undefined, o: Chunk, t: Chunk): string | null {
    const text = three(b?.text ?? '', o.text, t.text);
    if (text !== null) return text;
    if (o.below && t.below) {
      const head = three(b?.head, o.head, t.head);
      if (head === null) return null;
      return head + this.blocks(b?.below ?? EMPTY, o.below, t.below);
    }
    const row = o.key === 'bolts' && b ? mergeRow(b.text, o.text, t.text) : null;
    return row ?? mergeFlow(b?.text ?? '', o.text, t.text);
  }

  /** By lines where a text has several: a picture, a note. A single line differs as a whole. */
  private byLines(base: string, ours: string, theirs: string): string {
    const several = [base, ours, theirs].every((text) => text.split('\n').length > 2);
    if (!several) return this.differ(ours, theirs);
    const { text, clean } = this.lines(base, ours, theirs);
    this.clean &&= clean;
    return text;
  }

  private differ(ours: string, theirs: string): string {
    this.clean = false;
    return markers(ours, theirs);
  }
}

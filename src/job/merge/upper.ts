/**
 * The person's part of three versions of a job file merged key by key, as text: what only one side changed is
 * taken from that side with its comments, byte by byte; what both changed in the same key differs, and is left
 * between git's markers.
 */

import { isFail, openDoc } from '../edit/doc.ts';
import { type Block, below, blockOf, type Chunk, EMPTY } from './blocks.ts';
import { mergeFlow, mergeRow, three } from './line.ts';
import { byText, interleave } from './order.ts';

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

function markers(ours: string, theirs: string): string {
  const closed = (text: string) => (text === '' || text.endsWith('\n') ? text : `${text}\n`);
  return `<<<<<<< ours\n${closed(ours)}=======\n${closed(theirs)}>>>>>>> theirs\n`;
}

/** Texts have line feeds only, and end with one. Null when one of them cannot be taken apart by keys. */
export function mergeUpper(
  base: string,
  ours: string,
  theirs: string,
  lines: LineMerge,
): Merged | null {
  const [b, o, t] = [base, ours, theirs].map((text) => blockOf(text, 'file'));
  if (!b || !o || !t || !alike(o, t)) return null;
  const merge = new Merge(lines);
  const text = merge.blocks(b, o, t);
  // Whole keys in one column, from files that can be read, make a file that can be read; anything else is read to make sure.
  const doubt = merge.clean && !merge.sure && isFail(openDoc(text));
  return doubt ? marked(base, ours, theirs) : { text, clean: merge.clean };
}

/** Their keys can stand in one block. */
const alike = (a: Block, b: Block): boolean =>
  a.chunks.size === 0 || b.chunks.size === 0 || a.column === b.column;

class Merge {
  clean = true;
  /** Put together of whole keys alone. */
  sure = true;
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
    const whole = (c: Chunk | undefined) => (c ? c.lead + c.head + c.body : '');
    const taken = three(whole(b), whole(o), whole(t));
    if (taken !== null) return taken;
    // Taken out on one side, changed on the other.
    if (!o || !t) return this.differ(whole(o), whole(t));
    const lead = three(b?.lead ?? '', o.lead, t.lead);
    const value = this.value(b, o, t);
    if (value === null) return this.byLines(whole(b), whole(o), whole(t));
    return (lead ?? this.byLines(b?.lead ?? '', o.lead, t.lead)) + value;
  }

  /** The key's line and what belongs to it; null when that differs as a whole. */
  private value(b: Chunk | undefined, o: Chunk, t: Chunk): string | null {
    const text = (c: Chunk | undefined) => (c ? c.head + c.body : '');
    const taken = three(text(b), text(o), text(t));
    if (taken !== null) return taken;
    const [mine, yours] = [below(o), below(t)];
    if (mine && yours && alike(mine, yours)) {
      const head = three(b?.head, o.head, t.head);
      return head === null ? null : head + this.blocks((b && below(b)) ?? EMPTY, mine, yours);
    }
    const row = o.key === 'bolts' && b ? mergeRow(text(b), text(o), text(t)) : null;
    if (row !== null) return row;
    this.sure = false;
    return mergeFlow(text(b), text(o), text(t));
  }

  /** By lines where a text has several: a picture, a note. A single line differs as a whole. */
  private byLines(base: string, ours: string, theirs: string): string {
    const several = [base, ours, theirs].every((text) => text.split('\n').length > 2);
    if (!several) return this.differ(ours, theirs);
    this.sure = false;
    const { text, clean } = this.lines(base, ours, theirs);
    this.clean &&= clean;
    return text;
  }

  private differ(ours: string, theirs: string): string {
    this.clean = false;
    return markers(ours, theirs);
  }
}

/** Two versions of a job file, grown from one, brought together: see `mergeJob`. */
import { isMap } from 'yaml';
import type { Entry } from '../../model/types.ts';
import { printEntry } from '../diary/entry.ts';
import { splitDiary } from '../diary/lines.ts';
import { findDiary } from '../edit/diary.ts';
import { isFail, openDoc, pairOf } from '../edit/doc.ts';
import { diaryItems, type Item, uniteItems } from './diary.ts';
import { three } from './line.ts';
import { byText, byTime, interleave } from './order.ts';
import { type LineMerge, type Merged, marked, mergeUpper } from './upper.ts';

export { type LineMerge, marked } from './upper.ts';

export type MergeSide = 'ours' | 'theirs';
export interface MergedJob extends Merged {
  /** The sides that are no readable job: no YAML, or no keys. Absent where both are. */
  unreadable?: MergeSide[];
}

/**
 * All entries of both diaries, each once: by id, each side's order kept, interleaved by time. The same result
 * whichever side is ours, and with itself a diary is as it was. An entry changed on one side since `base` is the
 * changed one; changed on both, or with no base to tell, it is there twice. Nothing is dropped.
 */
export function unite(
  base: readonly Entry[] | null,
  ours: readonly Entry[],
  theirs: readonly Entry[],
): Entry[] {
  const was = new Map(base?.map((e) => [e.id, printEntry(e)]));
  const texts = (side: readonly Entry[]) => new Map(side.map((e) => [e.id, printEntry(e)]));
  const [mine, yours] = [texts(ours), texts(theirs)];
  const keyed = (side: readonly Entry[], here: Map<string, string>, there: Map<string, string>) => {
    const seen = new Map<string, number>();
    return side.flatMap((entry) => {
      const text = printEntry(entry);
      const other = there.get(entry.id);
      const old = was.get(entry.id);
      const changed = other !== undefined && other !== here.get(entry.id);
      // The other side has changed this entry, and its text is the one taken.
      if (changed && text === old) return [];
      const key = `${entry.id} ${changed || text !== here.get(entry.id) ? text : ''}`;
      const n = (seen.get(key) ?? 0) + 1;
      seen.set(key, n);
      return [{ entry, text, key: `${key} ${n}` }];
    });
  };
  return interleave(
    keyed(ours, mine, yours),
    keyed(theirs, yours, mine),
    (k) => k.key,
    (a, b) =>
      byTime(a.entry.at, b.entry.at) || byText(a.entry.id, b.entry.id) || byText(a.text, b.text),
  ).map((k) => k.entry);
}

/** A job file taken apart: the person's part, with the line `diary:` but not what is below it, and the diary. */
interface Parts {
  upper: string;
  block: string;
  /** Column of the dashes. */
  column: number;
}

/**
 * Merges as git's merge drivers do. The diaries unite by id, every line's bytes as they are; the person's part is
 * merged key by key with its comments; where that cannot be, and for texts of several lines, by `lines`. What
 * truly differs is left between git's markers, and `clean` is false.
 *
 * A side that is no readable job (blank, broken) never takes the place of one: it is left between markers, unless
 * it was so in `base` already. No entry of either side is dropped.
 *
 * Line endings, byte order mark and last newline are those of ours, unless only theirs changed them.
 */
export function mergeJob(
  base: string,
  ours: string,
  theirs: string,
  lines: LineMerge = marked,
): MergedJob {
  if (ours === theirs) return { text: ours, clean: true };
  const unreadable: MergeSide[] = [];
  if (!isJob(ours)) unreadable.push('ours');
  if (!isJob(theirs)) unreadable.push('theirs');
  const [only] = unreadable;
  if (only !== undefined) {
    const [odd, other] = only === 'ours' ? [ours, theirs] : [theirs, ours];
    const mended = unreadable.length === 1 && odd === base && keepsEntries(other, [odd]);
    if (mended) return { text: other, clean: true };
    return { ...openByLines(base, ours, theirs, lines), unreadable };
  }
  const habits = [base, ours, theirs].map(habitOf);
  const [b, o, t] = [base, ours, theirs].map((text) => partsOf(plainLines(text)));
  if (!b || !o || !t) {
    const merged = lines(base, ours, theirs);
    return keepsEntries(merged.text, [ours, theirs]) ? merged : marked(base, ours, theirs);
  }
  const merged = withDiaries(mergeUppers(b.upper, o.upper, t.upper, lines), b, o, t);
  const habit = { ...habits[1] } as Habit;
  for (const key of ['crlf', 'bom', 'open'] as const) {
    if (habits[0]?.[key] === habit[key] && habits[2]) habit[key] = habits[2][key];
  }
  return { text: dressed(merged.text, habit), clean: merged.clean };
}

/** Readable, with keys. */
function isJob(text: string): boolean {
  const lines = plainLines(text);
  const split = splitDiary(lines);
  const doc = openDoc(typeof split === 'number' ? lines : split.upper);
  return !isFail(doc) && isMap(doc.contents);
}

/**
 * Where a side is no job: its diary by entry and the rest by lines, if that leaves markers above the diary; all of
 * it by lines, if that leaves markers and drops no entry; else both sides whole, between markers.
 */
function openByLines(base: string, ours: string, theirs: string, lines: LineMerge): Merged {
  const [b, o, t] = [base, ours, theirs].map((text) => partsOf(plainLines(text)));
  if (b && o && t) {
    const upper = lines(b.upper, o.upper, t.upper);
    const heads = upper.text.match(/^["']?diary["']?[ \t]*:/gm) ?? [];
    if (!upper.clean && heads.length === 1) return withDiaries(upper, b, o, t);
  }
  const merged = lines(base, ours, theirs);
  const kept = !merged.clean && keepsEntries(merged.text, [ours, theirs]);
  return kept ? merged : marked(base, ours, theirs);
}

/** Each id that stands in one of the sides stands in the text too. */
function keepsEntries(text: string, sides: readonly string[]): boolean {
  const there = idsIn(text);
  return sides.every((side) => [...idsIn(side)].every((id) => there.has(id)));
}

/** Ids as they are written, of a text that may not read. */
const idsIn = (text: string): Set<string> =>
  new Set([...text.matchAll(/\bid["']?\s*:\s*["']?([\w-]+)/g)].map(([, id = '']) => id));

function withDiaries(upper: Merged, b: Parts, o: Parts, t: Parts): Merged {
  const column = o.block === '' ? t.column : o.column;
  const [base, ours, theirs] = [b, o, t].map((p) => diaryItems(inColumn(p, column), column));
  const items = uniteItems(base ?? [], ours ?? [], theirs ?? []);
  return { text: withDiary(upper.text, items), clean: upper.clean };
}

function mergeUppers(base: string, ours: string, theirs: string, lines: LineMerge): Merged {
  const taken = three(base, ours, theirs);
  if (taken !== null) return { text: taken, clean: true };
  return mergeUpper(base, ours, theirs, lines) ?? lines(base, ours, theirs);
}

function withDiary(upper: string, items: readonly Item[]): string {
  const block = items.map((i) => i.text + i.below.join('')).join('');
  if (block === '') return upper;
  const place = findDiary(upper);
  if (!place && opened(upper) !== upper) return withDiary(opened(upper), items);
  if (place) return upper.slice(0, place.from) + block + upper.slice(place.from);
  return `${upper}diary:\n${block}`;
}

/** Without the empty list behind the key: entries can stand below it. */
function opened(text: string): string {
  return text.replace(/^(["']?diary["']?[ \t]*:)[ \t]*\[[ \t]*\]/m, '$1');
}

/** Null when there is a diary that is no block of lines. */
function partsOf(text: string): Parts | null {
  const place = findDiary(text);
  if (place) {
    return {
      upper: text.slice(0, place.from) + text.slice(place.at),
      block: text.slice(place.from, place.at),
      column: place.indent.length,
    };
  }
  const doc = openDoc(text);
  const root: unknown = isFail(doc) ? null : doc.contents;
  const other = isMap(root) ? pairOf(root, 'diary') !== null : text.trim() !== '';
  return other && opened(text) === text ? null : { upper: text, block: '', column: 2 };
}

/** The diary's lines with their dashes in another column. */
function inColumn(p: Parts, column: number): string {
  const by = column - p.column;
  if (by === 0) return p.block;
  return p.block.replace(/^ *(?=[^ \n])/gm, (lead) =>
    lead.length < p.column ? lead : ' '.repeat(lead.length + by),
  );
}

interface Habit {
  crlf: boolean;
  bom: boolean;
  /** No line feed at the end. */
  open: boolean;
}

function habitOf(text: string): Habit {
  return {
    crlf: /\r\n/.test(text) && !/(^|[^\r])\n/.test(text),
    bom: text.startsWith('\uFEFF'),
    open: text !== '' && !text.endsWith('\n'),
  };
}

function plainLines(text: string): string {
  const { crlf, open } = habitOf(text);
  const lines = crlf ? text.replaceAll('\r\n', '\n') : text;
  return lines.replace(/^\uFEFF/, '') + (open ? '\n' : '');
}

function dressed(text: string, habit: Habit): string {
  const closed = habit.open ? text.replace(/\n$/, '') : text;
  return (habit.bom ? '\uFEFF' : '') + (habit.crlf ? closed.replaceAll('\n', '\r\n') : closed);
}

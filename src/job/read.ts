/**
 * A job file's text as what it says and what happened, and everything that is wrong with it. Every file with
 * readable YAML opens: a fault is told, and what it does not touch is there.
 */

import type { Entry, Fault, Job, UnreadLine, Upper } from '../model/types.ts';
import { holeNames } from '../piece/order.ts';
import { type PlacedEntry, readEntries } from './diary/entries.ts';
import { type Split, splitDiary } from './diary/lines.ts';
import { collector, type Found } from './faults/faults.ts';
import { toFaults } from './faults/place.ts';
import { fold, foldMore } from './fold/fold.ts';
import { losesALine } from './fold/unread.ts';
import { checkDiary, type Names } from './form/diary-check.ts';
import { checkCross } from './form/read-cross.ts';
import { readUpper } from './form/read-upper.ts';
import { checkDiaryLast, checkVersion } from './form/read-version.ts';
import { checkEntry, checkShape } from './form/shape-check.ts';
import { MOST_WITH_DIARY, openYaml } from './yaml/doc.ts';
import type { Spot } from './yaml/spot.ts';

export interface Read {
  /** Shared between reads of the same text: not to be changed. */
  upper: Upper;
  /** In the order of the file; what is no entry is a fault and not among them. */
  entries: Entry[];
  /** By line, then column. */
  faults: Fault[];
  /** No YAML, no text, two versions at once: nothing can be said about the job. */
  unreadable: boolean;
  /** The diary stands last, in block style, and what ends it is a line as the program writes it: one line more is one more entry. */
  plain: boolean;
}

/** Reads the text of a job file; never throws. `file` is only named in the faults. */
export function readJob(text: string, file: string): Read {
  return readWithTree(text, file).read;
}

/**
 * Where the job of a file stands, and which of its lines do not count. `before`: the job of the same file one mark ago, if
 * it is known: that is gone on from where it can be.
 */
export function jobOf(
  { upper, entries, faults }: Pick<Read, 'upper' | 'entries' | 'faults'>,
  before: Job | null = null,
): Job {
  const unread = linesLost({ faults });
  return (before && foldMore(before, upper, entries, unread)) ?? fold(upper, entries, unread);
}

/** The lines that do not count. */
export function linesLost({ faults }: Pick<Read, 'faults'>): UnreadLine[] {
  return faults.filter(losesALine).map(({ line, code }) => ({ line, code }));
}

/** A file that was read, with what its faults stand in. */
export interface ReadTree {
  read: Read;
  /** The tree of the person's part, with places in the text; null where there is none. */
  root: Spot | null;
  /** Without a byte order mark. */
  text: string;
}

export function readWithTree(marked: string, file: string): ReadTree {
  const text = withoutMark(marked);
  const split = text.length > MOST_WITH_DIARY ? 0 : splitDiary(text);
  if (typeof split === 'number') return { ...readSlowly(text, file, split), text };
  return { ...(readFast(text, file, split) ?? readSlowly(text, file)), text };
}

/** A byte order mark is no part of the first line. */
function withoutMark(text: string): string {
  return text.startsWith('\uFEFF') ? text.slice(1) : text;
}

/** The same without the fast way for diaries as the program writes them. */
export function readWhole(marked: string, file: string): Read {
  return readSlowly(withoutMark(marked), file).read;
}

/** `changed`: the first line of the diary that is not as the program writes it. */
function readSlowly(text: string, file: string, changed = 0): Omit<ReadTree, 'text'> {
  const part = readPart(text, changed);
  const { entries, odd } = readEntries(part.broken ? null : part.root);
  const { found, report } = collector();
  if (part.known) for (const { index, spot } of odd) checkEntry(index, spot, report);
  const read = answer(text, file, { ...part, found: [...part.found, ...found] }, entries);
  return { read: { ...read, plain: endsWithLine(text, part) }, root: part.root };
}

/** Whether the last item of the diary is a line of its own, and the last of the file, however those before it are written. */
function endsWithLine(text: string, { root, broken }: Part): boolean {
  if (broken || root?.is !== 'map' || root.flow) return false;
  const pair = [...root.pairs.values()].at(-1);
  const item = pair?.key === 'diary' && pair.value.is === 'list' ? pair.value.items.at(-1) : null;
  if (item?.is !== 'map' || !item.flow) return false;
  const start = text.lastIndexOf('\n', item.at) + 1;
  return /^ *- $/.test(text.slice(start, item.at)) && /^[^\r\n]*\}\n$/.test(text.slice(item.at));
}

/** The person's part of a file, or all of it. */
interface Part {
  root: Spot | null;
  upper: Upper;
  holes: Names['holes'];
  found: Found[];
  broken: boolean;
  /** Readable, and of a form this program knows. */
  known: boolean;
}

function readPart(text: string, odd = 0): Part {
  const { root, found, broken } = openYaml(text, odd);
  const more = collector();
  const placed = readUpper({ source: text, report: more.report }, root);
  const { upper } = placed;
  if (broken) return { root, upper, holes: new Map(), found, broken, known: false };
  const version = collector();
  const known = checkVersion(root, version.report);
  if (known) {
    checkDiaryLast(root, more.report);
    checkShape(root, more.report);
    checkCross(placed, root, more.report);
  }
  // What a newer form says may be right there.
  const told = known ? more.found : [];
  return {
    root,
    upper,
    holes: holesOf(upper),
    found: [...found, ...version.found, ...told],
    broken,
    known,
  };
}

function holesOf(upper: Upper): Names['holes'] {
  const told = [...upper.pieces.values()].filter((spec) => spec.row !== null);
  return new Map(told.map((spec) => [spec.key, new Set(holeNames(spec))]));
}

let last: { text: string; part: Part } | null = null;

function readFast(text: string, file: string, split: Split): Omit<ReadTree, 'text'> | null {
  if (last?.text !== split.upper) last = { text: split.upper, part: readPart(split.upper) };
  const { part } = last;
  if (!endsWithDiary(part, split.key)) return null;
  const read = answer(text, file, part, split.entries);
  return { read: { ...read, plain: true }, root: part.root };
}

/** Whether the line that looked like the key is the last key of the file, with nothing behind it yet. */
function endsWithDiary({ root, broken }: Part, key: number): boolean {
  if (broken || root?.is !== 'map' || root.flow) return false;
  const pair = [...root.pairs.values()].at(-1);
  return pair?.key === 'diary' && pair.at === key && pair.value.is === 'nothing';
}

function answer(text: string, file: string, part: Part, placed: readonly PlacedEntry[]): Read {
  const { upper, holes, broken, known } = part;
  const { found, report } = collector();
  const entries = placed.map((p) => p.entry);
  if (known) checkDiary(placed, entries, { upper, holes }, report);
  return {
    upper,
    entries,
    faults: toFaults([...part.found, ...found], text, file),
    unreadable: broken,
    plain: false,
  };
}

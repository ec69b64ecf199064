/** What the diary names and the job has not. History is never refused: these are warnings. */

import { didYouMean, near } from '../../model/nearword.ts';
import { remembering } from '../../model/remembering.ts';
import type { Correctable, Entry, Upper } from '../../model/types.ts';
import { verbRow } from '../../model/verbs/verbs.ts';
import { readFound, readItem, rowWords } from '../../piece/row.ts';
import { type PlacedEntry, placeInDiary } from '../diary/entries.ts';
import { livingEntries, livingIds } from '../diary/living.ts';
import type { Data, Report } from '../faults/faults.ts';
import { truthFault } from '../truth/figures.ts';
import { firstNames } from './read-cross.ts';

/** The names an entry can use. */
export interface Names {
  upper: Upper;
  /** Holes of the pieces whose holes the file tells. */
  holes: ReadonlyMap<string, ReadonlySet<string>>;
}

/** `entries`: those of `placed`. */
export function checkDiary(
  placed: readonly PlacedEntry[],
  entries: readonly Entry[],
  names: Names,
  report: Report,
): void {
  const living = livingEntries(entries);
  // Where all count no id stands twice, and nothing was taken back.
  if (living.length < entries.length) checkIds(placed, report);
  // What was taken back may have gone out of the file with it.
  const counts = living.length < entries.length ? livingIds(entries) : null;
  for (const one of placed) {
    const { entry } = one;
    if (counts?.has(entry.id) ?? true) checkNames(one, names, report);
    const word = oddWord(entry);
    if (word !== null) report('entry-row', placeInDiary(one, entry.verb), { value: word });
    checkTruth(one, report);
  }
  checkUndos(placed, report);
}

function checkIds(placed: readonly PlacedEntry[], report: Report): void {
  const ids = new Map<string, PlacedEntry>();
  for (const one of placed) {
    const { id } = one.entry;
    const first = ids.get(id);
    if (first) report('same-id', placeInDiary(one, 'id'), { value: id }, { line: first.at });
    else ids.set(id, one);
  }
}

function checkUndos(placed: readonly PlacedEntry[], report: Report): void {
  if (!placed.some(({ entry }) => entry.verb === 'undo')) return;
  const ids = new Set(placed.map(({ entry }) => entry.id));
  for (const one of placed) {
    const { verb, value } = one.entry;
    if (verb !== 'undo' || ids.has(value)) continue;
    report('undo-unknown', placeInDiary(one, 'undo'), () => {
      return { value, near: didYouMean(near(value, ids)) };
    });
  }
}

/** Somebody who writes a line by hand may call true what a mark would have been refused for. */
function checkTruth(one: PlacedEntry, report: Report): void {
  const { verb, value, says = '' } = one.entry;
  if (verb !== 'corrected' || truthFault(value as Correctable, says) === null) return;
  const at = placeInDiary(one, one.entry.says === undefined ? verb : 'says');
  report('entry-truth', at, { value: says.trim() === '' ? 'nothing' : says, what: value });
}

function checkNames(one: PlacedEntry, { upper, holes }: Names, report: Report): void {
  const { piece, hole, task, buy, check, suspect } = one.entry;
  if (piece !== undefined && !upper.pieces.has(piece)) {
    report('entry-piece', placeInDiary(one, 'piece'), unknown(piece, upper.pieces));
  }
  if (task !== undefined && !upper.tasks.has(task)) {
    report('entry-task', placeInDiary(one, 'task'), unknown(task, upper.tasks));
  }
  if (buy !== undefined && !upper.buys.has(buy)) {
    report('entry-buy', placeInDiary(one, 'buy'), unknown(buy, upper.buys));
  }
  if (check !== undefined && !upper.checks.has(check)) {
    report('entry-check', placeInDiary(one, 'check'), unknown(check, upper.checks));
  }
  if (suspect !== undefined && !upper.suspects.has(suspect)) {
    report('entry-suspect', placeInDiary(one, 'suspect'), unknown(suspect, upper.suspects));
  }
  const known = piece === undefined ? undefined : holes.get(piece);
  const odd = known && hole?.find((name) => !known.has(name));
  if (known && odd !== undefined) {
    report('entry-hole', placeInDiary(one, 'hole'), () => {
      return { value: odd, piece: piece ?? '', known: firstNames([...known]) };
    });
  }
}

function unknown(value: string, all: ReadonlyMap<string, unknown>): () => Data {
  return () => {
    const names = [...all.keys()];
    return { value, near: didYouMean(near(value, names)), known: firstNames(names) };
  };
}

/** The first word of a row that cannot be read. */
function oddWord({ verb, value }: Entry): string | null {
  const { value: is } = verbRow(verb);
  return is === 'found' || is === 'bolts' || is === 'bolt' ? ODD[is](value) : null;
}

/** A diary says the same of its bolts again and again. */
const ODD = {
  found: remembering((value) => findOddWord(value, 'found')),
  bolts: remembering((value) => findOddWord(value, 'bolts')),
  bolt: remembering((value) => findOddWord(value, 'bolt')),
};

const MEASURED = /^\d+(?:\.\d+)? mm$/;

function findOddWord(value: string, is: 'found' | 'bolts' | 'bolt'): string | null {
  // Measured with a rule, and no kind is that long.
  if (is !== 'found' && MEASURED.test(value)) return null;
  const read = is === 'found' ? readFound : readItem;
  const words = rowWords(value).map((w) => w.word);
  if (words.length === 0) return value;
  return words.find((word) => read(word) === null) ?? null;
}

/**
 * A row: the kinds of a piece's holes in their order, `S S S M+clip S ! L`.
 *
 * A word is a kind, with what lies under its head behind plus signs, from the head down. In what somebody
 * found, `!` stands for a bolt that is still in and `-` for a hole that was found empty; `?` is a bolt of
 * which nobody has said yet what kind it is.
 */
import { pattern } from '../model/pattern.ts';
import { remembering } from '../model/remembering.ts';
import type { RowItem } from '../model/types.ts';

export const STILL_IN = '!';
export const FOUND_EMPTY = '-';
export const UNKNOWN = '?';

/** Words that somebody types for these signs. */
const SIGNS: Readonly<Record<string, string>> = {
  in: STILL_IN,
  stuck: STILL_IN,
  rounded: STILL_IN,
  _: STILL_IN,
  empty: FOUND_EMPTY,
};

/** The sign that a word of a row stands for, where it is one of those; else the word itself. */
export function signOf(word: string): string {
  const small = word.toLowerCase();
  return Object.hasOwn(SIGNS, small) ? (SIGNS[small] ?? word) : word;
}

/** A kind's letter: a letter, then letters or digits. */
const KIND = /^[A-Za-z][A-Za-z0-9]{0,7}$/;
/** What lies under a head: a word, or words joined by hyphens. */
const UNDER = pattern(() => /^[\p{L}0-9][\p{L}0-9.-]*$/u);

export interface RowWord {
  word: string;
  /** Where the word starts in the text, in UTF-16 units from 0. */
  at: number;
}

/** The words of a row and where each starts. */
export function rowWords(text: string): RowWord[] {
  return [...text.matchAll(/\S+/g)].map((m) => ({ word: m[0], at: m.index }));
}

/** A word of a row as an item; null when it is not one (`!` and `-` are not). */
export const readItem = remembering(itemIn);

function itemIn(word: string): RowItem | null {
  if (word === UNKNOWN) return { kind: UNKNOWN, with: [] };
  const [kind = '', ...under] = word.split('+');
  if (!KIND.test(kind) || !under.every((u) => UNDER.test(u))) return null;
  return { kind, with: under };
}

/** What a word of a row found can be; null when it is none of these. */
export function readFound(word: string): RowItem | typeof STILL_IN | typeof FOUND_EMPTY | null {
  if (word === STILL_IN || word === FOUND_EMPTY) return word;
  return readItem(word);
}

/** An item as a word: `M+clip`. */
export function printItem(item: RowItem): string {
  return item.with.length === 0 ? item.kind : [item.kind, ...item.with].join('+');
}

/** A row as text, for the file. */
export function printRow(row: readonly RowItem[]): string {
  return row.map(printItem).join(' ');
}

/** The same kind with the same things under its head. */
export function sameItem(a: RowItem | null, b: RowItem | null): boolean {
  if (a === b || a === null || b === null) return a === b;
  return (
    a.kind === b.kind &&
    a.with.length === b.with.length &&
    a.with.every((under, i) => under === b.with[i])
  );
}

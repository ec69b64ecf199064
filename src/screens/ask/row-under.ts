/** What lay under the head, asked for each word of a row that ends in a plus: `m+`. */
import type { PieceNow, Wish } from '../../model/types.ts';
import { STILL_IN } from '../../piece/row.ts';
import type { Asks } from '../base/asks.ts';
import { at } from '../base/moves.ts';
import type { State } from '../base/state.ts';

/**
 * The row as it is noted: behind its last word what was not out before is still in. One word alone stands for all
 * holes.
 */
export function rowWish(piece: PieceNow, words: readonly string[]): Wish {
  const wish = { do: 'out', piece: piece.spec.key } as const;
  const rest = words.length === 1 ? [] : piece.holes.slice(words.length);
  const inside = rest.filter((h) => h.state !== 'out');
  const row = [...words, ...inside.map(() => STILL_IN)].join(' ');
  // Of those that nothing is said about now, what was noted before stands.
  if (inside.length === rest.length) return { ...wish, row };
  const about = [...piece.holes.slice(0, words.length), ...inside];
  return { ...wish, holes: about.map((h) => h.name), row };
}

/** Index of the first word that waits for an answer; null when none does. */
export function nextAsked(words: readonly string[]): number | null {
  const index = words.findIndex((w) => w.endsWith('+'));
  return index < 0 ? null : index;
}

/** The answer in its word; an empty answer takes the plus away. */
export function takeUnder(words: readonly string[], index: number, answer: string): string[] {
  const unders = answer
    .split(/[+,]/)
    .map((u) => u.trim().replace(/\s+/g, '-'))
    .filter((u) => u !== '');
  return words.map((w, i) => (i === index ? [w.replace(/\++$/, ''), ...unders].join('+') : w));
}

/** What the file says lies there: the likely answer, already written. */
export function claimUnder(piece: PieceNow, index: number): string {
  return (piece.holes[index]?.belongs?.with ?? []).join(' + ').replace(/-/g, ' ');
}

/** `4, M`. */
export function askedAt(state: State, asks: Extract<Asks, { ask: 'under' }>): string {
  const view = state.view.screen === 'field' ? state.view.under : state.view;
  const hole = at({ ...state, view })?.piece.holes[asks.at]?.name ?? `${asks.at + 1}`;
  return `${hole}, ${(asks.words[asks.at] ?? '').replace(/\++$/, '')}`;
}

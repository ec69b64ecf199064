/**
 * What is in the hand, as it is typed key by key: `m`, `m+clip`, `.35`. The letters are those of the job's
 * kinds, small or large; a dot opens a length; a plus what lies under the head.
 */
import { readLength } from '../../bolt/length.ts';
import type { Hand, Job, Kind, RowItem } from '../../model/types.ts';
import { readItem } from '../../piece/row.ts';
import type { Press } from '../kit/press.ts';

export type HandRead =
  | { is: 'none' }
  | { is: 'kind'; item: RowItem; kind: Kind | null; unders: boolean }
  | { is: 'length'; mm: number }
  /** Not yet a kind or a length: `.`, or `m` where there are M1 and M2. */
  | { is: 'part' };

/** Letters of kinds in this job: declared, or standing in a row or a find. */
export function lettersOf(job: Job): string[] {
  const letters = new Set(job.upper.kinds.keys());
  for (const piece of job.pieces.values()) {
    for (const hole of piece.holes) {
      for (const item of [hole.belongs, hole.found]) if (item) letters.add(item.kind);
    }
  }
  letters.delete('?');
  return [...letters];
}

/** The letter that is meant: as typed, else in the other case. */
export function letterMeant(typed: string, letters: readonly string[]): string | null {
  if (letters.includes(typed)) return typed;
  return letters.find((l) => l.toLowerCase() === typed.toLowerCase()) ?? null;
}

/** `letters`: those of the job, where they are known already. */
export function readHand(
  hand: string,
  job: Job,
  letters: readonly string[] = lettersOf(job),
): HandRead {
  if (hand === '') return { is: 'none' };
  if (hand.startsWith('.')) {
    const mm = readLength(hand.slice(1));
    return mm !== null && mm > 0 ? { is: 'length', mm } : { is: 'part' };
  }
  const [typed = '', ...unders] = hand.split('+');
  const letter = letterMeant(typed, letters);
  if (letter === null) return { is: 'part' };
  const item = readItem([letter, ...unders.filter((u) => u !== '')].join('+'));
  if (!item) return { is: 'part' };
  return { is: 'kind', item, kind: job.upper.kinds.get(letter) ?? null, unders: unders.length > 0 };
}

/** For a wish; null while nothing is said yet. What lies under the head counts only when it was said. */
export function handWish(hand: string, job: Job): Hand | null {
  const read = readHand(hand, job);
  if (read.is === 'length') return { length: read.mm };
  if (read.is !== 'kind') return null;
  return read.unders ? { kind: read.item.kind, with: read.item.with } : { kind: read.item.kind };
}

const LENGTH_SIGN = /^[0-9.,/-]$/;
const UNDER_SIGN = /^[\p{L}0-9.+-]$/u;

/** The hand after this press; null when the press is not about what is in the hand. */
export function pressHand(
  hand: string,
  pressed: Press,
  job: Job,
  letters: readonly string[] = lettersOf(job),
): string | null {
  // The same key, without Shift.
  const press = pressed === '=' ? '+' : pressed;
  if (hand.startsWith('.') && LENGTH_SIGN.test(press)) return hand + press;
  if (hand.includes('+') && UNDER_SIGN.test(press)) return hand + press;
  if (press === '.') return '.';
  if (press === '+') return readHand(hand, job, letters).is === 'kind' ? `${hand}+` : null;
  const begins = (text: string) =>
    letters.some((l) => l.toLowerCase().startsWith(text.toLowerCase()));
  if (/^[A-Za-z0-9]$/.test(press) && hand !== '' && begins(hand + press)) return hand + press;
  return /^[A-Za-z]$/.test(press) && begins(press) ? press : null;
}

/** One press less in the hand. */
export function lessHand(hand: string): string {
  return hand.length > 1 && /^\.|\+/.test(hand) ? hand.slice(0, -1) : '';
}

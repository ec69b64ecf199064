/**
 * What is in the hand, as it is typed key by key: `m`, `m+clip`, `.35`. The letters are those of the job's
 * kinds, small or large; a dot opens a length; a plus what lies under the head.
 */
import { readLength } from '../../bolt/read/length.ts';
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
  // `sealing washer` is one thing.
  const said = unders.map((u) => u.trim().replace(/\s+/g, '-')).filter((u) => u !== '');
  const item = readItem([letter, ...said].join('+'));
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

const LENGTH_SIGN = /^[.,/-]$/;
/** One sign of a text, not a key with a name. */
const SIGN = /^(?:\P{C}|\p{L}\p{M}+)$/u;

/**
 * The hand after this press; null when the press is not about what is in the hand. `open`: what lies under the head is
 * being typed. Until Enter every sign belongs to that, blanks too: a word is no row of keys.
 */
export function pressHand(
  hand: string,
  pressed: Press,
  job: Job,
  letters: readonly string[] = lettersOf(job),
  open = hand.includes('+'),
): string | null {
  if (open) {
    const sign = pressed === 'space' ? ' ' : SIGN.test(pressed) ? pressed : null;
    return sign === null ? null : hand + sign;
  }
  // The same key, without Shift.
  const press = pressed === '=' ? '+' : pressed;
  if (hand.startsWith('.') && LENGTH_SIGN.test(press)) return hand + press;
  if (hand.startsWith('.') && /^\d$/.test(press)) return longer(hand, press, job);
  if (press === '.') return '.';
  if (press === '+') return readHand(hand, job, letters).is === 'kind' ? `${hand}+` : null;
  const begins = (text: string) =>
    letters.some((l) => l.toLowerCase().startsWith(text.toLowerCase()));
  if (/^[A-Za-z0-9]$/.test(press) && hand !== '' && begins(hand + press)) return hand + press;
  return /^[A-Za-z]$/.test(press) && begins(press) ? press : null;
}

/** Digits of a length that nobody has noted yet; one more, and it begins with a hundred. */
const DIGITS = 2;

/**
 * A length with this digit more; null where the digit is a hole's: behind a length that a kind of this job has, unless a
 * longer one begins so, and behind two digits that no kind has.
 */
function longer(hand: string, digit: string, job: Job): string | null {
  const typed = hand.slice(1);
  if (/[^\d]/.test(typed)) return hand + digit;
  const known = [...job.upper.kinds.values()].flatMap(({ length }) =>
    length === null ? [] : `${length}`,
  );
  if (known.some((l) => l.startsWith(typed + digit))) return hand + digit;
  if (known.includes(typed)) return null;
  const most = typed.startsWith('1') ? DIGITS + 1 : DIGITS;
  return typed.length < most ? hand + digit : null;
}

/** One press less in the hand. */
export function lessHand(hand: string): string {
  return hand.length > 1 && /^\.|\+/.test(hand) ? hand.slice(0, -1) : '';
}

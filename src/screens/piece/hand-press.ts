/** What is in the hand after one more press of a key, or one less. */

import { pattern } from '../../model/pattern.ts';
import type { Job } from '../../model/types.ts';
import { type HandRead, lettersOf, typedHand } from '../../plan/typed/hand.ts';
import type { Press } from '../kit/press.ts';

const LENGTH_SIGN = /^[.,/"-]$/;
const INCHES = /^\..*"$/;
/** One sign of a text, not a key with a name. */
const SIGN = pattern(() => /^(?:\P{C}|\p{L}\p{M}+)$/u);

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
  // Behind the sign of inches nothing of a length comes.
  if (INCHES.test(hand) && (LENGTH_SIGN.test(press) || /^\d$/.test(press))) {
    return press === '.' ? '.' : null;
  }
  if (hand.startsWith('.') && LENGTH_SIGN.test(press)) return hand + press;
  if (hand.startsWith('.') && /^\d$/.test(press)) return longer(hand, press, job);
  if (press === '.') return '.';
  if (press === '+') return isNamed(typedHand(hand, job, letters)) ? `${hand}+` : null;
  const begins = (text: string) =>
    letters.some((l) => l.toLowerCase().startsWith(text.toLowerCase()));
  if (/^[A-Za-z0-9]$/.test(press) && hand !== '' && begins(hand + press)) return hand + press;
  return /^[A-Za-z]$/.test(press) && begins(press) ? press : null;
}

/** What lies under the head can be said of it: of a kind, and of a length that nobody has noted yet. */
const isNamed = ({ is }: HandRead): boolean => is === 'kind' || is === 'length';

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
  // No hole's number begins with a nought: `.200` is an axle.
  const most = typed.startsWith('1') || digit === '0' ? DIGITS + 1 : DIGITS;
  return typed.length < most ? hand + digit : null;
}

/** One press less in the hand. */
export function lessHand(hand: string): string {
  return hand.length > 1 && /^\.|\+/.test(hand) ? hand.slice(0, -1) : '';
}

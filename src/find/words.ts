/** Words as they are searched: without case and accents, by beginnings, and parts of numbers. */

/** Letters and digits of a text, word by word: `BK-500-2103` is bk, 500 and 2103. */
export function tokensOf(text: string): string[] {
  return plainText(text).match(/[\p{L}\p{N}]+/gu) ?? [];
}

function plainText(text: string): string {
  if (/^[\x00-\x7f]*$/.test(text)) return text.toLowerCase();
  // Folded twice: some capitals become letters with accents of their own.
  return text.normalize('NFKD').toLowerCase().normalize('NFKD').replace(/\p{M}/gu, '');
}

const DIGIT = /\p{N}/u;
/** Characters. What is longer is no number of a part, and has too many parts. */
const LONGEST = 40;

/** A number, of which any part may be asked for. */
export function isNumber(token: string): boolean {
  return token.length <= LONGEST && DIGIT.test(token);
}

/** One word that is asked for. */
export interface Asked {
  /** Its tokens, at least one. */
  tokens: readonly string[];
  /** A year, a month or a day: it asks for the day of a line too. */
  day: string | null;
}

const DAY = /^[12]\d{3}(?:-\d\d(?:-\d\d)?)?$/;

/** The words of a question; what holds neither letter nor digit asks for nothing. */
export function askedOf(words: readonly string[]): Asked[] {
  return words
    .flatMap((word) => word.split(/\s+/))
    .map((word) => ({ tokens: tokensOf(word), day: DAY.test(word) ? word : null }))
    .filter(({ tokens }) => tokens.length > 0);
}

/**
 * How well a word is in a text: 2 whole, 1 as the beginning of a word or as part of a number, 0 not. A token with
 * a digit in it may also begin in its middle: `500-2103` is in `BK4500-2103`.
 */
export function heldBy(asked: Asked, tokens: readonly string[]): 0 | 1 | 2 {
  let best: 0 | 1 | 2 = 0;
  for (let i = 0; i + asked.tokens.length <= tokens.length; i++) {
    const how = heldAt(asked.tokens, tokens, i);
    if (how === 2) return 2;
    if (how > best) best = how;
  }
  return best;
}

function heldAt(asked: readonly string[], tokens: readonly string[], at: number): 0 | 1 | 2 {
  let whole = true;
  for (let i = 0; i < asked.length; i++) {
    const want = asked[i] ?? '';
    const has = tokens[at + i] ?? '';
    if (has === want) continue;
    whole = false;
    const inside = i === 0 && isNumber(has);
    const last = i === asked.length - 1;
    const fits = last
      ? has.startsWith(want) || (inside && has.includes(want))
      : inside && has.endsWith(want);
    if (!fits) return 0;
  }
  return whole ? 2 : 1;
}

/**
 * Words as they are searched: without case and accents, by beginnings, and parts of numbers. What is written without
 * blanks between its words (Chinese, Japanese, Korean, Thai, …) is taken sign by sign, and so are pictures.
 */
import { pattern } from '../model/pattern.ts';

const DENSE = [
  'scx=Han',
  'scx=Hira',
  'scx=Kana',
  'sc=Hang',
  'sc=Thai',
  'sc=Lao',
  'sc=Khmr',
  'sc=Mymr',
];
const SIGN = String.raw`(?![\x00-\x7f])(?:[[${DENSE.map((script) => `\\p{${script}}`).join('')}]&&[\p{L}\p{N}]]\p{M}*|\p{So}|\p{Sc}|\p{Extended_Pictographic})`;
const TOKEN = pattern(() => String.raw`${SIGN}|(?:(?!${SIGN})[\p{L}\p{N}\p{M}])+`, 'gv');

/** Letters and digits of a text, word by word: `BK-500-2103` is bk, 500 and 2103. */
export function tokensOf(text: string): string[] {
  if (/^[\x00-\x7f]*$/.test(text)) return text.toLowerCase().match(/[a-z0-9]+/g) ?? [];
  return folded(text).match(TOKEN.made) ?? [];
}

/** Letters that are no other letter with an accent, as one types them without: after Unicode CLDR, Latin-ASCII. */
const TYPED: Readonly<Record<string, string>> = {
  æ: 'ae',
  œ: 'oe',
  ø: 'o',
  đ: 'd',
  ð: 'd',
  ħ: 'h',
  ł: 'l',
  ŧ: 't',
  þ: 'th',
  ı: 'i',
  // At the end of a word.
  ς: 'σ',
  // Of sizes: M6×25.
  '×': 'x',
};
const OTHERS = pattern(() => `[${Object.keys(TYPED).join('')}]`, 'g');

/**
 * Without case (the full case folding of The Unicode Standard: in capitals and back, so that `ß` is `ss`), without
 * accents. Marks that make another letter stay: of kana, of the scripts of India.
 */
function folded(text: string): string {
  const small = marksOff(text).toLowerCase().toUpperCase().toLowerCase();
  const typed = small.replace(OTHERS.made, (letter) => TYPED[letter] ?? letter);
  // Again: some capitals become letters with accents of their own.
  return marksOff(typed).normalize('NFC');
}

const ACCENT = pattern(
  () => /(?![\u3099\u309a])[\p{M}&&[\p{sc=Zinh}\p{sc=Grek}\p{sc=Cyrl}\p{sc=Hebr}\p{sc=Arab}]]/gv,
);

function marksOff(text: string): string {
  return text.normalize('NFKD').replace(ACCENT.made, '');
}

const DIGIT = pattern(() => /\p{N}/u);
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

/** The words of a question. */
export function askedOf(words: readonly string[]): Asked[] {
  return apart(words)
    .map((word) => ({ tokens: tokensOf(word), day: DAY.test(word) ? word : null }))
    .filter(({ tokens }) => tokens.length > 0);
}

/** Those of a question that ask for nothing, since they are no words: `-`, `…`. */
export function notAsked(words: readonly string[]): string[] {
  return apart(words).filter((word) => word !== '' && tokensOf(word).length === 0);
}

const apart = (words: readonly string[]) => words.flatMap((word) => word.split(/\s+/));

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

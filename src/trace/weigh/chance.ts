/** Chances in a person's words: `1 in 6`, `1 time in 6`, `2 out of 10`, `1/6`, `50 %`, `rarely`. */

import { readNumber } from '../../bolt/read/numbers.ts';
import { pattern } from '../../model/pattern.ts';

export interface Chance {
  /** 0 to 1. */
  p: number;
  /** Said by a word or with `about`: no closer than to its neighbour on the scale of the words. */
  rough: boolean;
}

/** As chances, in the proportion that the words have among suspects, 4 : 2 : 1. Common usage, no source. */
const WORDS: ReadonlyMap<string, number> = new Map([
  ['often', 1 / 2],
  ['now and then', 1 / 4],
  ['rarely', 1 / 8],
]);

const COUNTS: ReadonlyMap<string, number> = new Map([
  ['once', 1],
  ['twice', 2],
  ['one', 1],
  ['two', 2],
  ['three', 3],
  ['four', 4],
  ['five', 5],
  ['six', 6],
  ['seven', 7],
  ['eight', 8],
  ['nine', 9],
  ['ten', 10],
]);
const COUNTED_WORD = [...COUNTS.keys()].join('|');

const ABOUT = /^(?:about|around|roughly|perhaps|maybe|some|~|≈)\s*/i;
const NUMBER = String.raw`\d+(?:[.,]\d+)?`;
const OF = pattern(
  () =>
    String.raw`^(${NUMBER}|${COUNTED_WORD})(?:\s+times?)?\s+(?:in|out of|of)\s+(${NUMBER}|${COUNTED_WORD})(?:\s+times)?$`,
  'i',
);
const OVER = pattern(() => String.raw`^(${NUMBER})\s*/\s*(${NUMBER})$`);
const PER_CENT = pattern(() => String.raw`^(${NUMBER})\s*(?:%|per\s?cent)$`, 'i');

/** Null where it is not read to its last character, or is none: `1 in 4 or 5`, `7 in 6`, `1`. */
export function readChance(text: string): Chance | null {
  const said = text.trim().replace(/\s+/g, ' ');
  const bare = said.replace(ABOUT, '');
  const word = WORDS.get(bare.toLowerCase());
  if (word !== undefined) return { p: word, rough: true };
  const p = shareOf(bare);
  return p === null || !(p >= 0 && p <= 1) ? null : { p, rough: bare !== said };
}

function shareOf(text: string): number | null {
  // Half and half: fifty of the hundred on each side.
  if (/^50\s*[/:-]\s*50$/.test(text)) return 1 / 2;
  const [, count = '', all = ''] = OF.exec(text) ?? OVER.exec(text) ?? [];
  if (count !== '') return over(count, all);
  const [, percent] = PER_CENT.exec(text) ?? [];
  if (percent !== undefined) return over(percent, '100');
  // A bare figure is a share only below one: `1` may be one time, one per cent or always.
  return /^0?[.,]\d+$/.test(text) ? readNumber(text) : null;
}

function over(count: string, all: string): number | null {
  const [n, of] = [count, all].map((text) => COUNTS.get(text.toLowerCase()) ?? readNumber(text));
  if (n == null || of == null) return null;
  return of === 0 ? null : n / of;
}

/** Up to here, and from its contrary on, one of so many says it. */
const SELDOM = 1 / 4;
const MOSTLY = 9 / 10;
/** People count by tens; smaller numbers say it where they are this near to the chance, or to its contrary. */
const COUNTED = 10;
const NEAR = 0.05;

/** `1 in 9`, `3 in 5`. Null beyond always and for never: there is no such chance to say. */
export function sayChance(p: number): string | null {
  if (!(p > 0 && p <= 1)) return null;
  if (p <= SELDOM) return `1 in ${Math.round(1 / p)}`;
  if (p > MOSTLY) {
    const of = Math.round(1 / (1 - p));
    return Number.isFinite(of) && of <= 100 ? `${of - 1} in ${of}` : 'nearly always';
  }
  let [best, least] = ['', Number.POSITIVE_INFINITY];
  for (let of = 2; of <= COUNTED; of += 1) {
    const n = Math.round(p * of);
    const off = Math.abs(n / of - p);
    if (off < least) [best, least] = [`${n} in ${of}`, off];
    if (off <= NEAR * Math.min(p, 1 - p)) break;
  }
  return best;
}

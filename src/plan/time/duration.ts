/** How long something takes, out of a text: `24 h, sealant cures`, `2 days`, `1 h 30 min`. */
import { pattern } from '../../model/pattern.ts';
import type { TextSaid } from '../../model/types.ts';

export interface Duration {
  /** Of a range the longer end, because nothing is cured too long. */
  seconds: number;
  /** Of a range the shorter end, for what has to be done within it; else the same. */
  least: number;
  /** The text without it: `sealant cures`. */
  rest: string;
}

const UNITS: readonly [RegExp, number][] = [
  [/^(?:st|h|or)/i, 3600],
  [/^s/i, 1],
  [/^m/i, 60],
  [/^[dtjg]/i, 86_400],
  [/^w/i, 604_800],
];
const GLYPHS: ReadonlyMap<string, number> = new Map([
  ['½', 1 / 2],
  ['¼', 1 / 4],
  ['¾', 3 / 4],
  ['⅓', 1 / 3],
  ['⅔', 2 / 3],
]);
const WORDS: ReadonlyMap<string, number> = new Map([
  ...['', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'].map(
    (word, n): [string, number] => [word, n],
  ),
  ...Object.entries({ twelve: 12, fifteen: 15, twenty: 20, thirty: 30, forty: 40 }),
  ...Object.entries({ 'twenty-four': 24, 'forty-five': 45, 'forty-eight': 48, 'seventy-two': 72 }),
  ...Object.entries({ fifty: 50, sixty: 60, ninety: 90 }),
]);
/** Longest first, so that `twenty-four` is no twenty. */
const NAMED = [...WORDS.keys()]
  .slice(1)
  .sort((a, b) => b.length - a.length)
  .map((word) =>
    word.endsWith('ty') && !word.includes('-')
      ? `${word}(?![\\s-]+(?:one|two|three|four|five|six|seven|eight|nine)\\b)`
      : word,
  )
  .join('|');
/** The parts of an hour or a day. */
const PARTS = String.raw`\d{1,2}[/⁄][2348](?!\d)`;
/** `24/48 h`: from one to the other. */
const FROM_TO = /(?<![\d.,/])(\d{1,3})\/(?![2348](?!\d))(\d{1,3})(?![\d/])(?=\s*\p{L})/gu;
/** `24`, `1.5`, `1 1/2`, `1/2`, `1½`, `half an`, `two`. */
export const DURATION_NUMBER = String.raw`(?:\d+\s+${PARTS}|${PARTS}|\d*\s?[½¼¾⅓⅔]|\d+(?:[.,]\d+)?|(?:[Hh]alf\s+)?[Aa]n?\b|(?:${NAMED})\b)`;
const FIGURED = /[\d½¼¾⅓⅔]|an?\b/;

/** Whether a figure may be in the text, in words or not: most have none, and whole patterns take long to be made. */
export function mayHaveFigure(text: string): boolean {
  const said = text.toLowerCase();
  return FIGURED.test(said) || [...WORDS.keys()].some((word) => word !== '' && said.includes(word));
}
/** Single letters small only: `2 S` are two bolts. */
const UNIT =
  '(?:[Ss]ec(?:ond)?s?|s|[Mm]in(?:ut(?:e[ns]?|i|os))?s?|[Hh](?:ours?|rs?|eures?|oras?)?|[Dd]ays?|d|[Ww](?:eeks?|ks?)|[Ss]td|[Ss]tunden?|[Tt]age?|[Jj]ours?|[Oo]r[ae]|[Gg]iorni|[Dd]ías?)';
const TO = String.raw`\s*(?:\.{2,3}|–|—|-|\b(?:to|or|bis)\b|à(?=\s))\s*`;
/** A figure or a range of figures, its unit, and no letter behind it: `24-48 h`, `24-hour`. */
const part = (number: string, unit: string) =>
  String.raw`(?:${number}${TO})?${number}[\s-]*${unit}(?![\p{L}\d])`;
const PART = part(DURATION_NUMBER, UNIT);
const SUM = String.raw`${PART}(?:\s*(?:and\s+)?${PART})*`;
const WHOLE = pattern(
  () => String.raw`(?<![\p{L}\d.,/⁄½¼¾⅓⅔]|(?:^|\s|\p{L})[-−–])(${SUM})(?:${TO}(${SUM}))?`,
  'u',
);
const EACH = pattern(() => part(`(${DURATION_NUMBER})`, `(${UNIT})`), 'gu');

/** What a text in the form of `NUMBER` is worth. */
export function figureOfTime(text: string): number {
  const said = text.trim().toLowerCase();
  const half = said.startsWith('half');
  if (half || /^an?$/.test(said)) return half ? 1 / 2 : 1;
  const known = WORDS.get(said);
  if (known !== undefined) return known;
  const glyph = GLYPHS.get(said.at(-1) ?? '');
  if (glyph !== undefined) return Number(said.slice(0, -1)) + glyph;
  const [, whole, over, under] = /^(?:(\d+)\s+)?(\d+)[/⁄](\d+)$/.exec(said) ?? [];
  if (under !== undefined) return Number(whole ?? 0) + Number(over) / Number(under);
  // `1,500` is one and a half to some and fifteen hundred to others.
  return /^[1-9]\d*,\d{3}$/.test(said) ? Number.NaN : Number(said.replace(',', '.'));
}

/** Least and most of what is said part by part: `1 h 30 min`, `5-10 min`. */
function sumOf(text: string): { least: number; most: number } {
  let [least, most] = [0, 0];
  for (const [, from, figure = '', unit = ''] of text.matchAll(EACH.made)) {
    const worth = UNITS.find(([pattern]) => pattern.test(unit))?.[1] ?? 0;
    const [a, b] = [figureOfTime(from ?? figure), figureOfTime(figure)];
    // `1-1/2 h` is one and a half.
    const ends = from !== undefined && b < 1 && a >= 1 ? [a + b, a + b] : [a, b];
    least += Math.min(...ends) * worth;
    most += Math.max(...ends) * worth;
  }
  return { least, most };
}

const ADDED: Readonly<Record<string, string>> = {
  'a half': '.5',
  'a quarter': '.25',
  'three quarters': '.75',
};
const SHARES: Readonly<Record<string, string>> = {
  'a quarter': '1/4',
  quarter: '1/4',
  'three quarters': '3/4',
  half: '1/2',
};
/** `1:30 h`. */
const CLOCK = pattern(() => /(?<![\d.,:/])(\d{1,3}):([0-5]\d)\s*(?:h|hrs?|hours?)(?![\p{L}\d])/giu);
/** `1h30`, `1 h 15m`: what stands behind hours without another unit is minutes. */
const AND_MINUTES = pattern(
  () =>
    /(?<![\d.,:/])(\d{1,3})\s*(?:h|hrs?|hours?)\s*([0-5]\d)(?:\s*(?:m|['′])(?![\p{L}\d]))?(?![\p{L}\d:/%°]|[.,]\d|\s*(?:\p{L}|[-–]\s*\d|°))/giu,
);
const AND_A_HALF =
  /\b(an?|\d+|one|two|three|four|five|six) (hours?|days?|weeks?) and (a half|a quarter|three quarters)\b/gi;
const SHARE_OF = /\b(a quarter|quarter|three[- ]quarters|half) of an? (hour|day|week|minute)\b/gi;

/** `an hour and a half` is `1.5 hours`, `a quarter of an hour` is `1/4 hour`. */
function inFigures(text: string): string {
  return text
    .replace(FROM_TO, (said, a: string, b: string) => (Number(a) < Number(b) ? `${a}-${b}` : said))
    .replace(CLOCK.made, '$1 h $2 min')
    .replace(AND_MINUTES.made, '$1 h $2 min')
    .replace(AND_A_HALF, (_, n: string, unit: string, more: string) => {
      return `${figureOfTime(n)}${ADDED[more.toLowerCase()]} ${unit}`;
    })
    .replace(SHARE_OF, (_, share: string, unit: string) => {
      return `${SHARES[share.toLowerCase().replace('-', ' ')]} ${unit}`;
    });
}

/**
 * The first duration in the text, several parts added up, with both ends of a range. Null when there is none
 * (`until the paint is dry`).
 */
export function readDuration(said: string): Duration | null {
  if (!mayHaveFigure(said) && !/half|quarter/i.test(said)) return null;
  const text = /\b(?:half|quarters?)\b|\d\s*(?:h\w*\s*\d|[:/]\d)/i.test(said)
    ? inFigures(said)
    : said;
  const found = mayHaveFigure(text) ? WHOLE.exec(text) : null;
  if (!found) return null;
  const ends = [found[1], found[2]].flatMap((part) => (part === undefined ? [] : [sumOf(part)]));
  const seconds = Math.max(...ends.map((e) => e.most));
  const least = Math.min(...ends.map((e) => e.least));
  if (!Number.isFinite(seconds)) return null;
  const before = text.slice(0, found.index).replace(/[\s,;:]+$/, '');
  // Of `twenty two hours` only two were read.
  if (MORE_IN_WORDS.test(before)) return null;
  const behind = text.slice(found.index + found[0].length).replace(/^[\s,;:]+/, '');
  return { seconds, least, rest: [before, behind.trimEnd()].filter((t) => t !== '').join(' ') };
}

const MORE_IN_WORDS =
  /\b(?:twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|hundred|dozen)[\s-]*$/i;

/** As long as it is, to the second: what has to be done within it is not rounded up. */
export function sayWithin(seconds: number): string {
  const over = Math.round(seconds) % 60;
  if (seconds < 60 || seconds >= 600 || over === 0) return sayDuration(seconds);
  return `${Math.floor(seconds / 60)} min ${over} s`;
}

/** `45 s`, `20 min`, `1 h 30 min`, `24 h`, `2 days`, to the minute from one minute up. */
export function sayDuration(seconds: number): string {
  if (seconds < 60) return `${Math.round(seconds)} s`;
  const minutes = Math.round(seconds / 60);
  const hours = Math.floor(minutes / 60);
  if (hours >= 48 && minutes % 1440 === 0) return `${minutes / 1440} days`;
  const parts = [hours > 0 ? `${hours} h` : '', minutes % 60 > 0 ? `${minutes % 60} min` : ''];
  return parts.filter((p) => p !== '').join(' ');
}

/** Seconds that something takes, as the file says it; null where it does not, or in no figure. */
export function secondsSaid(takes: TextSaid | null): number | null {
  return takes === null ? null : (readDuration(takes.text)?.seconds ?? null);
}

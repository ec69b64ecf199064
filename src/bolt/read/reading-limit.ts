/** What a limit says: `0.8..1.2 ohm`, `8 ± 0.5 bar`, `at least 3`, `min 7, max 9 bar`, `up to 1/16 in`. */
import { type Pattern, pattern } from '../../model/pattern.ts';
import { plainFractions, readNumber, tidy } from './numbers.ts';
import { turnedInto, unitNamed } from './reading-units.ts';

interface Side {
  value: number;
  /** The value itself keeps to it. */
  with: boolean;
}

export interface Limit {
  /** As printed. */
  text: string;
  from: Side | null;
  to: Side | null;
  /** As printed; null where the limit has none. */
  unit: string | null;
}

export const LIMIT_NUMBER = String.raw`[-−]?(?:\d+[- ]\d+\/\d+|\d+\/\d+|\d+(?:[.,]\d+)?|[.,]\d+)`;
export const LIMIT_UNIT = String.raw`[^\d\s,;.()±+][^\d,;()±+]*?(?:²|³|\/min|-1|2|3)?`;
/** Said of when, where or how it is measured: part of no figure. */
const WHEN = pattern(
  () =>
    String.raw`\s*[,;]?\s*\(?(?:\b|@ ?)(?:cold|warm|hot|each|all round|new|(?:un)?laden|(?:per|each|either|both|on (?:each|either|both)) sides?|` +
    String.raw`(?:at ?)?(?<=[@(] ?|at )\d[\d.,]* ?(?:°? ?[CF]|rpm)|at (?:idle|rest|its tightest|cranking speed)|while cranking|` +
    `on (?:the|its) (?:side|centre|center) ?stand|BTDC|ATDC|(?:before|after) TDC|out(?: from (?:lightly )?seated)?|(?:at|in) the (?:middle|centre|center|tightest (?:point|spot))(?: of the [a-z ]+)?|` +
    String.raw`engine (?:cold|hot|off)|between (?:all|any) cylinders?)\b\)?\s*$`,
  'i',
);

/** One blank between words, fractions in figures: `2½` is `2 1/2`. */
export function plainFigures(text: string): string {
  return plainFractions(text).trim().replace(/\s+/g, ' ');
}

const PARTS: ReadonlySet<string | undefined> = new Set(
  ['2', '3', '4', '8', '16', '32', '64'].concat(['10', '100', '1000']),
);

export function figureOf(text: string): number | null {
  const minus = /^[-−]/.test(text);
  // `16/2` may be two readings side by side, and so may `20/30`: a fraction has the parts of an inch, or is a tenth.
  const [, over, under] = /^(\d+)\/(\d+)$/.exec(text) ?? [];
  if (over !== undefined && (Number(over) >= Number(under) || !PARTS.has(under))) return null;
  const value = readNumber(minus ? text.slice(1) : text);
  return value === null ? null : minus ? -value : value;
}

/** `1.200 rpm` is twelve hundred to some, and nobody counts thousandths of a turn. */
export function figureIn(text: string, unit: string | null): number | null {
  const turns =
    unit !== null && /\.\d{3}$/.test(text) && unitNamed(unit)?.of === 'speed of turning';
  return turns ? null : figureOf(text);
}

type Sides = Pick<Limit, 'from' | 'to'>;
const between = (a: number, b: number): Sides => {
  return { from: { value: a, with: true }, to: { value: b, with: true } };
};
const atLeast = (value: number): Sides => ({ from: { value, with: true }, to: null });
const above = (value: number): Sides => ({ from: { value, with: false }, to: null });
const atMost = (value: number): Sides => ({ from: null, to: { value, with: true } });
const below = (value: number): Sides => ({ from: null, to: { value, with: false } });

/** `A`, `B` and `C` are figures, `U` and `V` the units behind the first and the last of them. */
const form = (source: string): Pattern =>
  pattern(() => {
    const spread = source
      .replace(/[ABC]/g, (name) => `(?<${name}>${LIMIT_NUMBER})`)
      .replace(/ ?([UV])/g, (_, name: string) => String.raw`\s*(?<${name}>${LIMIT_UNIT})?`);
    return `^${spread}$`;
  }, 'i');
const TO = String.raw`\s*(?:\.{2,3}|…|–|—|-|~|\b(?:to|bis)\b|à(?=\s))\s*`;
const PLUS_MINUS = String.raw`\s*(?:±|\+ ?\/? ?[-−])\s*`;

/** `A`, in `U` or `V`, give or take a share of itself: without a unit the share may be one of points. */
const SHARE = form(String.raw`A U\s*(?:±|\+ ?\/? ?[-−])\s*B ?(?:%|per ?cent) V`);

const FORMS: readonly [Pattern, (a: number, b: number, c: number) => Sides][] = [
  [form(`A U${PLUS_MINUS}B V`), (a, b) => between(tidy(a - b), tidy(a + b))],
  [form(`${PLUS_MINUS}A V`), (a) => between(-a, a)],
  [
    form(String.raw`A U\s*\+ ?B ?[/,]? ?[-−] ?C V`),
    (a, b, c) => between(tidy(a - Math.abs(c)), tidy(a + b)),
  ],
  [form(`A U${TO}B V`), between],
  [form('from A U to B V'), between],
  [form('between A U and B V'), between],
  [
    form(
      String.raw`(?:at ?least|mindestens|au moins|al menos|almeno|≧|min(?:imum|\.)?|not (?:under|below|less than)|no less than|≥|>=)\s*A V`,
    ),
    atLeast,
  ],
  [form(String.raw`(?:over|above|more than|greater than|>)\s*A V`), above],
  [
    form(
      String.raw`(?:at ?most|höchstens|au plus|al massimo|≦|=<|max(?:imum|imal|\.)?|not (?:over|above|more than)|no more than|up to|≤|<=)\s*A V`,
    ),
    atMost,
  ],
  [form(String.raw`(?:under|below|less than|<)\s*A V`), below],
  [
    form(String.raw`A V,? (?:or (?:more|over|above|higher|better)|min(?:imum|\.)?|at least)`),
    atLeast,
  ],
  [
    form(String.raw`A V,? (?:or (?:less|under|below|lower|smaller)|max(?:imum|\.)?|at most)`),
    atMost,
  ],
];

/** A least figure to some, a time to others. */
const MINUTES = /^[\d.,]+ ?min\.?$/i;

/** How manuals say that a meter is to show no end: a beep, or none, is for an ear. */
const INFINITE = /^(?:infinit(?:e|y)(?: resistance| ohms?)?|∞(?: ?(?:ohms?|Ω))?|OL|open circuit)$/i;

/**
 * `0.8..1.2 ohm`, `8 ± 0.5 bar`, `at least 3`, `< 5 mm`. Null where it is no such figure (`no oil at the edge`), or
 * where a part of it was not read.
 */
export function readLimit(text: string): Limit | null {
  const said = plainFigures(text).replace(WHEN.made, '');
  if (MINUTES.test(said)) return null;
  if (INFINITE.test(said)) {
    return { from: { value: Infinity, with: true }, to: null, unit: 'ohm', text: text.trim() };
  }
  const read = oneLimit(said) ?? twoSides(said) ?? twice(said);
  const runs = read && (!read.from || !read.to || read.from.value <= read.to.value);
  return runs ? { ...read, text: text.trim() } : null;
}

/** `200 ohm ± 10 %`. */
function shareOf(said: string): Limit | null {
  const found = SHARE.exec(said)?.groups;
  const unit = found?.U?.trim() || found?.V?.trim();
  const [a, b] = [found?.A, found?.B].map((f) => (f === undefined ? null : figureOf(f)));
  if (!unit || unitNamed(unit) === null || a == null || b == null) return null;
  const by = Math.abs((a * b) / 100);
  return { ...between(tidy(a - by), tidy(a + by)), unit, text: said };
}

function oneLimit(said: string): Limit | null {
  const share = shareOf(said);
  if (share || SHARE.test(said)) return share;
  for (const [source, make] of FORMS) {
    const found = source.exec(said)?.groups;
    if (!found) continue;
    const unit = found.V?.trim() || found.U?.trim() || null;
    if (unit !== null && unitNamed(unit) === null) return null;
    const [a, b, c] = [found.A, found.B, found.C].map((f) =>
      f === undefined ? 0 : figureIn(f, unit),
    );
    const first = a == null ? null : turnedInto(a, found.U?.trim() || null, unit);
    // Degrees of a span are no degrees of a thermometer: a span is said in the unit of its middle.
    const spans = found.B !== undefined && /±|\+/.test(said) && !!found.U && found.U !== unit;
    if (first === null || b == null || c == null || spans) return null;
    return { ...make(first, b, c), unit, text: said };
  }
  return null;
}

/** `min 7, max 9 bar`, `7 bar min and 9 bar max`: two halves, one for each side. */
function twoSides(said: string): Limit | null {
  const halves = said.split(/\s*[,;]\s+|\s+and\s+/i);
  const [one, other] = halves.map(oneLimit);
  if (halves.length !== 2 || !one || !other) return null;
  const [low, high] = one.from === null ? [other, one] : [one, other];
  if (low.from === null || low.to !== null || high.to === null || high.from !== null) return null;
  const unit = high.unit ?? low.unit;
  const value = turnedInto(low.from.value, low.unit, unit);
  return value === null ? null : { from: { ...low.from, value }, to: high.to, unit, text: said };
}

/** The same in another unit beside it agrees to so much of itself: both are rounded. */
const ROUNDED = 0.04;

const BESIDE = /^(.+?)\s*(?:\/ (.+)|= ?(.+))$/;
/** Held only against what ends in one: a text of brackets that never close would be gone through for each of them. */
const IN_BRACKETS = /^(.+?)\s*(?:\((.+)\)|\/ (.+)|= ?(.+))$/;

/** `20..30 mm (0.8..1.2 in)`: one limit in two units, which must agree. */
function twice(said: string): Limit | null {
  const form = said.endsWith(')') ? IN_BRACKETS : BESIDE;
  const found = form.exec(said);
  const [first, second] = [found?.[1], found?.[2] ?? found?.[3] ?? found?.[4]].map((part) =>
    part === undefined ? null : oneLimit(part.trim()),
  );
  if (!first?.unit || !second?.unit) return null;
  const agree = (a: Side | null, b: Side | null): boolean => {
    if (a === null || b === null) return a === b;
    const turned = turnedInto(b.value, second.unit, first.unit);
    return turned !== null && Math.abs(turned - a.value) <= ROUNDED * Math.abs(a.value);
  };
  return agree(first.from, second.from) && agree(first.to, second.to) ? first : null;
}

const FIGURE = pattern(() => `^(${LIMIT_NUMBER})\\s*(${LIMIT_UNIT})?$`, 'i');

/** `25 mm`: one figure, of which nobody says whether more or less will do. Null where it is none. */
export function readFigure(text: string): PrintedFigure | null {
  const said = plainFigures(text).replace(WHEN.made, '');
  const found = oneFigure(said);
  const [, first = '', more = ''] = (found === null && IN_OTHER_UNITS.exec(said)) || [];
  const read = found ?? (first === '' ? null : oneFigure(first));
  const others =
    more === '' ? [] : more.split(/[;/]|,(?!\d)/).map((part) => oneFigure(part.trim()));
  if (!read) return null;
  const turned = others.map((other) => other && sameIn(read, other));
  if (turned.some((value) => value === null)) return null;
  const all = [read.value, ...turned.filter((value) => value !== null)];
  return { ...read, least: Math.min(...all), most: Math.max(...all) };
}

/** `2.25 bar (33 psi)`. */
const IN_OTHER_UNITS = /^([^()]+?)\s*\(([^()]+)\)$/;

function oneFigure(said: string): Measured | null {
  const [, figure, unit] = FIGURE.exec(said) ?? [];
  const value = figure === undefined ? null : figureIn(figure, unit?.trim() ?? null);
  const known = unit === undefined || unitNamed(unit) !== null;
  return value === null || !known ? null : { value, unit: unit?.trim() ?? null };
}

/** The other figure in the unit of the first; null where it is not the same. */
function sameIn({ value, unit }: Measured, other: Measured): number | null {
  if (unit === null || other.unit === null) return null;
  const turned = turnedInto(other.value, other.unit, unit);
  return turned !== null && Math.abs(turned - value) <= ROUNDED * Math.abs(value) ? turned : null;
}

interface Measured {
  value: number;
  unit: string | null;
}

/** One figure, as it is printed; in a second unit beside it the same is rounded otherwise, and so it is said from and to. */
export interface PrintedFigure extends Measured {
  least: number;
  most: number;
}

/** How long something is watched is no limit of a reading: `no oil after 5 min`. */
const WATCHED =
  /\b(?:after|for|in|within|over|during) \d+ ?(?:s|sec|min|h|seconds?|minutes?|hours?)\b/gi;

/** It holds a figure that a limit could be, so that what was not read of it must be told. */
export function looksLikeLimit(text: string): boolean {
  return (
    readLimit(text) !== null ||
    (/[\d½¼¾⅓⅔⅛⅜⅝⅞]/.test(text) &&
      /^\s*(?:[<>≤≥±~]|[-−.,]?[\d½¼¾⅓⅔⅛⅜⅝⅞]|at ?(?:least|most)|min|max|not |no (?:more|less)|over|above|more|under|below|less|up to|(?:between|from|about|approx\.?) ?\d)/i.test(
        text,
      ))
  );
}

/** It holds a figure, wherever: what no reading was held against is told. */
export function hasFigure(text: string): boolean {
  return /[\d½¼¾⅓⅔⅛⅜⅝⅞]/.test(text.replace(WATCHED, ''));
}

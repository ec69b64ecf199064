/**
 * A reading held against its limit: `0.4 ohm` against `0.8..1.2 ohm`. What is no figure, or has a unit that does not
 * turn into the limit's, is not judged, and says so.
 */
import { readNumber } from './numbers.ts';
import { FACTORS, unitOf } from './unit-names.ts';

/** What a unit measures, its worth in one common unit, and where its nought lies. */
interface Unit {
  of: string;
  factor: number;
  nought: number;
}

/** Electrical, pressure, heat and what else a bench measures; SI prefixes and definitions (BIPM, SI brochure). */
const MORE: readonly [spelled: string, of: string, factor: number, nought?: number][] = [
  ['ohms?|Ω|Ω', 'resistance', 1],
  ['m(?:illi)?-?(?:ohms?|Ω|Ω)', 'resistance', 1e-3],
  ['k(?:ilo)?-?(?:ohms?|Ω|Ω)', 'resistance', 1e3],
  ['(?:M|mega)-?(?:ohms?|Ω|Ω)', 'resistance', 1e6],
  ['V|volts?', 'voltage', 1],
  ['mV|millivolts?', 'voltage', 1e-3],
  ['kV|kilovolts?', 'voltage', 1e3],
  ['A|amps?|amperes?', 'current', 1],
  ['mA|milliamps?', 'current', 1e-3],
  ['Ah|amp(?:ere)?[- ]?hours?', 'charge', 1],
  ['mAh', 'charge', 1e-3],
  ['W|watts?', 'power', 1],
  ['kW', 'power', 1e3],
  ['µF|uF', 'capacity', 1e-6],
  ['nF', 'capacity', 1e-9],
  ['Hz|hertz', 'frequency', 1],
  ['rpm|r\\/min|1\\/min|min-1', 'speed of turning', 1],
  ['hPa|mbar', 'stress', 1e-4],
  ['Pa', 'stress', 1e-6],
  ['inHg|in\\.? ?Hg', 'stress', 0.003386389],
  ['mmHg|mm ?Hg', 'stress', 0.000133322387415],
  ['kg\\/cm(?:²|2)', 'stress', 0.0980665],
  ['µm|um|microns?', 'length', 1e-3],
  ['thou|mils?', 'length', 0.0254],
  ['°? ?C|degrees? C(?:elsius)?', 'heat', 1, 273.15],
  ['°? ?F|degrees? F(?:ahrenheit)?', 'heat', 5 / 9, 459.67 * (5 / 9)],
  ['K', 'heat', 1, 0],
  ['ml|cc|cm(?:³|3)', 'volume', 1],
  ['l|litres?|liters?', 'volume', 1000],
  ['qt|quarts?', 'volume', 946.352946],
  ['g|grams?', 'mass', 1],
  ['kg', 'mass', 1000],
  ['oz', 'mass', 28.349523125],
  ['lbs?', 'mass', 453.59237],
  ['%|per ?cent', 'share', 1],
  ['s|sec(?:onds?)?', 'time', 1],
  ['min(?:utes?)?', 'time', 60],
  ['h|hours?', 'time', 3600],
  ['turns?', 'angle', 360],
];
const TABLE = MORE.map(([spelled, of, factor, nought = 0]) => ({
  // A milliohm and a megohm differ in one letter's height.
  exact: new RegExp(`^(?:${spelled})$`),
  loose: new RegExp(`^(?:${spelled})$`, 'i'),
  unit: { of, factor, nought },
}));

function unitNamed(text: string): Unit | null {
  const said = text.trim();
  const found = TABLE.find((u) => u.exact.test(said)) ?? TABLE.find((u) => u.loose.test(said));
  if (found) return found.unit;
  const known = FACTORS.get(unitOf(said) ?? '');
  return known ? { ...known, nought: 0 } : null;
}

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

const NUMBER = String.raw`[-−]?(?:\d+[- ]\d+\/\d+|\d+\/\d+|\d+(?:[.,]\d+)?|[.,]\d+)`;
const UNIT = String.raw`[^\d\s,;()][^\d,;()]*?(?:²|³|\/min|-1|2|3)?`;
const TO = String.raw`\s*(?:\.{2,3}|…|–|—|-|\bto\b)\s*`;
/** Said of when, where or how it is measured: part of no figure. */
const WHEN =
  /\s*[,;]?\s*\(?\b(?:cold|warm|hot|each|all round|per side|either side|at (?:idle|rest|\d+ ?(?:°?C|rpm))|engine (?:cold|hot|off)|new|between (?:all|any) cylinders?)\b\)?\s*$/i;

function figureOf(text: string): number | null {
  const minus = /^[-−]/.test(text);
  const value = readNumber(minus ? text.slice(1) : text);
  return value === null ? null : minus ? -value : value;
}

const FORMS: readonly [RegExp, (a: number, b: number) => Pick<Limit, 'from' | 'to'>][] = [
  [
    new RegExp(`^(${NUMBER})\\s*(?:±|\\+/-)\\s*(${NUMBER})\\s*(${UNIT})?$`, 'i'),
    (a, b) => ({ from: { value: a - b, with: true }, to: { value: a + b, with: true } }),
  ],
  [
    new RegExp(`^(${NUMBER})${TO}(${NUMBER})\\s*(${UNIT})?$`, 'i'),
    (a, b) => ({ from: { value: a, with: true }, to: { value: b, with: true } }),
  ],
  [
    new RegExp(
      `^(?:at least|min(?:imum)?\\.?|not (?:under|below|less than)|no less than|≥|>=)\\s*(${NUMBER})()\\s*(${UNIT})?$`,
      'i',
    ),
    (a) => ({ from: { value: a, with: true }, to: null }),
  ],
  [
    new RegExp(`^(?:over|above|more than|>)\\s*(${NUMBER})()\\s*(${UNIT})?$`, 'i'),
    (a) => ({ from: { value: a, with: false }, to: null }),
  ],
  [
    new RegExp(
      `^(?:at most|max(?:imum)?\\.?|not (?:over|above|more than)|no more than|up to|≤|<=)\\s*(${NUMBER})()\\s*(${UNIT})?$`,
      'i',
    ),
    (a) => ({ from: null, to: { value: a, with: true } }),
  ],
  [
    new RegExp(`^(?:under|below|less than|<)\\s*(${NUMBER})()\\s*(${UNIT})?$`, 'i'),
    (a) => ({ from: null, to: { value: a, with: false } }),
  ],
  [
    new RegExp(`^(${NUMBER})()\\s*(${UNIT})?\\s+(?:or more|min(?:imum)?\\.?|at least)$`, 'i'),
    (a) => ({ from: { value: a, with: true }, to: null }),
  ],
  [
    new RegExp(`^(${NUMBER})()\\s*(${UNIT})?\\s+(?:or less|max(?:imum)?\\.?|at most)$`, 'i'),
    (a) => ({ from: null, to: { value: a, with: true } }),
  ],
];

/**
 * `0.8..1.2 ohm`, `8 ± 0.5 bar`, `at least 3`, `< 5 mm`. Null where it is no such figure (`no oil at the edge`), or
 * where a part of it was not read.
 */
export function readLimit(text: string): Limit | null {
  const said = text.trim().replace(/\s+/g, ' ').replace(WHEN, '');
  for (const [form, make] of FORMS) {
    const found = form.exec(said);
    if (!found) continue;
    const a = figureOf(found[1] ?? '');
    const b = found[2] === '' || found[2] === undefined ? 0 : figureOf(found[2]);
    const unit = found[3]?.trim() || null;
    if (a === null || b === null || (unit !== null && unitNamed(unit) === null)) return null;
    const limit = make(a, b);
    const runs = limit.from === null || limit.to === null || limit.from.value <= limit.to.value;
    return runs ? { ...limit, unit, text: text.trim() } : null;
  }
  return null;
}

/** `25 mm`: one figure with a unit that is known. */
const FIGURE = new RegExp(`^(${NUMBER})\\s*(${UNIT})$`, 'i');

/** What stands behind the words of a line: `coil 0.4 ohm`, `chain slack 20..30 mm`. */
export interface Measured {
  before: string;
  /** As written. */
  figure: string;
  /** What its unit measures: `resistance`, `length`; null where it has none. */
  of: string | null;
  /** It has an end that must be kept, not one figure alone. */
  isLimit: boolean;
}

/** Null where no figure ends the line, or nothing stands before it. */
export function measuredIn(line: string): Measured | null {
  const words = line.trim().split(/\s+/);
  for (let i = 1; i < words.length; i += 1) {
    const figure = words.slice(i).join(' ');
    const before = words.slice(0, i).join(' ');
    const limit = readLimit(figure);
    // Two numbers with a hyphen alone may be a part number.
    if (limit && (limit.unit !== null || !/^\d+-\d+$/.test(figure))) {
      const of = limit.unit === null ? null : (unitNamed(limit.unit)?.of ?? null);
      return { before, figure, of, isLimit: true };
    }
    const unit = unitNamed(FIGURE.exec(figure)?.[2] ?? '');
    if (unit) return { before, figure, of: unit.of, isLimit: false };
  }
  return null;
}

/** It holds a figure that a limit could be, so that what was not read of it must be told. */
export function looksLikeLimit(text: string): boolean {
  return (
    /\d/.test(text) &&
    /^\s*(?:[<>≤≥±]|\d|at (?:least|most)|min|max|not |no (?:more|less)|over|under|up to)/i.test(
      text,
    )
  );
}

export type Held =
  | { is: 'within' }
  /** `by`: how far beyond, as one says it. */
  | { is: 'beyond'; say: string }
  /** Neither: why. */
  | { is: 'unread'; say: string };

const READING = new RegExp(
  `(${NUMBER})\\s*(${UNIT})?(?=$|[,;]|\\s+(?:and|left|right|front|rear|each|cold|hot)\\b)`,
  'gi',
);

/** Every figure of the reading must keep to the limit; its unit may be left out, or be one that turns into it. */
export function holdAgainst(reading: string, limit: Limit): Held {
  const said = reading.trim().replace(/\s+/g, ' ');
  const found = [...said.matchAll(READING)];
  const rest = said
    .replace(READING, '')
    .replace(/[,;()\s]|\b(?:and|left|right|front|rear|each|cold|hot|passed|ok|fine)\b/gi, '');
  if (found.length === 0 || rest !== '') {
    return { is: 'unread', say: `“${said}” is no figure to hold against ${limit.text}` };
  }
  for (const [, figure = '', unitText] of found) {
    const value = figureOf(figure);
    const own = unitText?.trim() ?? null;
    const turned = value === null ? null : turnedInto(value, own, limit.unit);
    if (value === null || turned === null) {
      const unit = own === null ? '' : ` ${own}`;
      return {
        is: 'unread',
        say: `${figure}${unit} does not turn into ${limit.unit ?? 'that figure'}`,
      };
    }
    if (!keeps(turned, limit)) {
      const shown =
        own === null && limit.unit !== null
          ? `${figure} ${limit.unit}`
          : `${figure}${own === null ? '' : ` ${own}`}`;
      return { is: 'beyond', say: `${shown} is out of limit: ${limit.text}` };
    }
  }
  return { is: 'within' };
}

function turnedInto(value: number, own: string | null, wanted: string | null): number | null {
  // A limit without a unit is in that of the reading.
  if (own === null || wanted === null) return value;
  const [a, b] = [unitNamed(own), unitNamed(wanted)];
  if (!a || !b || a.of !== b.of) return null;
  return (value * a.factor + a.nought - b.nought) / b.factor;
}

/** What the turning of a unit may add or take. */
const NEARLY = 1e-9;

function keeps(value: number, { from, to }: Limit): boolean {
  const slack = NEARLY * Math.max(1, Math.abs(value));
  const low =
    from === null || (from.with ? value >= from.value - slack : value > from.value + slack);
  const high = to === null || (to.with ? value <= to.value + slack : value < to.value - slack);
  return low && high;
}

function print(value: number): string {
  return String(Number(value.toPrecision(6)));
}

/** `0.8..1.2 ohm`, `at least 3 bar`, `under 5 mm`. */
export function sayLimit({ from, to, unit }: Limit): string {
  const behind = unit === null ? '' : ` ${unit}`;
  if (from && to) return `${print(from.value)}..${print(to.value)}${behind}`;
  if (from) return `${from.with ? 'at least' : 'over'} ${print(from.value)}${behind}`;
  return to ? `${to.with ? 'at most' : 'under'} ${print(to.value)}${behind}` : 'no limit';
}

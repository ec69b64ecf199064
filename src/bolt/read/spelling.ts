/** The front of a bolt's short spelling: thread and length, `M6x1x25`, `1/4-20 x 1-1/2`, `25 mm`. */

import { pattern } from '../../model/pattern.ts';
import { LENGTH_UNIT, readLength } from './length.ts';
import { isFraction, NUMBER, readNumber } from './numbers.ts';
import { isInch, METRIC } from './sizes.ts';

export interface Front {
  /** Normal spelling: `M10x1.25`, `1/4-20`, `10-32 UNF`; null when none is said. */
  thread: string | null;
  /** mm. */
  length: number | null;
  /** As written, with a unit that is not mm. */
  lengthText: string | null;
  /** What follows. */
  rest: string;
}

const BY = String.raw`\s*[x×X*]\s*`;
const DECIMAL = String.raw`\d+(?:[.,]\d+)?|[.,]\d+`;
const LENGTH = String.raw`(${NUMBER})\s*(${LENGTH_UNIT})?`;
const SERIES = '(?:UNC|UNF|UNEF|UNS|UN|BSW|Whitworth|Whit|BSF|BSC|BSB|BSPP?|BSPT|CEI|NPT|NPTF|TPI)';

/** The first figure behind M is a pitch or a length; `1-1/2` is no pitch of 1. */
const METRIC_FRONT = pattern(
  () =>
    String.raw`^M\s?(${DECIMAL})(?:(?:${BY}|-)(${DECIMAL})(?![\d/]|-\d+\/| \d+\/|\s*(?:["″]|in\b)))?(?:${BY}${LENGTH})?(\s*mm\b)?(?!\s*[x×*]\s*[-−\d.,]|[.,]?\d|e[-+]?\d)`,
  'i',
);
/** What most files say, told without the large pattern, which would find the same: `M6x25 flange`. */
const PLAIN_METRIC = /^M(\d+)(?:x(\d+))?(?=$|,(?!\d)| (?!mm\b)[a-w])/;
const INCH_FRONT = pattern(
  () =>
    String.raw`^(?:#|no\.?\s?)?(\d+-\d+\/\d+|\d+\/\d+|\d{1,2}|\d?\.\d+)["″]?(?:\s?-\s?(\d{1,2})(?![\d/]))?\s*(${SERIES})?(?:${BY}${LENGTH}|(?=$|[\s,]))`,
  'i',
);
const PIPE_FRONT = pattern(
  () => String.raw`^(Rc|R|G)\s?(\d+\/\d+)(?:${BY}${LENGTH}|(?=$|[\s,]))`,
  'i',
);
/** A thread that putback does not know, by its ` x length`: `2BA x 1/2`. */
const OTHER_FRONT = pattern(() => String.raw`^([^,]*\d[^,]*?)${BY}${LENGTH}(?=$|[\s,])`, 'i');
/** A length without a thread says so: `x25`, `25 mm long`. A bare `10 mm` could be the size of the hexagon. */
const LENGTH_FRONT = pattern(
  () => String.raw`^(?:[x×]\s*${LENGTH}|${LENGTH}\s+long)(?=$|[\s,])`,
  'i',
);

/** An inch bolt longer than this without a unit was meant in mm, or is a slip: not read. */
const LONGEST_BARE_INCHES = 10;

function lengthSaid(figure: string | undefined, unit: string | undefined, bare: 'mm' | 'in') {
  if (figure === undefined) return { length: null, lengthText: null };
  const inInches = isFraction(figure) || bare === 'in';
  const mm = /^mm$/i.test(unit ?? '');
  const space = /^[a-z]/i.test(unit ?? '') ? ' ' : '';
  const text = unit === undefined || (mm && !inInches) ? figure : `${figure}${space}${unit}`;
  const value = readNumber(figure);
  const absurd = unit === undefined && bare === 'in' && (value ?? 0) > LONGEST_BARE_INCHES;
  return { length: absurd ? null : readLength(`${figure} ${unit ?? ''}`, bare), lengthText: text };
}

function isPitch(d: number, p: number): boolean {
  const known = METRIC.get(d);
  // No bolt is shorter than a quarter of its diameter: such a figure is a pitch out of the usual.
  return known?.includes(p) === true || p <= d / 4;
}

function metric(text: string): Front | null {
  const found = PLAIN_METRIC.exec(text) ?? METRIC_FRONT.exec(text);
  if (!found) return null;
  const [all, dText = '', first, second, unit, mm] = found;
  const d = readNumber(dText);
  if (d === null) return null;
  const rest = text.slice(all.length);
  const name = `M${d}`;
  if (first === undefined) {
    return { thread: name, ...lengthSaid(second, unit, 'mm'), rest };
  }
  const p = readNumber(first);
  if (p !== null && isPitch(d, p)) {
    return { thread: `${name}x${p}`, ...lengthSaid(second, unit, 'mm'), rest };
  }
  if (second === undefined) return { thread: name, ...lengthSaid(first, mm?.trim(), 'mm'), rest };
  // `M12x40x1.25`: the pitch behind the length.
  const behind = unit === undefined ? readNumber(second) : null;
  if (behind === null || !isPitch(d, behind)) {
    return { thread: name, length: null, lengthText: `${first}x${second}`, rest };
  }
  return { thread: `${name}x${behind}`, ...lengthSaid(first, undefined, 'mm'), rest };
}

function inch(text: string): Front | null {
  const found = INCH_FRONT.exec(text);
  if (!found) return null;
  const [all, size = '', tpi, series, figure, unit] = found;
  if (tpi === undefined && series === undefined && !isFraction(size)) return null;
  const left = text.slice(all.length);
  // `1/4" x 1" BSW`: the series behind the length.
  const late = series === undefined ? LATE_SERIES.exec(left) : null;
  const rest = left.slice(late?.[0].length ?? 0);
  if (tpi === undefined && series === undefined && figure === undefined) return null;
  const name = tpi === undefined ? size : `${size}-${tpi}`;
  const named = series ?? late?.[1];
  const tag = /^whit/i.test(named ?? '') ? 'BSW' : named?.toUpperCase();
  const thread = tag === undefined ? name : `${name} ${tag}`;
  return { thread, ...lengthSaid(figure, unit, 'in'), rest };
}

const LATE_SERIES = pattern(() => String.raw`^\s*(${SERIES})\b`, 'i');

/** Pipe threads are named in inches and measured in mm. */
function pipe(text: string): Front | null {
  const found = PIPE_FRONT.exec(text);
  if (!found) return null;
  const [all, series = '', size = '', figure, unit] = found;
  const name = `${series.charAt(0).toUpperCase()}${series.slice(1).toLowerCase()} ${size}`;
  return { thread: name, ...lengthSaid(figure, unit, 'mm'), rest: text.slice(all.length) };
}

/** Characters: no thread has a name that is longer with its length. */
const LONGEST_NAME = 200;

function other(text: string): Front | null {
  if (text.length > LONGEST_NAME && !text.slice(0, LONGEST_NAME).includes(',')) return null;
  const found = OTHER_FRONT.exec(text);
  if (!found?.[1]) return null;
  const [all, thread = '', figure, unit] = found;
  const bare = isInch(thread) ? 'in' : 'mm';
  return { thread: thread.trim(), ...lengthSaid(figure, unit, bare), rest: text.slice(all.length) };
}

/** `2BA`, `2 BA hex`: BA bolts are measured in inches, and named so. */
const BA_FRONT = pattern(
  () => String.raw`^(?:no\.?\s?)?(?:(\d{1,2})\s?BA|BA\s?(\d{1,2}))\b(?:${BY}${LENGTH})?(?=$|[\s,])`,
  'i',
);

function ba(text: string): Front | null {
  const found = BA_FRONT.exec(text);
  if (!found) return null;
  const [all, before, behind, figure, unit] = found;
  const bare = isFraction(figure ?? '') ? 'in' : 'mm';
  return {
    thread: `${before ?? behind}BA`,
    ...lengthSaid(figure, unit, bare),
    rest: text.slice(all.length),
  };
}

function lengthAlone(text: string): Front | null {
  const found = LENGTH_FRONT.exec(text);
  if (!found) return null;
  const [all] = found;
  const [figure, unit] = [found[1] ?? found[3], found[2] ?? found[4]];
  return { thread: null, ...lengthSaid(figure, unit, 'mm'), rest: text.slice(all.length) };
}

/** How closely a thread is made, as drawings and bags have it: `M8x1-6g x 20`, `1/4-20 UNC-2A x 3/4`. */
const MADE_TO = pattern(
  () =>
    String.raw`^(M\s?[\d.,]+(?:\s*[x×]\s*[\d.,]+)?|\d[\d\s/"″-]*UN(?:C|F|EF|S)?)\s*-?\s*((?:[3-9][a-hA-H]){1,2}|[123][AB])(?=$|[\s,x×-])`,
  'i',
);
/** `Hex bolt M6x25`, `ISO 4014 - M6 x 25`, `2 x M6x25`: what stands before the thread. */
const BEFORE = pattern(
  () =>
    String.raw`^(?!M\s?\d|#|\.|\d+\/\d)([^,]{1,40}?)[\s-]+(?=M\s?\d+(?:[.,]\d+)?\s*[x×X*]\s*\d)`,
  'i',
);

const isDigit = (sign: string): boolean => sign >= '0' && sign <= '9';

/** Thread and length at the front of a text; what cannot be read stays null, and `rest` keeps what follows. */
export function readFront(text: string): Front {
  // As most are written: then neither of the two is there.
  const isBare = text.startsWith('M') && isDigit(text.charAt(1));
  const [front, before = ''] = (isBare ? null : BEFORE.exec(text)) ?? [];
  const behind = front === undefined ? text : text.slice(front.length);
  const [made, thread = '', to = ''] = (/\d[a-h]/i.test(behind) && MADE_TO.exec(behind)) || [];
  const plain = made === undefined ? behind : `${thread}${behind.slice(made.length)}`;
  const read = frontOf(plain);
  const rest = [read.rest, to, before].filter((part) => part !== '').join(' ');
  return rest === read.rest ? read : { ...read, rest };
}

function frontOf(text: string): Front {
  const nothing = { thread: null, length: null, lengthText: null, rest: text };
  return (
    metric(text) ??
    ba(text) ??
    inch(text) ??
    pipe(text) ??
    other(text) ??
    lengthAlone(text) ??
    nothing
  );
}

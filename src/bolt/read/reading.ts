/**
 * A reading held against its limit: `0.4 ohm` against `0.8..1.2 ohm`. What is no figure, or has a unit that does not
 * turn into the limit's, is not judged, and says so.
 */
import { pattern } from '../../model/pattern.ts';
import {
  figureIn,
  LIMIT_NUMBER,
  LIMIT_UNIT,
  type Limit,
  plainFigures,
  readFigure,
  readLimit,
} from './reading-limit.ts';
import { ON_METERS, turnedInto, unitNamed } from './reading-units.ts';

/** What stands behind the words of a line: `coil 0.4 ohm`, `chain slack 20..30 mm`. */
interface Measured {
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
    const unit = unitNamed(readFigure(figure)?.unit ?? '');
    if (unit) return { before, figure, of: unit.of, isLimit: false };
  }
  return null;
}

type Held =
  | { is: 'within' }
  /** `by`: how far beyond, as one says it. */
  | { is: 'beyond'; say: string }
  /** Neither: why. `noUnit`: its unit alone is missing. */
  | { is: 'unread'; say: string; noUnit?: true };

/** Said of where and how it was read: part of no figure. */
const WHERE = String.raw`(?:and|left|right|front|rear|each|both|all|on all|cold|warm|hot|[lr](?=\b[^/]|$))\b`;
const READING = pattern(() => `(${LIMIT_NUMBER})\\s*(${LIMIT_UNIT})?(?=$|[,;]|\\s+${WHERE})`, 'gi');
const BESIDE = pattern(() => `[,;()\\s]|\\b(?:${WHERE}|(?:passed|ok|fine)\\b)`, 'gi');

/**
 * Every figure of the reading must keep to the limit; its unit may be left out, stand behind the last of several, or be
 * one that turns into the limit's.
 */
export function holdAgainst(reading: string, limit: Limit): Held {
  const said = plainFigures(reading);
  if (OPEN.test(said)) return holdOpen(said, limit);
  const found = [...said.matchAll(READING.made)].map(([, figure = '', unit]) => {
    return { figure, unit: unit?.trim() || null };
  });
  const rest = said.replace(READING.made, '').replace(BESIDE.made, '');
  if (found.length === 0 || rest !== '') {
    return { is: 'unread', say: `“${said}” is no figure to hold against ${limit.text}` };
  }
  for (const [i, { figure, unit }] of found.entries()) {
    const own = unit ?? found.slice(i).find((f) => f.unit !== null)?.unit ?? null;
    const value = figureIn(figure, own ?? limit.unit);
    if (value === null) {
      return {
        is: 'unread',
        say: `“${figure}” can be read two ways: write it as one figure, without a comma or a stroke`,
      };
    }
    const turned = turnedInto(value, own, limit.unit);
    const shown = `${figure}${own === null ? '' : ` ${own}`}`;
    if (turned === null) {
      return { is: 'unread', say: `${shown} does not turn into ${limit.unit ?? 'that figure'}` };
    }
    if (!keeps(turned, limit)) {
      if (own === null && mayBeOtherUnit(value, limit)) {
        const say = `“${figure}” has no unit, and ${figure} ${limit.unit} would be far off ${limit.text}: write the unit in which it was read`;
        return { is: 'unread', say, noUnit: true };
      }
      const measured = own === null && limit.unit !== null ? `${figure} ${limit.unit}` : shown;
      return { is: 'beyond', say: `${measured} is out of limit: ${limit.text}` };
    }
  }
  return { is: 'within' };
}

/** A text that is itself a reading: a figure and nothing else, whatever it says, or what this limit can judge. */
export function isReading(text: string, limit: Limit | null): boolean {
  if (readFigure(text) !== null) return true;
  return limit !== null && holdAgainst(text, limit).is !== 'unread';
}

/** `14.5 mm`: with the unit of its limit, where it has none of its own. */
export function sayReading(text: string, limit: Limit | null): string {
  const said = text.trim();
  const bare = readFigure(said)?.unit === null && limit !== null && limit.unit !== null;
  return bare ? `${said} ${limit.unit}` : said;
}

/** What a meter shows, or a person says, where no current goes through at all. */
const OPEN =
  /^(?:[0o]\.? ?l\.?|open(?:[ -](?:circuit|line|loop))?|infinit(?:e|y)(?: resistance| ohms?)?|∞(?: ?(?:ohms?|Ω))?|no continuity)$/i;

/** More than any figure of resistance; of nothing else is it a reading. */
function holdOpen(said: string, limit: Limit): Held {
  if (limit.unit === null || unitNamed(limit.unit)?.of !== 'resistance') {
    return { is: 'unread', say: `“${said}” is no figure to hold against ${limit.text}` };
  }
  if (limit.to === null) return { is: 'within' };
  return { is: 'beyond', say: `${said} is out of limit: ${limit.text}` };
}

/** Times the nearer end of its limit: nothing that still runs is so far off, or it was read in another unit. */
const FAR = 100;
/** So far off, and within as another unit that a meter shows. */
const FAR_AND_FITS = 10;

/** A bare figure beyond its limit, of which its unit may be the fault: `5000` against `4..6 kohm`. */
function mayBeOtherUnit(value: number, limit: Limit): boolean {
  const { from, to, unit } = limit;
  const of = unit === null ? undefined : unitNamed(unit)?.of;
  const end = (from !== null && value < from.value ? from : to)?.value;
  // Nought is nought in each of them, and no factor leads to an end of nought or of another sign.
  if (of === undefined || of === 'heat' || !end || !Number.isFinite(end)) return false;
  const off = value / end;
  if (off <= 0) return false;
  const times = Math.max(off, 1 / off);
  if (times >= FAR * (1 - NEARLY)) return true;
  return (
    times >= FAR_AND_FITS * (1 - NEARLY) &&
    from !== null &&
    to !== null &&
    ON_METERS.some((other) => {
      const turned = unitNamed(other)?.of === of ? turnedInto(value, other, unit) : null;
      return turned !== null && keeps(turned, limit);
    })
  );
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

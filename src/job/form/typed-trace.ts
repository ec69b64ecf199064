/**
 * A suspect or a check from one typed line, there and back: `Float needle leaks, often, 30 min, in carburettor` and
 * `Blue spark at the plug: coil, plug, 3 min, behind tank`.
 */

import { measuredIn } from '../../bolt/read/reading.ts';
import { looksLikeLimit, readLimit } from '../../bolt/read/reading-limit.ts';
import { near } from '../../model/nearword.ts';
import { pattern } from '../../model/pattern.ts';
import { oneLine } from '../../model/safe.ts';
import {
  type CheckSpec,
  LIKELY,
  type Likely,
  type Named,
  type SuspectSpec,
  type Upper,
} from '../../model/types.ts';
import { list } from '../../model/words.ts';
import { readLikely } from './read-trace.ts';
import { filled } from './trace-fields.ts';
import { freeKey } from './trace-keys.ts';

type Line = Named | { say: string };
type Names = Pick<Upper, 'suspects' | 'checks' | 'pieces'>;

const MINUTES = 'min(?:ute)?s?';
const TIME = String.raw`\d+(?:[.,]\d+)?\s*(?:${MINUTES}|h(?:our)?s?)(?:\s*\d+\s*${MINUTES})?`;
const TAKES = pattern(() => `^${TIME}$`, 'i');
/** No dot or comma of a figure parts anything. */
const PARTS = /\s*,\s+|\s*;\s*/;

/** Other words for how likely it is, as one types them. */
const LIKE: Readonly<Record<string, Likely>> = {
  likely: 'often',
  'very likely': 'often',
  'most likely': 'often',
  probable: 'often',
  probably: 'often',
  usually: 'often',
  mostly: 'often',
  common: 'often',
  sometimes: 'now and then',
  possible: 'now and then',
  possibly: 'now and then',
  maybe: 'now and then',
  occasionally: 'now and then',
  unlikely: 'rarely',
  'not likely': 'rarely',
  'less likely': 'rarely',
  'very unlikely': 'rarely',
  improbable: 'rarely',
  rare: 'rarely',
  seldom: 'rarely',
  hardly: 'rarely',
};
const LIKELY_WORDS: readonly string[] = [...LIKELY, ...Object.keys(LIKE)];

/** As the file says it; null where the part says nothing of how likely it is. */
function likelyIn(part: string): string | null {
  const meant = LIKE[part.trim().toLowerCase()];
  return meant ?? (readLikely(part) === null ? null : part);
}

/** What stands behind the name and says neither how often, how long, where nor with what belongs to the name. */
export function readSuspectLine(line: string, { suspects, pieces }: Names): Line {
  const parts = oneLine(line).trim().split(PARTS);
  const fields: Record<string, string> = {};
  while (parts.length > 1) {
    const part = parts.at(-1) ?? '';
    const piece = placeIn(part);
    const [, bought = ''] = /^part (.+)$/i.exec(part) ?? [];
    const likely = likelyIn(part);
    if (fields.likely === undefined && likely !== null) fields.likely = likely;
    else if (fields.takes === undefined && TAKES.test(part)) fields.takes = part;
    else if (fields.piece === undefined && pieces.has(piece)) fields.piece = piece;
    else if (fields.part === undefined && bought !== '') fields.part = bought;
    else break;
    parts.pop();
  }
  const odd = oddPart(parts.slice(1), fields, pieces);
  if (odd !== null) return { say: odd };
  const what = parts.join(', ');
  if (HOW_OUT.test(`${what}:`)) return { say: LOOK_LIKE };
  if (what.length > LONGEST) {
    return { say: `That is a long name: say it in fewer than ${LONGEST} letters. ${LIKE_SUSPECT}` };
  }
  const { likely, piece, part, takes } = fields;
  const said = { what, likely, piece, part, takes };
  if (what === '') return { say: `Say what it may be. ${LIKE_SUSPECT}` };
  return { key: freeKey(what, suspects), fields: filled(said) };
}

const LIKE_SUSPECT = 'Like this: Coil open, rarely, 30 min, in carburettor.';
/** Letters of what it may be, or of what is looked at: it stands in rows and sentences. */
const LONGEST = 100;

/**
 * Of what stands behind a comma and was not taken: why it cannot be meant as part of the name. Null where all of it may,
 * as in `Tap, reserve side`.
 */
function oddPart(
  parts: readonly string[],
  fields: Readonly<Record<string, string>>,
  pieces: Names['pieces'],
): string | null {
  const reads = (part: string) => {
    const piece = pieces.has(placeIn(part));
    return { likely: likelyIn(part) !== null, takes: TAKES.test(part), piece };
  };
  for (const part of parts.toReversed()) {
    const is = reads(part);
    const twice = (['likely', 'takes', 'piece'] as const).some((key) => is[key] && fields[key]);
    if (twice) return `${part}: that is said twice.`;
    if (is.likely || is.takes || is.piece) continue;
    if (placeIn(part) !== '') return unknown(placeIn(part), 'piece', pieces);
    if (/^part\b/i.test(part)) return `${part}: say which part, like this: part HL-7 filter.`;
    if (/^[-+~]?[.,]?\d/.test(part)) {
      return `${part} is neither a time nor how likely it is. ${LIKE_SUSPECT}`;
    }
    const likely = near(part, LIKELY_WORDS);
    if (likely !== null) return `${part} was not read. Did you mean ${likely}?`;
  }
  const before = parts.find((part) => Object.values(reads(part)).includes(true));
  return before === undefined ? null : `What stands behind ${before} was not read. ${LIKE_SUSPECT}`;
}

const placeIn = (part: string): string => /^in (.+)$/i.exec(part)?.[1] ?? '';

const INSIDE = pattern(
  () => String.raw`\s(?:${LIKELY_WORDS.join('|')}|${TIME})(?:\s+in\s+\S+)?$`,
  'i',
);

/** A name that ends as what stands behind a comma does: it was taken whole, and that is told. */
export function takenWhole(what: string): string | null {
  const [rest] = INSIDE.exec(what) ?? [];
  if (rest === undefined) return null;
  return `“${rest.trim()}” counts as part of the name: behind a comma it would be read. ${LIKE_SUSPECT}`;
}

/** The same of what is looked at: `Runs on with the cap open bad`. */
export function lookTakenWhole(check: string): string | null {
  const [, word] = /\s(good|bad)$/i.exec(check) ?? [];
  if (word === undefined) return null;
  return `“${word}” counts as part of the name. A look is bad where it shows what stands behind the colon, else good.`;
}

/** Suspects by their names, by the start of what they are, or by their numbers in `order`. */
export function readCheckLine(line: string, names: Names, order: readonly string[] = []): Line {
  const text = oneLine(line).trim();
  const colon = text.lastIndexOf(': ');
  const front = colon < 0 ? text.replace(/:$/, '') : text.slice(0, colon);
  const [, name = '', out = '', more = ''] = HOW_OUT.exec(`${front}:`) ?? [];
  if (/good/i.test(out)) return { say: LOOK_LIKE };
  const [check = '', ...before] = namedLook(out === '' || more !== '' ? front : name);
  const often = check
    .split(PARTS)
    .slice(1)
    .find((part) => LIKELY_WORDS.includes(part.toLowerCase()));
  if (often !== undefined) {
    return { say: `${often}: that is said of what it may be, not of a look. ${LIKE_SUSPECT}` };
  }
  const rest = [...before, colon < 0 ? '' : text.slice(colon + 2).trim()].join(', ');
  if (check === '') return { say: 'Say what is looked at, then what it would show: Spark: 1, 2.' };
  if (check.length > LONGEST) {
    return { say: `That is a long name for a look: say it in fewer than ${LONGEST} letters.` };
  }
  const found = { bad: [] as string[], along: [] as string[], under: [] as string[] };
  const needs: string[] = [];
  let [takes, limit]: (string | undefined)[] = [];
  let into: 'bad' | 'along' = 'bad';
  for (const part of rest.split(PARTS).filter((said) => said !== '')) {
    const [, word = '', behind = ''] = /^(along|behind|when) (.+)$/i.exec(part) ?? [];
    if (word.toLowerCase() === 'behind') {
      if (!names.pieces.has(behind)) return { say: unknown(behind, 'piece', names.pieces) };
      found.under.push(behind);
    } else if (word.toLowerCase() === 'when') needs.push(behind);
    else if (TAKES.test(part)) {
      if (takes !== undefined) return { say: `${takes} and ${part}: the time is said twice.` };
      takes = part;
    } else if (isLimit(part)) {
      if (limit !== undefined) return { say: `${limit} and ${part}: the limit is said twice.` };
      limit = part;
    } else {
      if (word !== '') into = 'along';
      const meant = suspectsMeant(word === '' ? part : behind, names, order, into === 'along');
      if ('say' in meant) return meant;
      found[into].push(...meant.keys);
    }
  }
  if (found.bad.length + found.along.length === 0) {
    return { say: 'Say behind a colon what it would show: Blue spark: coil, plug.' };
  }
  const { bad, along, under } = found;
  const fields = filled({ check, limit, bad, along, takes, under, needs });
  return { key: freeKey(check, names.checks), fields };
}

/** What is looked at, and behind it how that comes out: `Runs on with the cap open, bad: tank vent`. */
const HOW_OUT = pattern(
  () => String.raw`^(.*?)(?:\s*[,;:(]|\s[-–—])\s*(?:if |when )?(good|bad)\)?\s*:\s*(.*)$`,
  'i',
);
const LOOK_LIKE =
  'Bad is how a look comes out that shows the fault, and good clears. Say it so, like this: Blue spark at the plug: coil, plug.';

const isLimit = (part: string): boolean =>
  looksLikeLimit(part) && /\D/.test(part) && readLimit(part) !== null;

/**
 * What is looked at, and the limit and the time that were said before the colon: `Coil primary, 3..5 ohm`, or without
 * the comma.
 */
function namedLook(text: string): string[] {
  const parts = text.trim().split(PARTS);
  const behind: string[] = [];
  for (let part = parts.at(-1) ?? ''; parts.length > 1; part = parts.at(-1) ?? '') {
    if (!TAKES.test(part) && !isLimit(part)) break;
    behind.unshift(part);
    parts.pop();
  }
  const name = parts.join(', ');
  const found = behind.some(isLimit) ? null : measuredIn(name);
  // `Cylinder 1 to 4` says which; with its unit, or written as limits are, it says how much.
  const says = found?.isLimit && (found.of !== null || /\.\.|[…±<>≤≥]/.test(found.figure));
  return says ? [found.before, found.figure, ...behind] : [name, ...behind];
}

function suspectsMeant(
  part: string,
  { suspects, checks }: Names,
  order: readonly string[],
  way: boolean,
): { keys: string[] } | { say: string } {
  if (suspects.has(part) || (way && checks.has(part))) return { keys: [part] };
  if (/^\d+(?: \d+)*$/.test(part)) {
    const numbers = part.split(' ').map(Number);
    const keys = numbers.map((n) => order[n - 1] ?? '');
    const odd = numbers.find((n) => order[n - 1] === undefined);
    return odd === undefined ? { keys } : { say: `There is no number ${odd} on the list.` };
  }
  const starts = (text: string) => text.toLowerCase().startsWith(part.toLowerCase());
  const meant = [...suspects.values()].filter(({ what }) => starts(what));
  const [one, other] = meant;
  if (one && !other) return { keys: [one.key] };
  if (one) return { say: `${part} may be ${list(meant.map(({ what }) => what))}: say more of it.` };
  return { say: unknown(part, 'suspect', suspects) };
}

function unknown(said: string, what: string, names: ReadonlyMap<string, unknown>): string {
  const close = near(said, [...names.keys()]);
  if (close) return `No ${what} ${said}. Did you mean ${close}?`;
  return names.size === 0
    ? `No ${what} ${said}, and none is listed yet.`
    : `No ${what} ${said}. There is ${list([...names.keys()])}.`;
}

/** The line that reads as this suspect; what such a line cannot say stands behind it and reads as none. */
export function suspectLine({ what, likely, takes, piece, part, note }: SuspectSpec): string {
  const said = [likely === null ? null : `${likely}`, takes, piece && `in ${piece}`];
  const more = [part && `part ${part}`, note && `(${note})`];
  return [what, ...said, ...more].filter((one) => one !== null).join(', ');
}

/** The line that reads as this check. */
export function checkLine(spec: CheckSpec): string {
  const { check, limit, bad, along, takes, under, needs, caution, note } = spec;
  const parts = [
    ...bad,
    ...along.map((name) => `along ${name}`),
    ...[takes, limit].filter((one) => one !== null),
    ...under.map((piece) => `behind ${piece}`),
    ...needs.map((what) => `when ${what}`),
    ...[...caution, ...(note === null ? [] : [note])].map((text) => `(${text})`),
  ];
  return parts.length === 0 ? check : `${check}: ${parts.join(', ')}`;
}

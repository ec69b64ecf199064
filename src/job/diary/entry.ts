/**
 * One entry of the diary as one line of a job file, there and back.
 *
 * Names, times and words of fixed patterns stand plain, everything else JSON-quoted. What a YAML reader could
 * take for a number, a date, a boolean or nothing is quoted as well, so that readers of YAML 1.2 and of the
 * older 1.1 see the same texts; two things stay plain all the same, because people write them by hand:
 * `at`, which an older reader takes for a time, and the number of a hole.
 */

import { pattern } from '../../model/pattern.ts';
import { remembering } from '../../model/remembering.ts';
import { BESIDE, type Entry, VERBS, type Verb } from '../../model/types.ts';
import { BESIDE_ROWS } from '../../model/verbs/beside.ts';
import { type EntryPlace, PLACES, verbRow, verbWords } from '../../model/verbs/verbs.ts';

/** Key of a piece, a task or a thing to buy. */
export const NAME = /^[a-z0-9][a-z0-9-]*$/;
/** Name of a hole, as in piece/names: `1`…`999`, with a small letter if need be. */
export const HOLE = /^[1-9][0-9]{0,2}[a-z]?$/;
export const ID = /^[A-Za-z0-9_-]{8}$/;
/** RFC 3339 with its offset. */
export const TIME =
  /^[0-9]{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12][0-9]|3[01])T(?:[01][0-9]|2[0-3]):[0-5][0-9]:(?:[0-5][0-9]|60)(?:\.[0-9]{1,9})?(?:Z|[+-](?:[01][0-9]|2[0-3]):[0-5][0-9])$/;

/** The same of whole seconds, as the program writes them; whether there is such a day `isDay` says. */
const SECONDS = String.raw`\d{4}-\d\d-\d\dT(?:[01]\d|2[0-3]):[0-5]\d:[0-5]\d(?:Z|[+-][01]\d:[0-5]\d)`;
const PLAIN_TIME = pattern(() => `^${SECONDS}$`);

/** A month from 01 to 12 and a day from 01 to 31. */
const isDay = remembering((day) => {
  const [month, of] = [day.slice(5, 7), day.slice(8)];
  return month >= '01' && month <= '12' && of >= '01' && of <= '31';
});

/** As `TIME` says, which takes long to be made. */
export function isTime(text: string): boolean {
  return PLAIN_TIME.test(text) ? isDay(text.slice(0, 10)) : TIME.test(text);
}

/** Words that need no quotes in a flow map: letters, digits and the signs of units, one space between. */
const PLAIN = /^[A-Za-z0-9][A-Za-z0-9_·°µ+./-]*(?: [A-Za-z0-9_·°µ+./-]+)*$/;
/** What some YAML reader takes for a number, a date or a time of day. */
const NUMBER_LIKE = /^(?=.*[0-9])[-+]?(?:[0-9_eE.+:-]+|0[xobXOB][0-9a-fA-F_]*)$/;
/** What some YAML reader takes for a boolean or for nothing. */
const SWITCH_LIKE = /^(?:y|yes|n|no|true|false|on|off|null)$/i;

/** True for a text that every YAML reader gives back as the same text without quotes. */
export function isPlain(text: string): boolean {
  return PLAIN.test(text) && !NUMBER_LIKE.test(text) && !SWITCH_LIKE.test(text);
}

/**
 * What JSON leaves as it is and a YAML reader, a terminal or a diff does not: C1 controls, other line and
 * paragraph ends, marks that turn the direction of text, the byte order mark, the sign for a lost
 * character, non-characters.
 */
const ESCAPED = /[\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff\ufffd-\uffff]/g;

/** A text in double quotes, the same in JSON and in YAML, always on one line. */
export function quote(text: string): string {
  return JSON.stringify(text).replace(
    ESCAPED,
    (c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
}

/** An entry as its line, `- {at: …, id: …, …}`: without indentation and without a line break. */
export function printEntry(entry: Entry): string {
  const parts: string[] = [];
  const say = (key: string, value: string | undefined): void => {
    if (value !== undefined) parts.push(`${key}: ${printValue(key, value)}`);
  };
  say('at', entry.at);
  say('id', entry.id);
  say('piece', entry.piece);
  if (entry.hole) parts.push(`hole: ${printHoles(entry.hole)}`);
  say('task', entry.task);
  say('buy', entry.buy);
  say('check', entry.check);
  say('suspect', entry.suspect);
  parts.push(`${entry.verb}: ${printVerb(entry)}`);
  for (const key of BESIDE) say(key, entry[key]);
  return `- {${parts.join(', ')}}`;
}

function printVerb({ verb, value }: Entry): string {
  const { value: is } = verbRow(verb);
  if (is === 'id') return printId(value);
  if (is === 'speech') return quote(value);
  // A row of several words is quoted: it may hold `!` and `-`, and reads as one thing.
  const row = is === 'found' || is === 'bolts';
  return row && value.includes(' ') ? quote(value) : printText(value);
}

function printValue(key: string, value: string): string {
  if (key === 'at' && isTime(value)) return value;
  if (key === 'id') return printId(value);
  // A person reads it as speech.
  return SPEECH.includes(key) ? quote(value) : printText(value);
}

const SPEECH: readonly string[] = BESIDE.filter((key) => 'speech' in BESIDE_ROWS[key]);

function printText(value: string): string {
  return isPlain(value) ? value : quote(value);
}

function printId(value: string): string {
  return ID.test(value) && plainId(value) ? value : printText(value);
}

/** An id may begin with `_` or `-`; `-` alone before a blank cannot occur in eight characters without blanks. */
function plainId(id: string): boolean {
  return !NUMBER_LIKE.test(id) && !id.startsWith('---');
}

function printHoles(holes: readonly string[]): string {
  const names = holes.map((h) => (HOLE.test(h) ? h : quote(h)));
  return names.length === 1 ? (names[0] ?? '') : `[${names.join(', ')}]`;
}

// ---------------------------------------------------------------- reading

const START = /^ *- \{/;
const KEY = /([a-z]+): /y;
const QUOTED =
  /"(?:[^"\\\x00-\x1f\x7f-\x9f\u2028\u2029\ufeff\ufffd-\uffff]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"/y;
/** Up to the next comma or the end; what it holds is checked afterwards. */
const BARE = /[^,{}[\]"]+/y;
const LIST = /\[[1-9][0-9]{0,2}[a-z]?(?:, [1-9][0-9]{0,2}[a-z]?)*\]/y;

/** The keys and values of an entry, `hole` as one name or several. */
export type Raw = ReadonlyMap<string, string | readonly string[]>;

interface Pairs {
  raw: Map<string, string | string[]>;
  /** Where the value of each key starts in the line. */
  places: Map<string, number>;
}

/**
 * Reads a line as the program writes it (any indentation, its keys in any order, no line break).
 * Null for every other form and for what is no entry: the whole parse then says what it is. What this gives
 * is what the whole parse would give.
 */
export function parseEntryLine(line: string): Entry | null {
  const usual = readUsual(line);
  if (usual !== null) return usual;
  const pairs = readPairs(line);
  return pairs && entryOf(pairs.raw);
}

/** A mark on one hole, as most lines are: a name that does not fit here is left to the long way. */
const USUAL = new RegExp(
  `^ *- \\{at: (${SECONDS}), id: ([A-Za-z][A-Za-z0-9_-]{7}), piece: ([a-z][a-z0-9-]*), hole: ([1-9][0-9]{0,2}[a-z]?), ([a-z]+): ([^,{}[\\]"]+)\\}$`,
);

/** A diary says the same few words and pieces again and again. */
const isPlainName = remembering(isPlain);

/** The verb of `out: S`, where such a line may say so of one hole; null: the long way tells. */
const usualVerb = remembering((said) => {
  const end = said.indexOf(': ');
  const [verb, value] = [said.slice(0, end), said.slice(end + 2)];
  if (!isVerb(verb) || verbRow(verb).value === 'id') return null;
  if (!canBeAbout(verb, ['piece', 'hole']) || !isPlain(value)) return null;
  return goodValue(verb, value) ? verb : null;
});

/** The same as the long way gives, for those lines alone. */
function readUsual(line: string): Entry | null {
  const said = USUAL.exec(line);
  if (said === null) return null;
  // By their numbers: taken apart as a list, this takes half the time of a line.
  const at = said[1] ?? '';
  const id = said[2] ?? '';
  const piece = said[3] ?? '';
  const hole = said[4] ?? '';
  const verb = said[5] ?? '';
  const value = said[6] ?? '';
  const marks =
    isDay(at.slice(0, 10)) && isPlainName(piece) ? usualVerb(`${verb}: ${value}`) : null;
  return marks === null ? null : { at, id, verb: marks, value, piece, hole: [hole] };
}

/** Where the value of a key starts in a line as the program writes it; -1 when it is not there. */
export function placeInEntry(line: string, key: string): number {
  return readPairs(line)?.places.get(key) ?? -1;
}

function readPairs(line: string): Pairs | null {
  const start = START.exec(line);
  if (!start) return null;
  const raw: Pairs['raw'] = new Map();
  const places: Pairs['places'] = new Map();
  let at = start[0].length;
  const take = (pattern: RegExp): string | null => {
    pattern.lastIndex = at;
    const found = pattern.exec(line);
    if (!found) return null;
    at = pattern.lastIndex;
    return found[1] ?? found[0];
  };
  for (;;) {
    const key = take(KEY);
    if (key === null || raw.has(key)) return null;
    places.set(key, at);
    const quoted = line.charCodeAt(at) === 34 ? take(QUOTED) : null;
    const value = quoted !== null ? (JSON.parse(quoted) as string) : bare(key, take);
    if (value === null) return null;
    raw.set(key, value);
    if (line.startsWith(', ', at)) at += 2;
    else return line.slice(at) === '}' ? { raw, places } : null;
  }
}

/** What stands plain behind these keys. */
const PATTERNS: ReadonlyMap<string, Pick<RegExp, 'test'>> = new Map<string, Pick<RegExp, 'test'>>([
  ['at', { test: isTime }],
  ['id', ID],
  ['hole', HOLE],
  ...VERBS.flatMap((v) => (verbRow(v).value === 'id' ? [[v, ID] as const] : [])),
]);

function bare(key: string, take: (pattern: RegExp) => string | null): string | string[] | null {
  if (key === 'hole') {
    const list = take(LIST);
    if (list !== null) return list.slice(1, -1).split(', ');
  }
  const text = take(BARE);
  if (text === null) return null;
  const known = PATTERNS.get(key) ?? null;
  // What is not in a known pattern may be a silent loss: the whole parse looks at it.
  return (known ? known.test(text) && !text.startsWith('---') : isPlain(text)) ? text : null;
}

/** An entry from its keys and values; null when it is none. `hole` is one name or several. */
export function entryOf(raw: Raw): Entry | null {
  const text = (key: string): string | undefined => {
    const value = raw.get(key);
    return typeof value === 'string' ? value : undefined;
  };
  const at = text('at');
  const id = text('id');
  const verbs = [...raw.keys()].filter(isVerb);
  const verb = verbs[0];
  if (at === undefined || !isTime(at) || id === undefined || !ID.test(id)) return null;
  if (verb === undefined || verbs.length !== 1) return null;
  const value = text(verb);
  if (value === undefined || !goodValue(verb, value) || !goodPlaces(verb, raw)) return null;
  const entry: Entry = { at, id, verb, value };
  for (const [key, v] of raw) {
    if (key === 'hole') entry.hole = typeof v === 'string' ? [v] : [...v];
    else if (typeof v !== 'string') return null;
    else if (isName(key)) entry[key] = v;
    else if (isBeside(key)) entry[key] = v;
    else if (key !== 'at' && key !== 'id' && key !== verb) return null;
  }
  return entry;
}

const VERB_KEYS: ReadonlySet<string> = new Set(VERBS);

function isVerb(key: string): key is Verb {
  return VERB_KEYS.has(key);
}

function isName(key: string): key is Exclude<EntryPlace, 'hole'> {
  return key !== 'hole' && (PLACES as readonly string[]).includes(key);
}

function isBeside(key: string): key is (typeof BESIDE)[number] {
  return (BESIDE as readonly string[]).includes(key);
}

function goodValue(verb: Verb, value: string): boolean {
  if (verbRow(verb).value === 'id') return ID.test(value);
  return verbWords(verb)?.includes(value) ?? true;
}

function goodPlaces(verb: Verb, raw: Raw): boolean {
  for (const place of PLACES) {
    const value = raw.get(place);
    if (value === undefined) continue;
    const names = typeof value === 'string' ? [value] : value;
    const pattern = place === 'hole' ? HOLE : NAME;
    if (names.length === 0 || !names.every((n) => pattern.test(n))) return false;
  }
  const has = PLACES.filter((p) => raw.has(p));
  return isAbout(verb, has);
}

/** A diary says the same of a few sets of places again and again. */
const ABOUT = new Map<string, boolean>();

function isAbout(verb: Verb, has: readonly EntryPlace[]): boolean {
  const about = `${verb} ${has.join(' ')}`;
  const known = ABOUT.get(about) ?? canBeAbout(verb, has);
  ABOUT.set(about, known);
  return known;
}

function canBeAbout(verb: Verb, has: readonly EntryPlace[]): boolean {
  const sets: readonly (readonly string[])[] = verbRow(verb).about;
  return sets.some(
    (set) =>
      has.every((p) => set.includes(p) || set.includes(`${p}!`)) &&
      set.every((p) => !p.endsWith('!') || has.some((h) => `${h}!` === p)),
  );
}

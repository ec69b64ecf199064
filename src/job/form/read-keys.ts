/** What has keys of its own, read by its rows in the table: the file, its kinds, pieces, holes, tasks, things to buy. */
import { kindFromParts, readKind } from '../../bolt/read/kind.ts';
import { fieldOf, type Keys, keyRows } from '../../model/keys/key-row.ts';
import {
  BUY_KEYS,
  CHECK_KEYS,
  HOLE_KEYS,
  KIND_KEYS,
  type KindParts,
  PIECE_KEYS,
  SUSPECT_KEYS,
  TASK_KEYS,
  TASK_VERBS,
} from '../../model/keys/keys.ts';
import type { ValueName } from '../../model/keys/values.ts';
import { asPrinted } from '../../model/said.ts';
import type {
  AsWritten,
  BuySpec,
  CheckSpec,
  FieldsOf,
  HoleSpec,
  Kind,
  PieceSpec,
  SaidValues,
  SuspectSpec,
  TaskSpec,
  TextSaid,
  Values,
} from '../../model/types.ts';
import { isHoleName } from '../../piece/names.ts';
import { readItem, UNKNOWN } from '../../piece/row.ts';
import { NAME } from '../diary/entry.ts';
import { type PairSpot, type Spot, valueAt } from '../yaml/spot.ts';
import { nameOfKey } from './bare.ts';
import { type Reading, textAt, textOf, textSpotAt } from './read-fields.ts';
import type { Placed } from './read-row.ts';
import { readWeigh } from './read-trace.ts';
import { type Here, READ_PLAIN } from './values.ts';

/** The names in each key, and where they stand. */
export type Places<T extends Keys> = Readonly<Record<keyof T, readonly Placed<string>[]>>;

/** A piece, and where the names and kinds in it stand. */
export interface PlacedPiece {
  spec: PieceSpec;
  at: number;
  places: Places<typeof PIECE_KEYS>;
}

/** A reading of the whole file, which keeps the pieces it met with their places. */
export interface FileReading extends Reading {
  pieces: PlacedPiece[];
}

interface HereInFile extends Here {
  pieces: PlacedPiece[];
}

type Read = { readonly [V in ValueName]: ((here: HereInFile) => Values[V]) | null };

const READ: Read = {
  ...READ_PLAIN,
  word: null,
  verb: null,
  amount: null,
  chance: null,
  harm: null,
  entries: null,
  holes: (here) => {
    const holes = pairsOf(here.spot).filter((p) => isHoleName(p.key));
    here.placed.push(...holes.map((p) => ({ value: p.key, at: p.at })));
    return new Map(holes.map((p) => [p.key, readHole(here, p)]));
  },
  kinds: ({ spot }) => mapOf(spot, isKind, readKindAt),
  pieces: (here) => mapOf(here.spot, isName, (pair) => readPiece(here, pair)),
  tasks: (here) => mapOf(here.spot, isName, (pair) => readTask(here, pair)),
  buys: (here) => mapOf(here.spot, isName, (pair) => readBuy(here, pair)),
  suspects: (here) => mapOf(here.spot, isName, (pair) => readSuspect(here, pair)),
  checks: (here) => mapOf(here.spot, isName, (pair) => readCheck(here, pair)),
};

/** Texts that a manual can have wrong: what the file says is what is printed. */
const READ_SAID: { readonly [V in keyof SaidValues]: (here: Here) => SaidValues[V] } = {
  text: (here) => {
    const text = READ_PLAIN.text(here);
    return text === null || text === '' ? null : asPrinted(text);
  },
  texts: (here) => READ_PLAIN.texts(here).map(asPrinted),
};

function isSaid(value: ValueName): value is keyof SaidValues {
  return value in READ_SAID;
}

/** Reads a mapping by a table of keys: one field for each key, empty where the mapping has not got it. */
export function readKeys<T extends Keys>(
  reading: FileReading,
  keys: T,
  of: string,
  spot: Spot | null,
): { fields: FieldsOf<T>; places: Places<T> } {
  const fields: [string, unknown][] = [];
  const places: [string, Placed<string>[]][] = [];
  for (const [key, row] of keyRows(keys)) {
    const placed: Placed<string>[] = [];
    places.push([key, placed]);
    const read =
      row.corrected === true && isSaid(row.value) ? READ_SAID[row.value] : READ[row.value];
    if (read === null) continue;
    const { source, report, pieces } = reading;
    const here = { source, report, pieces, of, placed, spot: valueAt(spot, key) };
    fields.push([fieldOf(key, row), read(here)]);
  }
  // Each field is what its kind of value reads as: READ is complete over them.
  return {
    fields: Object.fromEntries(fields) as FieldsOf<T>,
    places: Object.fromEntries(places) as unknown as Places<T>,
  };
}

const MEASURES: readonly ValueName[] = ['length', 'depth', 'number'];

/** Lengths, depths and numbers as the file writes them, for those that are there. */
function asWritten(keys: Keys, spot: Spot): { asWritten?: AsWritten } {
  const said: Record<string, TextSaid> = {};
  for (const [key, { value }] of keyRows(keys)) {
    const text = MEASURES.includes(value) ? textAt(spot, key) : null;
    if (text !== null && text !== '') said[key] = asPrinted(text);
  }
  return Object.keys(said).length === 0 ? {} : { asWritten: said };
}

function readPiece(reading: FileReading, { key, at, value }: PairSpot): PieceSpec {
  const { fields, places } = readKeys(reading, PIECE_KEYS, key, value);
  const spec: PieceSpec = { key, ...fields, ...asWritten(PIECE_KEYS, value) };
  reading.pieces.push({ spec, at, places });
  return spec;
}

function readHole(reading: FileReading, { key, value }: PairSpot): HoleSpec {
  const { fields } = readKeys(reading, HOLE_KEYS, key, value);
  return { name: key, ...fields, ...asWritten(HOLE_KEYS, value) };
}

/** A task without a verb is a fault, and is shown by its name. */
function readTask(reading: FileReading, { key, value }: PairSpot): TaskSpec {
  const verb = TASK_VERBS.find((v) => textSpotAt(value, v)) ?? 'do';
  const say = asPrinted(textAt(value, verb) ?? nameOfKey(key));
  const weigh = verb === 'decide' ? readWeigh(value) : null;
  const { fields } = readKeys(reading, TASK_KEYS, key, value);
  return { key, verb, say, ...fields, ...(weigh ? { weigh } : {}) };
}

/** A thing to buy may be one text instead of a mapping: then that is its `what`. */
function readBuy(reading: FileReading, { key, value }: PairSpot): BuySpec {
  const { fields } = readKeys(reading, BUY_KEYS, key, value);
  return { key, ...fields, what: textOf(value) ?? fields.what };
}

/** A suspect may be one text instead of a mapping: then that is its `what`. */
function readSuspect(reading: FileReading, { key, value }: PairSpot): SuspectSpec {
  const { fields } = readKeys(reading, SUSPECT_KEYS, key, value);
  return { key, ...fields, what: textOf(value) ?? fields.what };
}

/** A check may be one text instead of a mapping: then that is what is looked at. */
function readCheck(reading: FileReading, { key, value }: PairSpot): CheckSpec {
  const { fields } = readKeys(reading, CHECK_KEYS, key, value);
  return { key, ...fields, check: textOf(value) ?? fields.check };
}

function readKindAt({ key, value }: PairSpot): Kind {
  if (value.is !== 'map') return readKind(key, textOf(value) ?? '');
  const parts: KindParts = {};
  for (const [part] of keyRows(KIND_KEYS)) {
    const text = textAt(value, part);
    if (text !== null) parts[part] = text;
  }
  return kindFromParts(key, parts);
}

function isName({ key }: PairSpot): boolean {
  return NAME.test(key);
}

function isKind({ key }: PairSpot): boolean {
  return key !== UNKNOWN && readItem(key)?.with.length === 0;
}

export function pairsOf(spot: Spot | null): PairSpot[] {
  return spot?.is === 'map' ? [...spot.pairs.values()] : [];
}

function mapOf<T>(
  spot: Spot | null,
  isOne: (pair: PairSpot) => boolean,
  read: (pair: PairSpot) => T,
): Map<string, T> {
  return new Map(pairsOf(spot).flatMap((pair) => (isOne(pair) ? [[pair.key, read(pair)]] : [])));
}

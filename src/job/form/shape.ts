/**
 * The shape of a whole job file, in its short and its full spellings, diary included.
 *
 * Only what JSON Schema can say as well, so that an editor's check and this one agree. The program sees every
 * scalar as a text; an editor sees `1` and `14.20` as numbers, `true` as a boolean, an empty place as null:
 * both pass. What stands inside a text (rows, torques, depths of thread) has readers of its own.
 */
import * as z from 'zod';
import { type KeyRow, type Keys, keyRows } from '../../model/keys/key-row.ts';
import { TASK_KEYS, TASK_VERBS, type TaskVerb } from '../../model/keys/keys.ts';
import type { ValueName } from '../../model/keys/values.ts';
import { BESIDE, CARE_WORDS, VERBS, type Verb } from '../../model/types.ts';
import {
  type EntryPlace,
  PLACES,
  type VerbRow,
  verbRow,
  verbWords,
} from '../../model/verbs/verbs.ts';
import { HOLE, ID, NAME, TIME } from '../diary/entry.ts';
import { helpFor, type Mapping, type Owner, rowsFor } from './help.ts';

// A shape is used once or twice in a run: compiling it first costs more than it saves.
z.config({ jitless: true });

/** A kind's letter, as in piece/row. */
const LETTER = /^[A-Za-z][A-Za-z0-9]{0,7}$/;

const text = z.union([z.string(), z.number()]);
const nothing = z.null();
const texts = z.union([z.string(), z.number(), z.array(text)]);
const truth = z.union([z.boolean(), z.enum(['true', 'false'])]);

type Fields = Record<string, z.ZodType>;
/** Whether keys carry their line of help: for the JSON Schema. Without it a shape is made in half the time. */
type Told = 'helped' | 'bare';

/** What stands behind each name of a section; empty when nothing is said. */
function named(pattern: RegExp, value: z.ZodType): z.ZodType {
  return z.record(z.string().regex(pattern), z.union([value, nothing]));
}

const word = z.string();
const care = z.enum([...CARE_WORDS, 'none']);

/** The shape of each kind of value. */
const SHAPES: { readonly [V in ValueName]: (told: Told) => z.ZodType } = {
  text: () => text,
  title: () => text,
  called: () => text,
  texts: () => texts,
  truth: () => truth,
  torque: () => text,
  length: () => text,
  depth: () => text,
  number: () => text,
  pieceNames: () => texts,
  stepNames: () => texts,
  holeNames: () => texts,
  order: () => texts,
  row: (told) => oneOrMore(mapping(told, 'item'), word),
  ways: (told) => z.union([word, z.array(text), mapping(told, 'steps')]),
  picture: () => text,
  pitch: () => z.union([z.string(), z.number(), z.array(text).min(1).max(2)]),
  place: () => z.array(text).min(2).max(2),
  passes: (told) => oneOrMore(mapping(told, 'pass'), word),
  care: () => z.union([care, z.array(care).min(1)]),
  holes: (told) => named(HOLE, mapping(told, 'hole')),
  kinds: (told) => named(LETTER, z.union([word, mapping(told, 'kind')])),
  pieces: (told) => named(NAME, mapping(told, 'piece')),
  tasks: (told) => {
    const tasks = TASK_VERBS.map((verb) => taskShape(verb, told));
    return z.record(z.string().regex(NAME), z.union(tasks));
  },
  buys: (told) => named(NAME, z.union([word, mapping(told, 'buy')])),
  suspects: (told) => named(NAME, z.union([word, mapping(told, 'suspect')])),
  checks: (told) => named(NAME, z.union([word, mapping(told, 'check')])),
  likely: () => text,
  amount: (told) => z.union([text, mapping(told, 'cost')]),
  chance: () => text,
  harm: (told) => z.union([text, mapping(told, 'risk')]),
  version: () => z.union([z.literal(1), z.literal('1')]),
  word: () => word,
  verb: () => text,
  // In the diary of the person's part anything can stand: each entry has a check of its own.
  entries: (told) => z.array(told === 'helped' ? once(ENTRY, anyEntryShape) : z.unknown()),
};

/** One text, or a list of texts and mappings. */
function oneOrMore(one: z.ZodType, short: z.ZodType): z.ZodType {
  return z.union([short, z.array(z.union([short, one]))]);
}

const optionals = new Map<z.ZodType, z.ZodType>();

/** Absent, or there with nothing behind it. */
function optional(value: z.ZodType): z.ZodType {
  const made = optionals.get(value) ?? z.union([value, nothing]).optional();
  optionals.set(value, made);
  return made;
}

const shared = new Map<string, z.ZodType>();

/** Under a name of its own: the JSON Schema says it once, and refers to it wherever it is met again. */
function once(id: string, make: () => z.ZodType, description?: string): z.ZodType {
  const made =
    shared.get(id) ?? make().meta(description === undefined ? { id } : { id, description });
  shared.set(id, made);
  return made;
}

/** A key with its line of help. */
function withHelp(told: Told, owner: Owner, key: string, value: z.ZodType): z.ZodType {
  if (told === 'bare') return value;
  const description = helpFor(owner, key)?.is ?? '';
  // A task is said several times, by its verb.
  if (owner !== 'task') return value.meta({ description });
  return once(`${owner}.${key}`, () => value, description);
}

/** A mapping with the keys of a table and no others; each may be absent or empty but for those that must be there. */
function mapping(
  told: Told,
  owner: Mapping,
  keys: Keys = rowsFor(owner),
  id: string = owner,
): z.ZodType {
  const make = () => {
    const fields = keyRows(keys).map(([key, row]): [string, z.ZodType] => {
      const of = () => (row.must ? SHAPES[row.value](told) : optional(SHAPES[row.value](told)));
      const value = told === 'helped' ? once(row.must ? `must-${row.value}` : row.value, of) : of();
      return [key, withHelp(told, owner, key, value)];
    });
    return z.strictObject(Object.fromEntries(fields));
  };
  // The file is the root of the schema.
  return told === 'helped' && owner !== 'file' ? once(id, make) : make();
}

/** A task with this verb, and none of the others. */
export function taskShape(verb: TaskVerb, told: Told = 'bare'): z.ZodType {
  const rest = keyRows(TASK_KEYS).filter(
    ([, row]) => row.value !== 'verb' && (row.only ?? verb) === verb,
  );
  const own: KeyRow = { ...TASK_KEYS[verb], must: true };
  return mapping(told, 'task', { [verb]: own, ...Object.fromEntries(rest) }, `task-${verb}`);
}

const name = z.union([z.string().regex(NAME), z.int().min(0)]);
const hole = z.union([z.string().regex(HOLE), z.int().min(1).max(999)]);
const PLACE_SHAPES: { readonly [P in EntryPlace]: z.ZodType } = {
  piece: name,
  hole: z.union([z.string().regex(HOLE), z.int().min(1).max(999), z.array(hole).min(1)]),
  task: name,
  buy: name,
  check: name,
  suspect: name,
};

function verbShape(verb: Verb): z.ZodType {
  const words = verbWords(verb);
  if (words) return z.enum(words);
  return verbRow(verb).value === 'id' ? z.string().regex(ID) : text;
}

const HEAD: Fields = { at: z.string().regex(TIME), id: z.string().regex(ID) };
const BESIDE_SHAPES = mapped(BESIDE, () => optional(text));

type Places = VerbRow['about'][number];

/** A piece or nothing at all is a piece that need not be named. */
function asFew(about: VerbRow['about']): readonly Places[] {
  const isPiece = (places: Places) => places.length === 1 && places[0] === 'piece!';
  if (!about.some(isPiece) || !about.some((places) => places.length === 0)) return about;
  return about.flatMap((places): Places[] =>
    isPiece(places) ? [['piece']] : places.length === 0 ? [] : [places],
  );
}

const entries = new Map<Verb, z.ZodType[]>();

/** The shapes an entry with this verb can have: one for each set of places it can be about. */
export function entryShapes(verb: Verb): z.ZodType[] {
  const make = (places: Places) => {
    const where = places.map((place): [string, z.ZodType] => {
      const key = place.replace('!', '') as EntryPlace;
      return [key, place.endsWith('!') ? PLACE_SHAPES[key] : PLACE_SHAPES[key].optional()];
    });
    const about = Object.fromEntries(where);
    return z.strictObject({ ...HEAD, ...about, [verb]: verbShape(verb), ...BESIDE_SHAPES });
  };
  const made = entries.get(verb) ?? asFew(verbRow(verb).about).map(make);
  entries.set(verb, made);
  return made;
}

/** The name under which the JSON Schema has an entry. */
export const ENTRY = 'entry';

/** Every key that an entry can have, with its help. That it has one verb, and its places, the JSON Schema says apart. */
function anyEntryShape(): z.ZodType {
  const fields = {
    ...HEAD,
    ...mapped(PLACES, (place) => PLACE_SHAPES[place].optional()),
    ...mapped(VERBS, (verb) => verbShape(verb).optional()),
    ...BESIDE_SHAPES,
  };
  const told = Object.entries(fields).map(([key, shape]) => [
    key,
    withHelp('helped', 'entry', key, shape),
  ]);
  const isOne = (entry: unknown) =>
    VERBS.some((verb) => entryShapes(verb).some((shape) => shape.safeParse(entry).success));
  return z.strictObject(Object.fromEntries(told)).refine(isOne);
}

function mapped<K extends string>(keys: readonly K[], make: (key: K) => z.ZodType): Fields {
  return Object.fromEntries(keys.map((key) => [key, make(key)]));
}

/** The whole file, every key with its help. */
export function fileShape(): z.ZodType {
  return mapping('helped', 'file');
}

let upper: z.ZodType | null = null;

/** The person's part: in its diary anything can stand. Made when it is first asked for. */
export function upperShape(): z.ZodType {
  upper ??= mapping('bare', 'file');
  return upper;
}

/**
 * The shape of a whole job file, in its short and its full spellings, diary included.
 *
 * Only what JSON Schema can say as well, so that an editor's check and this one agree. The program sees every
 * scalar as a text; an editor sees `1` and `14.20` as numbers, `true` as a boolean, an empty place as null:
 * both pass. What stands inside a text (rows, torques, depths of thread) has readers of its own.
 */
import * as z from 'zod';
import { type KeyRow, type Keys, rowsOf } from '../../model/key-row.ts';
import {
  BUY_KEYS,
  FILE_KEYS,
  HOLE_KEYS,
  ITEM_KEYS,
  KIND_KEYS,
  PASS_KEYS,
  PIECE_KEYS,
  TASK_KEYS,
  TASK_VERBS,
  type TaskVerb,
  WAY_KEYS,
} from '../../model/keys.ts';
import { BESIDE, CARES, VERBS, type Verb } from '../../model/types.ts';
import type { ValueName } from '../../model/values.ts';
import { HOLE, ID, NAME, TIME, VERB_PLACES, VERB_WORDS } from '../diary/entry.ts';
import { helpFor, type Owner } from './help.ts';

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
type Told = boolean;

/** What stands behind each name of a section; empty when nothing is said. */
function named(pattern: RegExp, value: z.ZodType): z.ZodType {
  return z.record(z.string().regex(pattern), z.union([value, nothing]));
}

const word = z.string();
const care = z.enum([...CARES, 'none']);

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
  row: (told) => oneOrMore(mapping(told, 'item', ITEM_KEYS), word),
  ways: (told) => z.union([word, z.array(text), mapping(told, 'steps', WAY_KEYS)]),
  picture: () => text,
  pitch: () => z.union([z.string(), z.number(), z.array(text).min(1).max(2)]),
  place: () => z.array(text).min(2).max(2),
  passes: (told) => oneOrMore(mapping(told, 'pass', PASS_KEYS), word),
  care: () => z.union([care, z.array(care).min(1)]),
  holes: (told) => named(HOLE, mapping(told, 'hole', HOLE_KEYS)),
  kinds: (told) => named(LETTER, z.union([word, mapping(told, 'kind', KIND_KEYS)])),
  pieces: (told) => named(NAME, mapping(told, 'piece', PIECE_KEYS)),
  tasks: (told) => {
    const tasks = TASK_VERBS.map((verb) => taskShape(verb, told));
    return z.record(z.string().regex(NAME), z.union(tasks));
  },
  buys: (told) => named(NAME, z.union([word, mapping(told, 'buy', BUY_KEYS)])),
  version: () => z.union([z.literal(1), z.literal('1')]),
  word: () => word,
  verb: () => text,
  // In the diary of the person's part anything can stand: each entry has a check of its own.
  entries: (told) =>
    z.array(told ? z.union(VERBS.flatMap((verb) => makeEntryShapes(verb, true))) : z.unknown()),
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

function withHelp(told: Told, owner: Owner, key: string, value: z.ZodType): z.ZodType {
  return told ? value.meta({ description: helpFor(owner, key)?.is ?? '' }) : value;
}

/** A mapping with the keys of a table and no others; each may be absent or empty but for those that must be there. */
function mapping(told: Told, owner: Owner, keys: Keys): z.ZodType {
  const fields = rowsOf(keys).map(([key, row]): [string, z.ZodType] => {
    const value = SHAPES[row.value](told);
    return [key, withHelp(told, owner, key, row.must ? value : optional(value))];
  });
  return z.strictObject(Object.fromEntries(fields));
}

/** A task with this verb, and none of the others. */
export function taskShape(verb: TaskVerb, told: Told = false): z.ZodType {
  const rest = rowsOf(TASK_KEYS).filter(([, row]) => row.value !== 'verb');
  const own: KeyRow = { ...TASK_KEYS[verb], must: true };
  return mapping(told, 'task', { [verb]: own, ...Object.fromEntries(rest) });
}

const entries = new Map<Verb, z.ZodType[]>();

/** The shapes an entry with this verb can have: one for each set of places it can be about. */
export function entryShapes(verb: Verb): z.ZodType[] {
  const made = entries.get(verb) ?? makeEntryShapes(verb, false);
  entries.set(verb, made);
  return made;
}

function makeEntryShapes(verb: Verb, told: Told): z.ZodType[] {
  const name = z.union([z.string().regex(NAME), z.int().min(0)]);
  const hole = z.union([z.string().regex(HOLE), z.int().min(1).max(999)]);
  const holes = z.union([z.string().regex(HOLE), z.int().min(1).max(999), z.array(hole).min(1)]);
  const words = VERB_WORDS[verb];
  const value = words ? z.enum(words) : verb === 'undo' ? z.string().regex(ID) : text;
  const required = (key: string, shape: z.ZodType): Fields => ({
    [key]: withHelp(told, 'entry', key, shape),
  });
  const beside = BESIDE.map((key) => [key, withHelp(told, 'entry', key, optional(text))]);
  return VERB_PLACES[verb].map((places) => {
    const where = places.map((place) => {
      const key = place.replace('!', '');
      const shape = withHelp(told, 'entry', key, key === 'hole' ? holes : name);
      return [key, place.endsWith('!') ? shape : shape.optional()];
    });
    return z.strictObject({
      ...required('at', z.string().regex(TIME)),
      ...required('id', z.string().regex(ID)),
      ...Object.fromEntries(where),
      ...required(verb, value),
      ...Object.fromEntries(beside),
    });
  });
}

/** The whole file, every key with its help. */
export function fileShape(): z.ZodType {
  return mapping(true, 'file', FILE_KEYS);
}

let upper: z.ZodType | null = null;

/** The person's part: in its diary anything can stand. Made when it is first asked for. */
export function upperShape(): z.ZodType {
  upper ??= mapping(false, 'file', FILE_KEYS);
  return upper;
}

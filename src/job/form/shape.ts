/**
 * The shape of a whole job file, in its short and its full spellings, diary included.
 *
 * Only what JSON Schema can say as well, so that an editor's check and this one agree. The program sees every
 * scalar as a text; an editor sees `1` and `14.20` as numbers, `true` as a boolean, an empty place as null:
 * both pass. What stands inside a text (rows, torques, depths of thread) has readers of its own.
 */
import * as z from 'zod';
import { BESIDE, CARES, type TaskVerb, VERBS, type Verb } from '../../model/types.ts';
import { HOLE, ID, NAME, TIME, VERB_PLACES, VERB_WORDS } from '../diary/entry.ts';
import { TASK_VERBS } from './read-upper.ts';
import { helpFor, type Owner } from './shape-help.ts';

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

/** A mapping with these keys and no others; each may be absent or empty. */
function keysOf(told: Told, owner: Owner, fields: Fields): Fields {
  const keys = Object.entries(fields).map(([key, value]) => {
    return [key, withHelp(told, owner, key, optional(value))];
  });
  return Object.fromEntries(keys);
}

const optionals = new Map<z.ZodType, z.ZodType>();

function optional(value: z.ZodType): z.ZodType {
  const made = optionals.get(value) ?? z.union([value, nothing]).optional();
  optionals.set(value, made);
  return made;
}

function required(told: Told, owner: Owner, key: string, value: z.ZodType): Fields {
  return { [key]: withHelp(told, owner, key, value) };
}

function withHelp(told: Told, owner: Owner, key: string, value: z.ZodType): z.ZodType {
  return told ? value.meta({ description: helpFor(owner, key)?.is ?? '' }) : value;
}

/** What stands behind each name of a section; empty when nothing is said. */
function named(pattern: RegExp, value: z.ZodType): z.ZodType {
  return z.record(z.string().regex(pattern), z.union([value, nothing]));
}

function kindShape(told: Told): z.ZodType {
  const fields = { thread: text, length: text, head: text, tool: text, class: text };
  const more = { threaded: text, lh: truth, once: truth, note: text };
  return z.union([z.string(), z.strictObject(keysOf(told, 'kind', { ...fields, ...more }))]);
}

function pieceShape(told: Told): z.ZodType {
  const care = z.enum([...CARES, 'none']);
  const item = z.strictObject({
    ...required(told, 'item', 'kind', z.string()),
    ...keysOf(told, 'item', { with: texts }),
  });
  const steps = z.strictObject(keysOf(told, 'steps', { removal: texts, fitting: texts }));
  const before = z.union([z.string(), z.array(text), steps]);
  const pass = z.strictObject({
    ...required(told, 'pass', 'name', z.string()),
    ...keysOf(told, 'pass', { torque: text, angle: text, after: text }),
  });
  return z.strictObject(
    keysOf(told, 'piece', {
      name: text,
      under: texts,
      bolts: z.union([z.string(), z.array(z.union([z.string(), item]))]),
      torque: text,
      into: text,
      thick: text,
      thread: text,
      joint: texts,
      loose: texts,
      caution: before,
      tip: before,
      marks: texts,
      routes: texts,
      tray: text,
      map: text,
      pitch: z.union([z.string(), z.number(), z.array(text).min(1).max(2)]),
      holes: named(HOLE, holeShape(told)),
      sequence: texts,
      passes: z.union([z.string(), z.array(z.union([z.string(), pass]))]),
      care: z.union([care, z.array(care).min(1)]),
      first: texts,
      along: texts,
      bridges: texts,
      takes: text,
      note: text,
    }),
  );
}

function holeShape(told: Told): z.ZodType {
  const at = z.array(text).min(2).max(2);
  const measures = { thick: text, thread: text, turns: text, proud: text, at };
  const rest = { torque: text, into: text, wet: truth, group: text };
  return z.strictObject(keysOf(told, 'hole', { note: text, ...measures, ...rest }));
}

/** A task with this verb. */
export function taskShape(verb: TaskVerb, told: Told = false): z.ZodType {
  const order = { before: texts, after: texts, while: texts };
  const more = { ...order, limit: text, when: text, takes: text, note: text };
  return z.strictObject({
    ...required(told, 'task', verb, text),
    ...keysOf(told, 'task', more),
  });
}

function buyShape(told: Told): z.ZodType {
  const fields = { what: text, price: text, count: text, from: text, once: truth };
  const object = z.strictObject(keysOf(told, 'buy', { ...fields, for: texts, note: text }));
  return z.union([z.string(), object]);
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
  const value = words
    ? z.enum(words)
    : verb === 'undo' || verb === 'keep'
      ? z.string().regex(ID)
      : text;
  const beside = keysOf(told, 'entry', Object.fromEntries(BESIDE.map((key) => [key, text])));
  return VERB_PLACES[verb].map((places) => {
    const where = places.map((place) => {
      const key = place.replace('!', '');
      const shape = withHelp(told, 'entry', key, key === 'hole' ? holes : name);
      return [key, place.endsWith('!') ? shape : shape.optional()];
    });
    return z.strictObject({
      ...required(told, 'entry', 'at', z.string().regex(TIME)),
      ...required(told, 'entry', 'id', z.string().regex(ID)),
      ...Object.fromEntries(where),
      ...required(told, 'entry', verb, value),
      ...beside,
    });
  });
}

function makeFileShape(told: Told, entry: z.ZodType): z.ZodType {
  return z.strictObject({
    ...required(told, 'file', 'putback', z.union([z.literal(1), z.literal('1')])),
    ...required(told, 'file', 'job', text),
    ...keysOf(told, 'file', {
      machine: text,
      'machine-id': text,
      like: texts,
      complaint: text,
      found: text,
      done: text,
      bolts: named(LETTER, kindShape(told)),
      pieces: named(NAME, pieceShape(told)),
      tasks: z.record(
        z.string().regex(NAME),
        z.union(TASK_VERBS.map((verb) => taskShape(verb, told))),
      ),
      buy: named(NAME, buyShape(told)),
      diary: z.array(entry),
    }),
  });
}

/** The whole file, every key with its help. */
export function fileShape(): z.ZodType {
  return makeFileShape(true, z.union(VERBS.flatMap((verb) => makeEntryShapes(verb, true))));
}

let upper: z.ZodType | null = null;

/** The person's part: in its diary anything can stand. Made when it is first asked for. */
export function upperShape(): z.ZodType {
  upper ??= makeFileShape(false, z.unknown());
  return upper;
}

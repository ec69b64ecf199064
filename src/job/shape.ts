/**
 * The shape of a whole job file, in its short and its full spellings, diary included.
 *
 * Only what JSON Schema can say as well, so that an editor's check and this one agree. The program sees every
 * scalar as a text; an editor sees `1` and `14.20` as numbers, `true` as a boolean, an empty place as null:
 * both pass. What stands inside a text (rows, torques, depths of thread) has readers of its own.
 */
import * as z from 'zod';
import { HOLE, ID, NAME, TIME, VERB_PLACES, VERB_WORDS } from './entry.ts';
import { CARES } from './read-piece.ts';
import { TASK_VERBS } from './read-upper.ts';
import { HELP, type Owner } from './shape-help.ts';
import { BESIDE, type TaskVerb, VERBS, type Verb } from './types.ts';

/** A kind's letter, as in piece/row. */
const LETTER = /^[A-Za-z][A-Za-z0-9]{0,7}$/;

const text = z.union([z.string(), z.number()]);
const nothing = z.null();
const texts = z.union([z.string(), z.number(), z.array(text)]);
const truth = z.union([z.boolean(), z.enum(['true', 'false'])]);
const number = z.union([z.string(), z.number()]);

type Fields = Record<string, z.ZodType>;

/** A mapping with these keys and no others; each may be absent or empty. */
function keysOf(owner: Owner, fields: Fields): Fields {
  const entries = Object.entries(fields).map(([key, value]) => [key, optional(owner, key, value)]);
  return Object.fromEntries(entries);
}

function optional(owner: Owner, key: string, value: z.ZodType): z.ZodType {
  return z.union([value, nothing]).optional().meta(about(owner, key));
}

function required(owner: Owner, key: string, value: z.ZodType): Fields {
  return { [key]: value.meta(about(owner, key)) };
}

function about(owner: Owner, key: string): { description: string } {
  const keys: Record<string, { is: string }> = HELP[owner];
  return { description: keys[key]?.is ?? '' };
}

/** What stands behind each name of a section; empty when nothing is said. */
function named(pattern: RegExp, value: z.ZodType): z.ZodType {
  return z.record(z.string().regex(pattern), z.union([value, nothing]));
}

function kindShape(): z.ZodType {
  const fields = { thread: text, length: text, head: text, tool: text, class: text };
  const more = { threaded: text, lh: truth, once: truth, note: text };
  return z.union([z.string(), z.strictObject(keysOf('kind', { ...fields, ...more }))]);
}

function pieceShape(): z.ZodType {
  const item = z.strictObject({
    ...required('item', 'kind', z.string()),
    ...keysOf('item', { with: texts }),
  });
  const steps = z.strictObject(keysOf('steps', { removal: texts, fitting: texts }));
  const before = z.union([z.string(), z.array(text), steps]);
  const pass = z.strictObject({
    ...required('pass', 'name', z.string()),
    ...keysOf('pass', { torque: text, angle: number, after: text }),
  });
  return z.strictObject(
    keysOf('piece', {
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
      holes: named(HOLE, holeShape()),
      sequence: texts,
      passes: z.union([z.string(), z.array(z.union([z.string(), pass]))]),
      care: z.enum(CARES),
      first: texts,
      note: text,
    }),
  );
}

function holeShape(): z.ZodType {
  const at = z.array(text).min(2).max(2);
  const measures = { thick: text, thread: text, turns: number, proud: text, at };
  const rest = { torque: text, into: text, wet: truth, group: text };
  return z.strictObject(keysOf('hole', { note: text, ...measures, ...rest }));
}

/** A task with this verb. */
export function taskShape(verb: TaskVerb): z.ZodType {
  const more = { before: texts, after: texts, while: texts, limit: text, note: text };
  return z.strictObject({ ...required('task', verb, text), ...keysOf('task', more) });
}

function buyShape(): z.ZodType {
  const fields = { what: text, price: text, count: text, from: text, once: truth };
  const object = z.strictObject(keysOf('buy', { ...fields, for: texts, note: text }));
  return z.union([z.string(), object]);
}

const entries = new Map<Verb, z.ZodType[]>();

/** The shapes an entry with this verb can have: one for each set of places it can be about. */
export function entryShapes(verb: Verb): z.ZodType[] {
  const made = entries.get(verb) ?? makeEntryShapes(verb);
  entries.set(verb, made);
  return made;
}

function makeEntryShapes(verb: Verb): z.ZodType[] {
  const name = z.union([z.string().regex(NAME), z.int().min(0)]);
  const hole = z.union([z.string().regex(HOLE), z.int().min(1).max(999)]);
  const holes = z.union([z.string().regex(HOLE), z.int().min(1).max(999), z.array(hole).min(1)]);
  const words = VERB_WORDS[verb];
  const value = words ? z.enum(words) : verb === 'undo' ? z.string().regex(ID) : text;
  const beside = keysOf('entry', Object.fromEntries(BESIDE.map((key) => [key, text])));
  return VERB_PLACES[verb].map((places) => {
    const where = places.map((place) => {
      const key = place.replace('!', '');
      const shape = (key === 'hole' ? holes : name).meta(about('entry', key));
      return [key, place.endsWith('!') ? shape : shape.optional()];
    });
    return z.strictObject({
      ...required('entry', 'at', z.string().regex(TIME)),
      ...required('entry', 'id', z.string().regex(ID)),
      ...Object.fromEntries(where),
      ...required('entry', verb, value),
      ...beside,
    });
  });
}

let built: z.ZodType | null = null;

/** The whole file. Made when it is first asked for. */
export function fileShape(): z.ZodType {
  built ??= z.strictObject({
    ...required('file', 'putback', z.union([z.literal(1), z.literal('1')])),
    ...required('file', 'job', text),
    ...keysOf('file', {
      machine: text,
      complaint: text,
      found: text,
      done: text,
      bolts: named(LETTER, kindShape()),
      pieces: named(NAME, pieceShape()),
      tasks: z.record(z.string().regex(NAME), z.union(TASK_VERBS.map(taskShape))),
      buy: named(NAME, buyShape()),
      diary: z.array(z.union(VERBS.flatMap(entryShapes))),
    }),
  });
  return built;
}

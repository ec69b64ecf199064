/** The shape of a job file as data: whether a file has it can be said without the library that it is made with. */
import type * as z from 'zod';
import type { ShapeNode } from './fits.ts';
import { upperShape } from './shape.ts';

export interface Trees {
  nodes: ShapeNode[];
  /** Place in `nodes` of the person's part of a file. */
  upper: number;
}

export function makeTrees(): Trees {
  const nodes: ShapeNode[] = [];
  const places = new Map<string, number>();
  const add = (node: ShapeNode): number => {
    const text = JSON.stringify(node);
    const at = places.get(text) ?? nodes.push(node) - 1;
    places.set(text, at);
    return at;
  };
  const place = (shape: z.ZodType): number => add(nodeOf(shape, place));
  return { upper: place(upperShape()), nodes };
}

type Def = z.core.$ZodTypes['_zod']['def'];
const defOf = (shape: z.core.$ZodType) => shape._zod.def as Def;

/** A file's data is texts, lists, mappings and empty places, so a shape of numbers or booleans fits nothing in it. */
function nodeOf(shape: z.core.$ZodType, place: (shape: z.ZodType) => number): ShapeNode {
  const at = (inner: z.core.$ZodType) => place(inner as z.ZodType);
  const def = defOf(shape);
  switch (def.type) {
    case 'unknown':
      return { is: 'anything' };
    case 'null':
      return { is: 'nothing' };
    case 'number':
    case 'boolean':
      return { is: 'never' };
    case 'string':
      return textNode(shape);
    case 'literal':
      return { is: 'word', words: def.values.filter((value) => typeof value === 'string') };
    case 'enum':
      return { is: 'word', words: Object.values(def.entries).map(String) };
    case 'union':
      return { is: 'any', of: [...new Set(def.options.map(at))] };
    case 'optional':
      return nodeOf(def.innerType, place);
    case 'array':
      return { is: 'list', of: at(def.element), ...lengthsOf(shape) };
    case 'record': {
      const key = textNode(def.keyType);
      if (key.is !== 'match') break;
      return { is: 'named', pattern: key.pattern, of: at(def.valueType) };
    }
    case 'object': {
      // A mapping that also takes unknown keys has no node of its own.
      if (def.catchall === undefined || defOf(def.catchall).type !== 'never') break;
      const fields = Object.entries(def.shape);
      return {
        is: 'keys',
        of: Object.fromEntries(fields.map(([key, value]) => [key, at(value)])),
        must: fields.flatMap(([key, value]) => (defOf(value).type === 'optional' ? [] : [key])),
      };
    }
  }
  throw new Error(`A shape of ${def.type} cannot be said as data: add it to trees.ts`);
}

const checksOf = (shape: z.core.$ZodType) =>
  (defOf(shape).checks ?? []).map((check) => check._zod.def as z.core.$ZodChecks['_zod']['def']);

function textNode(shape: z.core.$ZodType): ShapeNode {
  const [check, ...rest] = checksOf(shape);
  if (check === undefined) return { is: 'text' };
  if (check.check !== 'string_format' || rest.length > 0 || !check.pattern || check.pattern.flags)
    throw new Error('A text is checked in a way that trees.ts does not know');
  return { is: 'match', pattern: check.pattern.source };
}

function lengthsOf(shape: z.core.$ZodType): { least: number; most: number | null } {
  const lengths = { least: 0, most: null as number | null };
  for (const check of checksOf(shape)) {
    if (check.check === 'min_length') lengths.least = check.minimum;
    else if (check.check === 'max_length') lengths.most = check.maximum;
    else throw new Error(`A list is checked by ${check.check}, which trees.ts does not know`);
  }
  return lengths;
}

/** A job file as nodes with places, to know where to cut. Values are texts (failsafe schema). */
import {
  type Document,
  isAlias,
  isMap,
  isScalar,
  isSeq,
  type Node,
  type Pair,
  parseDocument,
  stringify,
  visit,
  type YAMLMap,
} from 'yaml';
import { quote } from '../diary/entry.ts';

export interface Fail {
  fault: string;
}
/** A replacement of `[from, to)`. */
export interface Cut {
  from: number;
  to: number;
  put: string;
}
export type KeyPair = Pair<Node, Node | null>;
export type Value = string | Value[] | Map<string, Value>;

/** The text with all cuts made; they do not overlap. */
export function cut(text: string, cuts: readonly Cut[]): string {
  let out = text;
  for (const c of [...cuts].sort((a, b) => b.from - a.from)) {
    out = out.slice(0, c.from) + c.put + out.slice(c.to);
  }
  return out;
}

export function isFail(x: unknown): x is Fail {
  return typeof x === 'object' && x !== null && 'fault' in x;
}

/** The file as a document; a fault when it cannot be read without doubt. */
export function openDoc(text: string): Document.Parsed | Fail {
  const doc = parseDocument(text, { schema: 'failsafe', uniqueKeys: true });
  const [error] = doc.errors;
  if (error) return { fault: error.message.split('\n')[0] ?? 'not readable' };
  if (!/[&*]/.test(text)) return doc;
  let alias = false;
  visit(doc, {
    Alias() {
      alias = true;
    },
    Node(_, node) {
      if (!isAlias(node) && node.anchor) alias = true;
    },
  });
  return alias ? { fault: 'anchors (&) and aliases (*) are not used in job files' } : doc;
}

export function pairOf(map: YAMLMap, key: string): Pair<Node, Node | null> | null {
  for (const pair of map.items) {
    if (isScalar(pair.key) && pair.key.value === key) return pair as Pair<Node, Node | null>;
  }
  return null;
}

/** Start and end of a node's own text, without trailing comments. */
export function rangeOf(node: Node): [number, number] {
  const range = node.range;
  return range ? [range[0], range[1]] : [0, 0];
}

/** Nothing stands behind the key. */
export function isNothing(node: Node | null): boolean {
  return node === null || (isScalar(node) && node.source === '' && node.type === 'PLAIN');
}

export function endOfPair(pair: Pair<Node, Node | null>): number {
  return rangeOf(pair.value ?? pair.key)[1];
}

/** Plain values, to compare what a file says before and after. */
export function plainOf(node: unknown): Value {
  if (isScalar(node)) return String(node.value);
  if (isSeq(node)) return node.items.map(plainOf);
  if (isMap(node)) {
    return new Map(node.items.map((p) => [String(plainOf(p.key)), plainOf(p.value)]));
  }
  return '';
}

export function sameValue(a: Value, b: Value): boolean {
  if (typeof a === 'string' || typeof b === 'string') return a === b;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  if (Array.isArray(a) && Array.isArray(b)) {
    return a.length === b.length && a.every((x, i) => sameValue(x, b[i] ?? ''));
  }
  if (a instanceof Map && b instanceof Map) {
    return (
      a.size === b.size &&
      [...a].every(([k, v]) => {
        const other = b.get(k);
        return other !== undefined && sameValue(v, other);
      })
    );
  }
  return false;
}

/** Whether a list or a map stands on lines of its own, or in brackets. */
export type YamlStyle = 'block' | 'flow';

/** The style in which what is put into this node is written. */
export function styleOf(node: Node | null | undefined): YamlStyle {
  return (isMap(node) || isSeq(node)) && node.flow ? 'flow' : 'block';
}

/**
 * A text as YAML on one line, for a place of this style: plain where every reader takes it for that text and nothing
 * in it steers a terminal, else in double quotes, as in the diary.
 */
export function scalarText(value: string, into: YamlStyle): string {
  const plain = stringify(value, {
    lineWidth: 0,
    compat: 'yaml-1.1',
    defaultKeyType: 'PLAIN',
    defaultStringType: 'PLAIN',
  }).trimEnd();
  const quoted = quote(value);
  const hidden = quoted !== JSON.stringify(value);
  const doubtful = plain !== value || hidden || (into === 'flow' && /[,[\]{}?:]/.test(value));
  return doubtful ? quoted : plain;
}

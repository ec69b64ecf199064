/** Whether data has a shape, and nothing more: what does not fit is told by the shape itself. */
import type { Plain } from '../yaml/spot.ts';

/** A shape as data, made from the schemas by trees.ts. A number is the place of another node in the same list. */
export type ShapeNode =
  | { is: 'anything' | 'text' | 'nothing' | 'never' }
  | { is: 'match'; pattern: string }
  | { is: 'word'; words: readonly string[] }
  | { is: 'any'; of: readonly number[] }
  | { is: 'list'; of: number; least: number; most: number | null }
  | { is: 'named'; pattern: string; of: number }
  | { is: 'keys'; of: Readonly<Record<string, number>>; must: readonly string[] };

const patterns = new Map<string, RegExp>();

function matches(pattern: string, text: string): boolean {
  const made = patterns.get(pattern) ?? new RegExp(pattern);
  patterns.set(pattern, made);
  return made.test(text);
}

/** True only if the shape that the node was made from takes the data. */
export function fits(nodes: readonly ShapeNode[], at: number, data: Plain): boolean {
  const node = nodes[at];
  switch (node?.is) {
    case 'anything':
      return true;
    case 'text':
      return typeof data === 'string';
    case 'nothing':
      return data === null;
    case 'match':
      return typeof data === 'string' && matches(node.pattern, data);
    case 'word':
      return typeof data === 'string' && node.words.includes(data);
    case 'any':
      return node.of.some((one) => fits(nodes, one, data));
    case 'list': {
      if (!Array.isArray(data) || data.length < node.least) return false;
      if (node.most !== null && data.length > node.most) return false;
      return data.every((item) => fits(nodes, node.of, item));
    }
    case 'named': {
      if (typeof data !== 'object' || data === null || Array.isArray(data)) return false;
      return Object.keys(data).every(
        (key) => matches(node.pattern, key) && fits(nodes, node.of, data[key] as Plain),
      );
    }
    case 'keys': {
      if (typeof data !== 'object' || data === null || Array.isArray(data)) return false;
      const known = (key: string) => {
        const of = Object.hasOwn(node.of, key) ? node.of[key] : undefined;
        return of !== undefined && fits(nodes, of, data[key] as Plain);
      };
      return Object.keys(data).every(known) && node.must.every((key) => Object.hasOwn(data, key));
    }
    default:
      return false;
  }
}

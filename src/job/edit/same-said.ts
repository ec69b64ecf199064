/** Whether two texts of a job file say the same of the machine. */
import { isFail, openDoc, plainOf, sameValue, type Value } from './doc.ts';

/** Diaries apart; an empty key, list or map, and a row of which nothing is known, say as little as none. */
export function saysSame(a: string, b: string): boolean {
  const [one, other] = [a, b].map(saidOf);
  return one !== undefined && other !== undefined && sameValue(one, other);
}

function saidOf(text: string): Value | undefined {
  const doc = openDoc(text);
  if (isFail(doc)) return undefined;
  const all = plainOf(doc.contents);
  if (!(all instanceof Map)) return all;
  return new Map(told([...all].filter(([key]) => key !== 'diary')));
}

function told(pairs: [string, Value][]): [string, Value][] {
  return pairs
    .map(([key, value]): [string, Value] => [
      key,
      value instanceof Map ? new Map(told([...value])) : value,
    ])
    .filter(([, value]) => !saysNothing(value));
}

function saysNothing(value: Value): boolean {
  if (typeof value === 'string') return /^[?\s]*$/.test(value);
  return value instanceof Map ? value.size === 0 : value.every(saysNothing);
}

/** The piece stands in the file, and nothing is said of it. */
export function standsBare(text: string, piece: string): boolean {
  const doc = openDoc(text);
  const all = isFail(doc) ? '' : plainOf(doc.contents);
  const pieces = all instanceof Map ? all.get('pieces') : undefined;
  const value = pieces instanceof Map ? pieces.get(piece) : undefined;
  return value !== undefined && saysNothing(value);
}

/** Whether there are more empty keys, or more empty lines behind one another, than before. */
export function emptier(before: string, after: string): boolean {
  return bareIn(after) > bareIn(before) || gapsIn(after) > gapsIn(before);
}

function bareIn(text: string): number {
  const doc = openDoc(text);
  const count = (value: Value): number => {
    if (saysNothing(value)) return 1;
    return value instanceof Map ? [...value.values()].reduce((sum, v) => sum + count(v), 0) : 0;
  };
  return isFail(doc) ? 0 : count(plainOf(doc.contents));
}

const gapsIn = (text: string): number => [...text.matchAll(/\n(?=\r?\n\r?\n)/g)].length;

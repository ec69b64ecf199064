/** Changes of a file's data, whatever comes of it. */
import fc from 'fast-check';
import { keysOf, OWNERS } from '../../../src/job/form/help.ts';

export interface Change {
  /** Which of all places of the data, counted in order. */
  where: number;
  how: 'replace' | 'remove' | 'rename' | 'add' | 'double';
  key: string;
  value: unknown;
}

const KEYS = [...new Set(OWNERS.flatMap(keysOf))];
const anyKey = fc.oneof(
  fc.constantFrom(...KEYS, 'S', 'cover', '4', '4a', '0', '1000', 'on', 'toString', 'constructor'),
  fc.string({ maxLength: 4 }).filter((key) => key !== '__proto__'),
);
const anyValue = fc.oneof(
  fc.constantFrom<unknown>(null, true, false, 0, 1, 1.5, -1, 1000, 12345678, '', 'S', 'S S', '4'),
  fc.constantFrom<unknown>('true', 'on', 'all', 'stuck', 'head', 'k3Vb9xQe', 'a b', [], {}, [[]]),
  fc.constantFrom<unknown>(['S'], [1, 2], [1, 2, 3], { kind: 'S' }, { name: 'full' }, { do: 'x' }),
  fc.constantFrom<unknown>('2026-05-02T10:11:05+02:00', '2026-05-02', { removal: 'x' }, [null]),
  fc.jsonValue({ maxDepth: 2 }).filter((value) => !JSON.stringify(value).includes('__proto__')),
);
export const anyChange: fc.Arbitrary<Change> = fc.record({
  where: fc.nat(),
  how: fc.constantFrom('replace', 'replace', 'remove', 'rename', 'add', 'double'),
  key: anyKey,
  value: anyValue,
});

/** The data with plain objects, as a clone can carry them. */
export function plainCopy(data: unknown): unknown {
  return JSON.parse(JSON.stringify(data));
}

type Holder = Record<string, unknown>;

function placesOf(data: unknown): { holder: Holder; key: string }[] {
  if (typeof data !== 'object' || data === null) return [];
  const holder = data as Holder;
  return Object.keys(holder).flatMap((key) => [{ holder, key }, ...placesOf(holder[key])]);
}

/** A change whose value nothing else holds: two changes could make a circle of it. */
export const fresh = (change: Change): Change => ({
  ...change,
  value: structuredClone(change.value),
});

export function changed(data: unknown, { where, how, key, value }: Change): unknown {
  const places = placesOf(data);
  const place = places[where % (places.length + 1)];
  if (!place) return how === 'replace' ? value : data;
  const { holder, key: old } = place;
  const inner = holder[old];
  if (how === 'replace') holder[old] = value;
  else if (how === 'add' && typeof inner === 'object' && inner !== null) {
    if (Array.isArray(inner)) inner.push(value);
    else (inner as Holder)[key] = value;
  } else if (Array.isArray(holder)) {
    if (how === 'double') holder.push(structuredClone(inner));
    else holder.splice(Number(old), 1);
  } else {
    if (how !== 'double') delete holder[old];
    if (how !== 'remove') holder[key] = inner;
  }
  return data;
}

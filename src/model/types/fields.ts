/** What the fields of a thing are where the file says nothing of it. */
import { fieldOf, type Keys, keyRows } from '../keys/key-row.ts';
import type { ValueName } from '../keys/values.ts';
import type { FieldsOf, Values } from './upper.ts';

/** The value of a key that the file does not mention, made anew for each thing; null for a kind of value without a field. */
const EMPTY: {
  readonly [V in ValueName]: [Values[V]] extends [never] ? null : () => Values[V];
} = {
  text: () => null,
  title: () => '',
  called: () => '',
  texts: () => [],
  truth: () => false,
  torque: () => null,
  length: () => null,
  depth: () => null,
  number: () => null,
  pieceNames: () => [],
  stepNames: () => [],
  holeNames: () => [],
  order: () => null,
  row: () => null,
  ways: () => ({ removal: [], fitting: [] }),
  picture: () => null,
  pitch: () => null,
  place: () => null,
  passes: () => null,
  care: () => null,
  holes: () => new Map(),
  kinds: () => new Map(),
  pieces: () => new Map(),
  tasks: () => new Map(),
  buys: () => new Map(),
  suspects: () => new Map(),
  checks: () => new Map(),
  likely: () => null,
  version: () => 1,
  word: null,
  verb: null,
  amount: null,
  chance: null,
  harm: null,
  entries: null,
};

/** All fields of a thing of which the file says nothing. */
export function bareFields<T extends Keys>(keys: T): FieldsOf<T> {
  const fields = keyRows(keys).flatMap(([key, row]) => {
    const empty = EMPTY[row.value];
    return empty === null ? [] : [[fieldOf(key, row), empty()]];
  });
  return Object.fromEntries(fields) as FieldsOf<T>;
}

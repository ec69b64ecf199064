/** One line for every key of a job file: what it is, what it takes, and an example. Editors show it, faults quote it. */

import type { Keys } from '../../model/keys/key-row.ts';
import {
  AMOUNT_KEYS,
  BUY_KEYS,
  CHECK_KEYS,
  FILE_KEYS,
  HARM_KEYS,
  HOLE_KEYS,
  ITEM_KEYS,
  KIND_KEYS,
  PASS_KEYS,
  PIECE_KEYS,
  SUSPECT_KEYS,
  TASK_KEYS,
  WAY_KEYS,
} from '../../model/keys/keys.ts';
import { TAKES } from '../../model/keys/values.ts';
import { ENTRY_ROWS } from '../../model/verbs/beside.ts';

export interface Help {
  /** What it is. */
  is: string;
  /** What stands behind it: `a text`. */
  takes: string;
  /** An example, as a line of the file. */
  like: string;
}

/** Every mapping of a job file: what it is called in a message, and its keys. */
const MAPPINGS = {
  file: ['a job file', FILE_KEYS],
  kind: ['a kind of bolt', KIND_KEYS],
  piece: ['a piece', PIECE_KEYS],
  item: ['a bolt in a row', ITEM_KEYS],
  steps: ['a caution or tip', WAY_KEYS],
  hole: ['a hole', HOLE_KEYS],
  pass: ['a pass', PASS_KEYS],
  task: ['a task', TASK_KEYS],
  buy: ['a thing to buy', BUY_KEYS],
  suspect: ['a suspect', SUSPECT_KEYS],
  check: ['a check', CHECK_KEYS],
  cost: ['a cost', AMOUNT_KEYS],
  risk: ['a cost', HARM_KEYS],
} as const satisfies Record<string, readonly [string, Keys]>;

/** A mapping with keys of its own in the table. */
export type Mapping = keyof typeof MAPPINGS;
export type Owner = Mapping | 'entry';
export const OWNERS = [...Object.keys(MAPPINGS), 'entry'] as readonly Owner[];

/** What a mapping is called in a message. */
export function calledOf(owner: Owner): string {
  return owner === 'entry' ? 'an entry of the diary' : MAPPINGS[owner][0];
}

/** The rows of a mapping's keys. */
export function rowsFor(owner: Mapping): Keys {
  return MAPPINGS[owner][1];
}

/** The keys of a mapping in their order. */
export function keysOf(owner: Owner): string[] {
  return Object.keys(owner === 'entry' ? ENTRY_ROWS : MAPPINGS[owner][1]);
}

export function helpFor(owner: Owner, key: string): Help | null {
  if (owner === 'entry') {
    return Object.hasOwn(ENTRY_ROWS, key) ? (ENTRY_ROWS[key] ?? null) : null;
  }
  const keys = rowsFor(owner);
  const row = Object.hasOwn(keys, key) ? keys[key] : undefined;
  return row ? { is: row.is, takes: row.takes ?? TAKES[row.value], like: row.like } : null;
}

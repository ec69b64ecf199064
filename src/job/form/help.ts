/** One line for every key of a job file: what it is, what it takes, and an example. Editors show it, faults quote it. */
import type { Keys } from '../../model/key-row.ts';
import {
  BUY_KEYS,
  FILE_KEYS,
  HOLE_KEYS,
  ITEM_KEYS,
  KIND_KEYS,
  PASS_KEYS,
  PIECE_KEYS,
  TASK_KEYS,
  WAY_KEYS,
} from '../../model/keys.ts';
import { TAKES } from '../../model/values.ts';

export interface Help {
  /** What it is. */
  is: string;
  /** What stands behind it: `a text`. */
  takes: string;
  /** An example, as a line of the file. */
  like: string;
}

const help = (is: string, takes: string, like: string): Help => ({ is, takes, like });
const TEXT = 'a text';

const ENTRY = {
  at: help('When.', 'a time with its offset', 'at: 2026-04-11T18:25:40+02:00'),
  id: help('Eight characters of its own.', 'eight characters', 'id: k3Vb9xQe'),
  piece: help('Which piece.', 'the name of a piece', 'piece: alternator'),
  hole: help('Which hole or holes.', 'a hole or a list of holes', 'hole: 9'),
  task: help('Which task.', 'the name of a task', 'task: drain'),
  buy: help('Which thing to buy.', 'a name under buy:', 'buy: gasket'),
  out: help('The row that came out; ! still in, - found empty.', 'a row', 'out: "S S M+clip !"'),
  in: help('The row that went in, by fingers.', 'a row', 'in: M+clip'),
  tight: help('The pass that was done.', 'the name of a pass', 'tight: full'),
  state: help('What is wrong with the hole, or that it is mended.', 'one word', 'state: stuck'),
  settle: help('What belongs there.', 'a kind', 'settle: M+clip'),
  removed: help('The piece came away.', 'all or aside', 'removed: all'),
  fitted: help('The piece is on its place.', 'all', 'fitted: all'),
  done: help('A task is done, or something is here.', TEXT, 'done: passed'),
  note: help('What somebody noted.', TEXT, 'note: "soaking, heat tomorrow"'),
  photo: help('A photograph.', 'where it lies', 'photo: photos/p104.jpg'),
  inside: help('What went into an opening.', 'how many of what', 'inside: 2 rags'),
  cleared: help('What came out of it again.', 'how many of what, or all', 'cleared: 1 rag'),
  seen: help('A moment and what was looked at.', 'a moment and a name', 'seen: sealing faces'),
  struck: help('What does not count here.', 'a moment and a name', 'struck: sealing wrench'),
  added: help('Something more to look at, in says.', 'a moment', 'added: sealing'),
  written: help('A text was put into this key, in says.', 'a key', 'written: routes'),
  corrected: help('What is printed and not so here.', 'what it is', 'corrected: torque'),
  undo: help('Takes another entry back.', 'the id of an entry', 'undo: bZ4yK1uW'),
  tray: help('Where the bolts lie.', TEXT, 'tray: cup 2'),
  set: help('What it was set to.', TEXT, 'set: 10 N·m'),
  was: help('What it was before.', TEXT, 'was: 35 mm'),
  result: help('What a test gave.', TEXT, 'result: dry'),
  limit: help('The limit that the reading was held against.', TEXT, 'limit: 0.8..1.2 ohm'),
  judged: help('How the reading keeps to it, and who said so.', TEXT, 'judged: within'),
  promised: help('When it is to come.', TEXT, 'promised: 2026-04-25'),
  taken: help('When a photograph was taken.', TEXT, 'taken: 2026-04-11T18:20:00+02:00'),
  says: help('What the person says.', TEXT, 'says: "heat tomorrow"'),
  because: help('Why a refusal was overruled.', TEXT, 'because: "manual says so"'),
};

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
} as const satisfies Record<string, readonly [string, Keys]>;

export type Owner = keyof typeof MAPPINGS | 'entry';
export const OWNERS = [...Object.keys(MAPPINGS), 'entry'] as readonly Owner[];

/** What a mapping is called in a message. */
export function calledOf(owner: Owner): string {
  return owner === 'entry' ? 'an entry of the diary' : MAPPINGS[owner][0];
}

/** The keys of a mapping in their order. */
export function keysOf(owner: Owner): string[] {
  return Object.keys(owner === 'entry' ? ENTRY : MAPPINGS[owner][1]);
}

export function helpFor(owner: Owner, key: string): Help | null {
  if (owner === 'entry') return Object.hasOwn(ENTRY, key) ? ENTRY[key as keyof typeof ENTRY] : null;
  const keys: Keys = MAPPINGS[owner][1];
  const row = Object.hasOwn(keys, key) ? keys[key] : undefined;
  return row ? { is: row.is, takes: row.takes ?? TAKES[row.value], like: row.like } : null;
}

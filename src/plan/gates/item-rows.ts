/**
 * The names that items of a gate have in the diary, one row each. Behind a name may stand what it is about:
 * `loose-2`, `task-fit-seal`. A name without a row does not compile.
 */
import type { Care, Correctable } from '../../model/types.ts';

interface ItemRow {
  /** Which texts of the file its words are made from, so that one can say "not so here"; null: none. */
  from: FromPiece | FromTask | null;
  /** While it is open the closing of its piece is asked for, joint or not. */
  keepsOpen: boolean;
}

interface FromPiece {
  piece: Correctable;
  /** All texts of that key, the one with the number of the item, that one of its way, or the part of one. */
  which: 'all' | 'nth' | 'way' | 'part';
}

interface FromTask {
  task: readonly Correctable[];
}

const own: ItemRow = { from: null, keepsOpen: false };
const ofPiece = (piece: Correctable, which: FromPiece['which']): ItemRow => {
  return { from: { piece, which }, keepsOpen: false };
};
const ofTask = (...task: Correctable[]): ItemRow => ({ from: { task }, keepsOpen: false });

/** What is dangerous about a piece, at its step and again before the start. */
const OF_CARES: Readonly<Record<Care, ItemRow>> = {
  head: own,
  case: own,
  cap: own,
  brake: own,
  steering: own,
  structure: own,
  wheel: own,
  suspension: own,
  spring: own,
  fuel: own,
  battery: own,
  mains: own,
  blade: own,
  lift: own,
  airbag: own,
};

const ROWS = {
  ...OF_CARES,
  // At each moment.
  unread: own,
  // Before the first bolt.
  cold: own,
  lead: own,
  'plug-lead': own,
  weight: own,
  // Before prying.
  over: own,
  connected: own,
  along: own,
  with: own,
  // Before prying and before the joint is made.
  bolts: own,
  marks: ofPiece('marks', 'all'),
  routes: ofPiece('routes', 'all'),
  loose: ofPiece('loose', 'nth'),
  caution: ofPiece('caution', 'way'),
  maker: own,
  pressure: own,
  hot: own,
  magnet: own,
  // Before the joint is made.
  settled: own,
  threads: own,
  part: own,
  faces: own,
  blind: own,
  wet: own,
  joint: ofPiece('joint', 'part'),
  lip: own,
  position: own,
  clear: own,
  locker: own,
  wrench: ofPiece('torque', 'all'),
  hurry: own,
  // Before it closes.
  inside: { from: null, keepsOpen: true },
  elsewhere: own,
  under: own,
  task: { ...ofTask('step'), keepsOpen: true },
  tangs: own,
  tools: own,
  lamp: own,
  // Before the start.
  fluid: own,
  fill: ofTask('step'),
  levels: own,
  tight: own,
  round: own,
  torque: own,
  thread: own,
  other: own,
  once: own,
  fitted: own,
  off: own,
  'part-back': own,
  trouble: own,
  adjust: ofTask('step', 'limit'),
  wait: ofTask('step'),
  cure: own,
  cable: own,
  lever: own,
  air: own,
  stand: own,
  near: own,
  // Somebody's own.
  added: own,
} as const satisfies Readonly<Record<string, ItemRow>>;

export type ItemName = keyof typeof ROWS;
/** A name, with what it is about behind it. */
export type ItemKey = ItemName | `${ItemName}-${string}`;

const NAMES = (Object.keys(ROWS) as ItemName[]).sort((a, b) => b.length - a.length);

/** `task-fit-seal` is `task` and `fit-seal`; null for a key that no item has. */
export function itemOf(key: string): { name: ItemName; about: string; row: ItemRow } | null {
  const name = NAMES.find((n) => key === n || key.startsWith(`${n}-`));
  return name === undefined ? null : { name, about: key.slice(name.length + 1), row: ROWS[name] };
}

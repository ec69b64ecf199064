/**
 * The words that all rooms share: what a job file says (the upper part), what happened (the diary),
 * and where things stand (the fold of the second over the first). Types only, no behaviour.
 */

export * from './types-upper.ts';
export type * from './types-wish.ts';

import { TROUBLES, type Trouble } from './troubles.ts';
import type { PieceSpec, RowItem, TaskSpec, Upper } from './types-upper.ts';

// ---------------------------------------------------------------- the diary

export { TROUBLES, type Trouble } from './troubles.ts';
/** What `hole … STATE` can say: a trouble, or that it is mended. */
export const HOLE_STATES = [...TROUBLES, 'mended'] as unknown as readonly [HoleSays, ...HoleSays[]];
export type HoleSays = Trouble | 'mended';

/** The closed set of verbs; an entry has exactly one of them as a key. */
export const VERBS = [
  'out', // row of kinds that came out
  'in', // row of kinds that went in, by fingers
  'tight', // name of the pass
  'state', // a trouble, or mended
  'settle', // what belongs there
  'removed', // all | aside: the piece came away
  'fitted', // all: the piece is on its place
  'done', // a task: done | passed | failed | text; a thing to buy: how far it has come
  'inside', // what went into an opening: 2 rags
  'cleared', // what came out of it again, or all
  'seen', // an item of a gate: sealing faces
  'struck', // an item of a gate that does not count here
  'added', // an item of a gate of one's own, in `says`
  'written', // a key of the piece in the person's part that a text was put into; the text in `says`
  'corrected', // what is printed and not so here; as printed in `was`, what is true in `says`
  'note', // text
  'keep', // id of another entry that is worth knowing next time
  'taken', // the file of an earlier job that something of this piece was taken over from
  'reading', // what the machine's counter says: 41400 km, 120 h
  'undo', // id of another entry
] as const;
export type Verb = (typeof VERBS)[number];

/** Keys of a piece that a text can be put into without an editor. */
export const WRITABLE = [
  'under',
  'along',
  'bridges',
  'routes',
  'marks',
  'loose',
  'joint',
  'torque',
  'into',
  'takes',
  'sequence',
  'map',
] as const;
export type Writable = (typeof WRITABLE)[number];

/** What a manual can have wrong: of a piece, a hole of it, or a task (`step` is what is to be done). */
export const CORRECTABLE = [
  'torque',
  'passes',
  'sequence',
  'thick',
  'thread',
  'turns',
  'proud',
  'into',
  'caution',
  'tip',
  'joint',
  'loose',
  'marks',
  'routes',
  'note',
  'step',
  'limit',
  'when',
  'takes',
] as const;
export type Correctable = (typeof CORRECTABLE)[number];

/** What a figure, a caution or a step is about. */
export interface Subject {
  piece?: string;
  hole?: string;
  task?: string;
}

/** A figure, a caution or a step that is not so on this machine. Both are shown, the printed one struck. */
export interface Correction extends Subject {
  what: Correctable;
  /** As printed, with its page. */
  printed: string;
  /** What is true here. */
  says: string;
  /** Id and time of the living entry that says so last. */
  id: string;
  at: string;
}

/** Texts that may stand beside the verb. */
export const BESIDE = [
  'tray',
  'set',
  'was',
  'result',
  'limit',
  'judged',
  'promised',
  'says',
  'because',
] as const;
export type Beside = (typeof BESIDE)[number];

/** One line of the diary. At most one place: `piece` (and `hole`), `task` or `buy`. */
export interface Entry extends Partial<Record<Beside, string>> {
  at: string;
  id: string;
  piece?: string;
  /** Names of holes; absent: all of the piece in their order. */
  hole?: string[];
  task?: string;
  buy?: string;
  verb: Verb;
  /** `out`, `in`: a row of as many words as holes, or one word for all; `!` still in. Others: see VERBS. */
  value: string;
}

// ---------------------------------------------------------------- where things stand

export type HoleState = 'home' | 'out' | 'in' | 'tight' | 'conflict';
export type Where = 'home' | 'off' | 'open' | 'on' | 'tight' | 'tested';

/** What cannot be and yet stands in the diary, after a merge or an edit by hand. */
export interface Conflict {
  piece: string;
  hole: string;
  /** What the two entries say, in words. */
  say: string;
  ids: string[];
}

export interface HoleNow {
  name: string;
  /** What the file claims belongs here; null when it says nothing. */
  claim: RowItem | null;
  /** What was found here the last time a bolt came out; null when nothing was noted. */
  found: RowItem | null;
  /** What belongs here: settled, else the claim, else the find. */
  belongs: RowItem | null;
  /** File and find differ and nobody has said yet which is true. */
  unsettled: boolean;
  state: HoleState;
  /** What is in the hole now, as far as the diary knows: null when out. */
  holds: RowItem | null;
  /** Names of the passes done since it went in, in order, each once. */
  passes: string[];
  trouble: Trouble | null;
  conflict: Conflict | null;
  /** Id of the living entry that made the present state, null for home. */
  by: string | null;
}

export interface PieceNow {
  spec: PieceSpec;
  where: Where;
  /** 1 the first time it is off; a second time off is 2. */
  round: number;
  /** The piece itself: on its place, away, or moved out of the way and still connected. */
  away: 'no' | 'removed' | 'aside';
  /** Put on its place again in this round. */
  fitted: boolean;
  holes: HoleNow[];
  /** Where its bolts lie meanwhile. */
  tray: string | null;
  /** Time of the last entry on it, RFC 3339, or null. */
  last: string | null;
}

export interface TaskNow {
  spec: TaskSpec;
  /** `done`, `passed`, `failed` or the text given; null: open. */
  done: string | null;
  was: string | null;
  set: string | null;
  result: string | null;
  /** How its reading was held against its limit: see `Judged`; null where no limit was. */
  judged: string | null;
}

/** How far a thing to buy has come. */
export const BUY_STATES = [
  'wanted',
  'ordered',
  'here',
  'compared', // held against the old one, and the same
  'fitted',
  'wrong', // came, and does not fit
  'short', // fewer came than are needed
  'superseded', // the number is no longer sold; another stands beside it
] as const;
export type BuyState = (typeof BUY_STATES)[number];

/** The moments where jobs go wrong, each with its gate. */
export const MOMENTS = ['prying', 'sealing', 'closing', 'start'] as const;
export type Moment = (typeof MOMENTS)[number];

/** What went into the machine through an opening and has to come out. */
export interface Inside {
  /** The piece that closes the opening; null for the machine at large. */
  piece: string | null;
  /** Said of one: `rag`. */
  what: string;
  /** How many went in since the opening was last empty of them, and how many of those are inside still. */
  total: number;
  count: number;
  /** When the first of them went in. */
  since: string;
}

export interface Job {
  /** What the file says, with what is true here in the place of what was corrected. */
  upper: Upper;
  /** What was corrected, and how it is printed. */
  corrections: readonly Correction[];
  /** All entries in the order of the file, the undone ones too. */
  entries: readonly Entry[];
  /** Ids of the entries that count (not undone). */
  living: ReadonlySet<string>;
  /** Round of its piece in which an entry that counts stands, by the entry's id. */
  rounds: ReadonlyMap<string, number>;
  /** In the order of the file. */
  pieces: Map<string, PieceNow>;
  tasks: Map<string, TaskNow>;
  /** What is inside now. */
  inside: Inside[];
  conflicts: Conflict[];
}

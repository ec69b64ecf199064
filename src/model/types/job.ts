/** What happened on a job (the diary), and where things stand (the fold of the diary over what the file says). */

import type { Correctable } from '../keys/known-keys.ts';
import type { Trouble } from '../states/troubles.ts';
import type { Beside } from '../verbs/beside.ts';
import type { Verb } from '../verbs/verbs.ts';
import type { PieceSpec, RowItem, TaskSpec, Upper } from './upper.ts';

// ---------------------------------------------------------------- the diary

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

/** One line of the diary. At most one place: `piece` (and `hole`), `task`, `buy`, `check` or `suspect`. */
export interface Entry extends Partial<Record<Beside, string>> {
  at: string;
  id: string;
  piece?: string;
  /** Names of holes; absent: all of the piece in their order. */
  hole?: string[];
  task?: string;
  buy?: string;
  check?: string;
  suspect?: string;
  verb: Verb;
  /** `out`, `in`: a row of as many words as holes, or one word for all; `!` still in. Others: see `verbs.ts`. */
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
  /** A reason overruled what spoke against it. */
  overruled: boolean;
  /** A test that was noted before what it comes after was done: it is made again, and its mark proves nothing. */
  early: boolean;
}

/** The moments where jobs go wrong, each with its gate. */
export const MOMENTS = ['loosening', 'prying', 'sealing', 'closing', 'start'] as const;
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
  /** What the file says, with what is true here in the place of what was corrected; how that is printed stands beside each text. */
  upper: Upper;
  /** What the file says; the same as `upper` where nothing was corrected. */
  printed: Upper;
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
  /** Lines of the file that are not taken as they stand, by line: what they say does not count. */
  unread: readonly UnreadLine[];
}

/** `code`: of the fault, as `check` tells it. */
export interface UnreadLine {
  line: number;
  code: string;
}

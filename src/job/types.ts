/**
 * The words that all rooms share: what a job file says (the upper part), what happened (the diary),
 * and where things stand (the fold of the second over the first). Types only, no behaviour.
 */

// ---------------------------------------------------------------- values

/** A figure as printed: `10 N·m`, with its range if there is one. `unit` is spelled as the program prints it. */
export interface Quantity {
  value: number;
  /** Upper end where a range is printed (`8..12 N·m`), else null. */
  to: number | null;
  unit: string;
}

/** A torque as the manual prints it, and where: `10 N·m, manual 2-17`. */
export interface Torque {
  /** The whole text of the file. */
  text: string;
  /** Null when the figure could not be read (`see manual`). */
  quantity: Quantity | null;
  /** Where it is printed, or null. */
  where: string | null;
}

/** Usable thread below the joint face, mm: from > 0 where the hole is counterbored; `to` null when only the start is known. */
export interface ThreadDepth {
  from: number;
  to: number | null;
}

// ---------------------------------------------------------------- the upper part

/** A kind of bolt of this job: one letter for all bolts that are the same. */
export interface Kind {
  letter: string;
  /** As one would say it: `M6x25 flange, 8 mm`. */
  text: string;
  /** Thread name as written: `M6`, `M6x1`, `1/4-20`, `10-32 UNF`; null when not said. */
  thread: string | null;
  /** Length under the head in mm (inches converted), null when not said. */
  length: number | null;
  /** Length as written, with its unit if not mm: `25`, `1-1/2 in`. */
  lengthText: string | null;
  head: string | null;
  tool: string | null;
  /** Property class or grade as marked on the head: `8.8`, `A2-70`, `grade 5`. */
  class: string | null;
  /** Length of the threaded end in mm, null when not said (then taken as threaded all along). */
  threaded: number | null;
  leftHand: boolean;
  /** Never used twice (stretch bolts, precoated bolts). */
  once: boolean;
  note: string | null;
}

/** What one hole takes: the letter of a kind, and what lies under the head, from the head down. */
export interface RowItem {
  kind: string;
  with: string[];
}

export interface HoleSpec {
  name: string;
  note: string | null;
  /** Thickness from the seat of the head to the joint face, mm. */
  thick: number | null;
  thread: ThreadDepth | null;
  /** Turns from first bite until the head touches. */
  turns: number | null;
  /** How far the head stands off when the bolt is dropped in and not turned, mm. */
  proud: number | null;
  /** Place in mm, x right, y down, as seen from outside. */
  at: [number, number] | null;
  /** Own torque, where it differs from the piece's. */
  torque: Torque | null;
  /** Material that is tapped, where it differs from the piece's. */
  into: string | null;
  /** The hole opens into oil, fuel or another liquid. */
  wet: boolean;
  /** A group of holes with their own torque or turn in the order. */
  group: string | null;
}

/** Said before or beside a step. A plain text stands for both. */
export interface BeforeStep {
  removal: string[];
  fitting: string[];
}

/** One entry of `passes:`: `snug`, `part 5 N·m`, `full`, `angle 90°`, `final`, `again after 50 km`. */
export interface PassSpec {
  name: string;
  torque: Torque | null;
  /** Degrees, for an angle pass. */
  angle: number | null;
  /** When, for a pass that comes again later. */
  after: string | null;
}

export interface PieceSpec {
  key: string;
  /** Shown name: `name:` or the key with a capital and spaces. */
  name: string;
  under: string[];
  /** What belongs in the holes in their order, null when the file says nothing yet. Empty for a piece without bolts. */
  row: RowItem[] | null;
  torque: Torque | null;
  /** Material that the bolts go into. */
  into: string | null;
  thick: number | null;
  thread: ThreadDepth | null;
  joint: string[];
  loose: string[];
  caution: BeforeStep;
  tip: BeforeStep;
  marks: string[];
  routes: string[];
  tray: string | null;
  /** The picture of the holes, lines of cells; null: a ring. */
  map: string | null;
  /** Distance of the map's cells in mm, x and y; null: not measured. */
  pitch: [number, number] | null;
  /** Only what is special; names as texts. */
  holes: Map<string, HoleSpec>;
  /** The maker's order of tightening, as printed. */
  sequence: string[] | null;
  passes: PassSpec[] | null;
  care: Care | null;
  /** Holes that come first (dowels, a locating bolt). */
  first: string[];
  note: string | null;
}

/** Pieces whose order the maker alone can give. */
export type Care = 'head' | 'case' | 'cap' | 'brake' | 'steering' | 'structure' | 'spring';

export type TaskVerb = 'do' | 'wait' | 'adjust' | 'test' | 'decide';

export interface TaskSpec {
  key: string;
  verb: TaskVerb;
  /** What is to be done. */
  say: string;
  /** Steps: `alternator off`, `alternator on`, `drain`. */
  before: string[];
  after: string[];
  while: string[];
  limit: string | null;
  note: string | null;
}

export interface BuySpec {
  key: string;
  what: string;
  /** As written; null when not said. */
  price: string | null;
  count: string | null;
  from: string | null;
  once: boolean;
  /** Steps or pieces it is for. */
  for: string[];
  note: string | null;
}

export interface Upper {
  /** `putback:` of the file; this program writes version 1. */
  version: number;
  job: string;
  machine: string | null;
  complaint: string | null;
  found: string | null;
  done: string | null;
  kinds: Map<string, Kind>;
  pieces: Map<string, PieceSpec>;
  tasks: Map<string, TaskSpec>;
  buys: Map<string, BuySpec>;
}

// ---------------------------------------------------------------- the diary

export const TROUBLES = ['stuck', 'rounded', 'sheared', 'stud', 'pulled', 'empty'] as const;
export type Trouble = (typeof TROUBLES)[number];
/** What `hole … STATE` can say: a trouble, or that it is mended. */
export const HOLE_STATES = [...TROUBLES, 'mended'] as const;
export type HoleSays = (typeof HOLE_STATES)[number];

/** The closed set of verbs; an entry has exactly one of them as a key. */
export const VERBS = [
  'out', // row of kinds that came out
  'in', // row of kinds that went in, by fingers
  'tight', // name of the pass
  'state', // a trouble, or mended
  'settle', // what belongs there
  'removed', // all | aside: the piece came away
  'fitted', // all: the piece is on its place
  'done', // a task: done | passed | failed | text
  'note', // text
  'undo', // id of another entry
] as const;
export type Verb = (typeof VERBS)[number];

/** Texts that may stand beside the verb. */
export const BESIDE = ['tray', 'set', 'was', 'result', 'says', 'because'] as const;
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
}

export interface Job {
  upper: Upper;
  /** All entries in the order of the file, the undone ones too. */
  entries: readonly Entry[];
  /** Ids of the entries that count (not undone). */
  living: ReadonlySet<string>;
  /** Round of its piece in which an entry that counts stands, by the entry's id. */
  rounds: ReadonlyMap<string, number>;
  /** In the order of the file. */
  pieces: Map<string, PieceNow>;
  tasks: Map<string, TaskNow>;
  conflicts: Conflict[];
}

// ---------------------------------------------------------------- faults

export type Severity = 'error' | 'warning';

/** Something wrong in a file, with its place and the way out. */
export interface Fault {
  /** A code of the closed set in job/faults. */
  code: string;
  severity: Severity;
  file: string;
  /** From 1. */
  line: number;
  /** From 1, in characters. */
  column: number;
  /** What is wrong, in the trade's words. */
  say: string;
  /** The way out. */
  fix: string;
  /** The line of the file, and a caret below the place. */
  excerpt: string;
}

// ---------------------------------------------------------------- wishes and answers

/** What is in the hand: a kind (with what lies under its head, if said) or only a length in mm. */
export type Hand = { kind: string; with?: string[] } | { length: number };

/** What somebody wants to have noted; `judge` answers. Holes absent: all of the piece. */
export type Wish = WishWhat & {
  says?: string;
  /** Overrules a refusal, and stands in the entry. */
  because?: string;
};
export type WishWhat =
  | { do: 'out'; piece: string; holes?: string[]; row?: string; tray?: string }
  | { do: 'in'; piece: string; holes?: string[]; hand?: Hand }
  | { do: 'tight'; piece: string; holes?: string[]; pass?: string; set?: string }
  | { do: 'off' | 'aside' | 'on'; piece: string; tray?: string }
  | { do: 'state'; piece: string; hole: string; state: HoleSays }
  | { do: 'settle'; piece: string; hole: string; kind: string }
  | { do: 'done'; task: string; was?: string; set?: string; result?: string }
  | { do: 'note'; piece?: string; hole?: string; text: string }
  | { do: 'undo'; id?: string };

export interface Warning {
  code: string;
  say: string;
}

/** A change of the upper part, by meaning; `was` is what must stand there still. */
export type Edit =
  | { edit: 'piece'; piece: string }
  | { edit: 'kind'; letter: string; text: string }
  | { edit: 'row'; piece: string; row: string }
  | { edit: 'row-word'; piece: string; hole: string; index: number; was: string; word: string };

export interface Refusal {
  code: string;
  say: string;
  /** What the code carries beside it: `takes`, `inHand`, `belongs`, `holes`, `by`, `kinds`, `next`, `ids`. */
  data: Record<string, unknown>;
  /** False for wrong use (no such piece, hole, entry): exit 2, `because` does not help. */
  overrulable: boolean;
}

/** What `judge` answers. `entry: null` with `ok`: already so, nothing to write. */
export type Verdict =
  | { ok: true; entry: Entry | null; edits: Edit[]; warnings: Warning[] }
  | { ok: false; refused: Refusal };

/** What became of a wish that was to be written. Only `ok: true` may be shown as done: it is on disk. */
export type Recorded =
  | {
      ok: true;
      changed: boolean;
      entry: Entry | null;
      warnings: Warning[];
      /** As it stands with the mark. */
      job: Job;
      /** As it stood just before. */
      before: Job;
    }
  | { ok: false; refused: Refusal; job: Job }
  /** The file cannot be read as a job: nothing was written. */
  | { ok: false; faults: Fault[] }
  /** The mark could not be saved; the file is as it was. */
  | { ok: false; unsaved: { code: string; say: string; fix: string } };

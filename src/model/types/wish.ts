/** What can be wrong with a file, what somebody wants noted, and what became of it. Types only. */
import type { Addable, TextKey } from '../keys/addable.ts';
import type { Correctable, Writable } from '../keys/known-keys.ts';
import type { BuyState } from '../states/buys.ts';
import type { Choice, Looked, OldPart, Tried } from '../states/tracing.ts';
import type { HoleSays } from '../states/troubles.ts';
import type { Entry, Job, Moment } from './job.ts';

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

/** What is in the hand: a kind (with what lies under its head, if said) or only a length in mm. */
export type Hand = { kind: string; with?: readonly string[] } | { length: number };

/** What somebody wants to have noted; `judge` answers. Holes absent: all of the piece. */
export type Wish = WishWhat & {
  says?: string;
  /** Overrules a refusal, and stands in the entry. */
  because?: string;
};
export type WishWhat =
  | { do: 'out'; piece: string; holes?: string[]; row?: string; tray?: string }
  /**
   * `spares`: several at once, so holes that take something under the head which the hand lacks stay empty; says how such
   * a hole is marked then: `Space`.
   */
  | { do: 'in'; piece: string; holes?: string[]; hand?: Hand; spares?: string }
  | { do: 'tight'; piece: string; holes?: string[]; pass?: string; set?: string }
  | { do: 'off' | 'aside' | 'on'; piece: string; tray?: string }
  | { do: 'state'; piece: string; hole: string; state: HoleSays }
  | { do: 'settle'; piece: string; hole: string; kind: string }
  /** `add` writes a task that follows from the work and is not in the file yet; `advised`: what its figures said. */
  | ({ do: 'done'; task: string; advised?: string; add?: NewTask } & Measures)
  | { do: 'note'; piece?: string; hole?: string; text: string }
  /** `taken` is RFC 3339, by the camera's clock as it was put right; without it, when it was noted. */
  | { do: 'photo'; piece?: string; hole?: string; picture: string; taken?: string }
  /** Without an id the latest entry. */
  | { do: 'keep'; id?: string }
  | { do: 'reading'; reading: string }
  /**
   * Puts what an earlier job knows of a piece into the person's part; `from` is that job's file, `theirs` the piece there
   * where a person said so. `truths`: something is not so as it is printed here, and comes along as corrections.
   */
  | {
      do: 'take';
      piece: string;
      from: string;
      pairs: TakenPair[];
      theirs?: string;
      truths?: boolean;
    }
  | { do: 'inside' | 'cleared'; piece?: string; what: string }
  /** `item` is its name, or for `added` what is to be looked at. */
  | { do: 'gate'; moment: Moment; piece?: string; how: 'seen' | 'struck' | 'added'; item: string }
  | { do: 'buy'; buy: string; state: BuyState; promised?: string; tray?: string; add?: NewBuy }
  /** Puts a text into a key of the piece: one more where the key takes several; the picture and the order anew. */
  | { do: 'write'; piece: string; key: Writable; text: string }
  /** Another letter for a kind, everywhere. */
  | { do: 'rename'; kind: string; to: string }
  /** One line into the person's part, as what it is: a part, a task, a caution; a note into the diary. */
  | { do: 'add'; as: Addable; text: string; piece?: string; hole?: string }
  /** `printed`: which one, where there are several; the start of it is enough. `came`: with what was taken over. */
  | {
      do: 'correct';
      piece?: string;
      hole?: string;
      task?: string;
      what: Correctable;
      printed?: string;
      truth: string;
      came?: string;
    }
  /** Without `how` the reading and the check's limit say it. */
  | { do: 'look'; check: string; how?: Looked; reading?: string }
  /** What was put in to try; then how it went, and where the old one is. */
  | { do: 'try'; suspect: string; put: string }
  | { do: 'tried'; suspect: string; how?: Tried; old?: OldPart }
  /** A suspect or a check that is not in the file yet, with its fields. */
  | ({ do: 'list'; section: 'suspects' | 'checks' } & Named)
  /** A thing within reach while the piece is off. */
  | { do: 'choose'; piece: string; what: string; answer: Choice }
  /** What a question to decide is weighed by, as texts of the file; absent: not said. */
  | { do: 'figures'; task: string; texts: Readonly<Record<string, string>> }
  /** A list to start from, as much of it as is not in the file yet. */
  | { do: 'start'; say: string; suspects: readonly Named[]; checks: readonly Named[] }
  /** The suspect is what it was; what is to buy, to mend and to test follows from that and is not in the file yet. */
  | { do: 'found'; suspect: string; buy?: Named; mend?: Named; test?: Named; gone?: Named }
  /** `row`: that mark gave the piece its row, which goes with it if nobody changed it since. */
  | { do: 'undo'; id?: string };

/** What was measured or set. */
export interface Measures {
  was?: string;
  set?: string;
  result?: string;
}

/** Texts of a section's item by their keys, as they go into the file. */
export type Fields = Readonly<Record<string, string | readonly string[]>>;

export interface Named {
  key: string;
  fields: Fields;
}

/** A task that follows from what was disturbed: `{test: Weeps when hot?, after: cover on}`. */
export interface NewTask {
  verb: 'test' | 'adjust' | 'do';
  say: string;
  after: string;
}

/** A thing to buy that follows from what came off; `count` as written. */
export interface NewBuy {
  what: string;
  for: string;
  once?: true;
  count?: string;
}

export interface Warning {
  code: string;
  say: string;
}

export type NamedSection = 'tasks' | 'buy' | 'suspects' | 'checks';
/** What stands behind a key, as texts: what YAML calls scalars, lists and mappings. */
export type Said = string | Said[] | { [key: string]: Said };

/** A key that an earlier job fills: `['pieces', 'alternator', 'torque']`, `['bolts', 'L']`. */
export interface TakenPair {
  path: string[];
  value: Said;
}

/** A change of the upper part, by meaning; `was` is what must stand there still. */
export type Edit =
  | { edit: 'piece'; piece: string }
  /** A task, a thing to buy, a suspect or a check that is not in the file yet, with its fields. */
  | ({ edit: 'named'; section: NamedSection } & Named)
  /** Takes such a one out again; with `fields` as long as it says just this. Its section with the last one. */
  | { edit: 'unnamed'; section: NamedSection; key: string; fields?: Fields }
  /** A figure of a question to decide instead of what stood there; null: it is not said. */
  | { edit: 'figure'; task: string; key: string; text: string | null }
  /** The text of a key of the file itself instead of what stood there; null: the key is not there. */
  | { edit: 'top'; key: 'found'; was: string | null; text: string | null }
  | { edit: 'kind'; letter: string; text: string }
  /** Takes a kind out again, as long as it is said to be just this. */
  | { edit: 'unkind'; letter: string; text: string }
  /** The letter of a kind, where the kinds are listed. */
  | { edit: 'letter'; from: string; to: string }
  | { edit: 'row'; piece: string; row: string }
  /** Keys that are not there yet, with what stands behind them. */
  | { edit: 'pairs'; pairs: TakenPair[] }
  /** The same keys out again, each if it still says what its sum is of. */
  | { edit: 'pairs-out'; pairs: { path: string[]; sum: string }[] }
  /**
   * One more text in a key of a piece; `in: false` takes that text out again, and the key with its last one. `way`: of a
   * caution or tip that says its ways apart.
   */
  | { edit: 'text'; piece: string; key: TextKey; way?: Way; text: string; in: boolean }
  /** The one text of a key of a piece instead of what stood there; null: the key is not there. */
  | { edit: 'instead'; piece: string; key: Writable; was: string | null; text: string | null }
  | { edit: 'row-word'; piece: string; hole: string; index: number; was: string; word: string };

export type Way = 'removal' | 'fitting';

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

/** The text of the person's part before and after a mark: all above the first entry. */
export interface UpperChange {
  was: string;
  now: string;
}

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
      /** How the mark changed the person's part, where it did. */
      upper?: UpperChange;
    }
  | { ok: false; refused: Refusal; job: Job }
  /** The file cannot be read as a job: nothing was written. */
  | { ok: false; faults: Fault[] }
  /** The mark could not be saved; the file is as it was. */
  | { ok: false; unsaved: { code: string; say: string; fix: string } };

/** What was half done on the screens when they ended. */
export interface Half {
  /** Texts that were being typed, by what each is for. */
  drafts: Readonly<Record<string, string>>;
  /** Asked for, told as not saved, and not given up. */
  wish: Wish | null;
}

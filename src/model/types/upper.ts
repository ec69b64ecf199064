/**
 * What a job file says, once it is read: what each kind of value is, and the things that have the keys of the table as
 * their fields. A piece has holes and a file has pieces, so that all of it stands in one file.
 */

import type { KeyRow, Keys } from '../keys/key-row.ts';
import type {
  BUY_KEYS,
  CHECK_KEYS,
  FILE_KEYS,
  HOLE_KEYS,
  PIECE_KEYS,
  SUSPECT_KEYS,
  TASK_KEYS,
  TaskVerb,
} from '../keys/keys.ts';
import type { MeasureKey } from '../keys/known-keys.ts';
import type { Care } from '../states/cares.ts';
import type { Likely, WeighSpec } from '../states/tracing.ts';
import type {
  BeforeStep,
  Kind,
  PassSpec,
  RowItem,
  TextSaid,
  ThreadDepth,
  Torque,
} from './figures.ts';

export * from '../states/tracing.ts';
export * from './figures.ts';

/** What is read of each kind of value; `never`: it has no field of its own. */
export interface Values {
  /** One text on one line. */
  text: string | null;
  /** A text that every file has. */
  title: string;
  /** A name for people; where it is not said, the key with a capital and spaces. */
  called: string;
  texts: string[];
  truth: boolean;
  torque: Torque | null;
  /** mm. */
  length: number | null;
  depth: ThreadDepth | null;
  number: number | null;
  /** Keys of pieces. */
  pieceNames: string[];
  /** Steps as one writes them: `alternator off`, `drain`. */
  stepNames: string[];
  holeNames: string[];
  /** All holes in an order. */
  order: string[] | null;
  /** What belongs in the holes, in their order; null: the file says nothing; empty: a piece without bolts. */
  row: RowItem[] | null;
  /** Said before or beside a step, for each way. */
  ways: BeforeStep;
  /** Lines of cells. */
  picture: string | null;
  /** mm, across and down. */
  pitch: [number, number] | null;
  /** mm, to the right and down, as seen from outside. */
  place: [number, number] | null;
  passes: PassSpec[] | null;
  care: readonly (Care | 'none')[] | null;
  holes: Map<string, HoleSpec>;
  kinds: Map<string, Kind>;
  pieces: Map<string, PieceSpec>;
  tasks: Map<string, TaskSpec>;
  buys: Map<string, BuySpec>;
  suspects: Map<string, SuspectSpec>;
  checks: Map<string, CheckSpec>;
  /** A word, or a weight above zero. */
  likely: Likely | number | null;
  version: number;
  /** A word that must be there. No field of its own: what has it is read by hand. */
  word: never;
  /** The verb of a task, with what is to be done. */
  verb: never;
  /** What a question to decide is weighed by: money and time, a chance, both. In one field, `weigh`. */
  amount: never;
  chance: never;
  harm: never;
  entries: never;
}

/** What the kinds of values are behind a key that a manual can have wrong, where the text is the value. */
export interface SaidValues {
  text: TextSaid | null;
  texts: TextSaid[];
}

type Value<R extends KeyRow> = R extends {
  corrected: true;
  value: infer V extends keyof SaidValues;
}
  ? SaidValues[V]
  : Values[R['value']];

type FieldOf<K, R> = R extends { as: infer A extends string } ? A : K;

/** The keys as they are once read: a field each, but for those that are read by hand. */
export type FieldsOf<T extends Keys> = {
  -readonly [K in keyof T as [Values[T[K]['value']]] extends [never]
    ? never
    : FieldOf<K, T[K]>]: Value<T[K]>;
};

/**
 * Lengths, depths and turns as they are written, `1/2 in`, where they became mm or a figure; the order of tightening, where
 * it is printed otherwise.
 */
export type AsWritten = Partial<Record<MeasureKey | 'sequence', TextSaid>>;

/** Its keys: `HOLE_KEYS`. */
export interface HoleSpec extends FieldsOf<typeof HOLE_KEYS> {
  name: string;
  asWritten?: AsWritten;
}

/** Its keys: `PIECE_KEYS`. */
export interface PieceSpec extends FieldsOf<typeof PIECE_KEYS> {
  key: string;
  asWritten?: AsWritten;
}

/** Its keys: `TASK_KEYS`. */
export interface TaskSpec extends FieldsOf<typeof TASK_KEYS> {
  key: string;
  verb: TaskVerb;
  /** What is to be done. */
  say: TextSaid;
  /** Of a question to decide: what now and later cost; absent where nothing is said. */
  weigh?: WeighSpec;
}

/** Its keys: `BUY_KEYS`. */
export interface BuySpec extends FieldsOf<typeof BUY_KEYS> {
  key: string;
}

/** What it may be, as one would say it: `Float needle leaks`. Its keys: `SUSPECT_KEYS`. */
export interface SuspectSpec extends FieldsOf<typeof SUSPECT_KEYS> {
  key: string;
}

/** A look that comes out bad if it is one of some suspects, and good if it is none. Its keys: `CHECK_KEYS`. */
export interface CheckSpec extends FieldsOf<typeof CHECK_KEYS> {
  key: string;
}

/** What a job file says; its keys: `FILE_KEYS`. */
export interface Upper extends FieldsOf<typeof FILE_KEYS> {}

/** What a row of the table of keys says, and what follows from the rows. */
import type { CorrectedValue, ValueName, WrittenValue } from './values.ts';

interface Said {
  /** What it is: editors show it. */
  is: string;
  /** An example, as a line of the file: faults quote it. */
  like: string;
  /** What stands behind it, where its kind of value is said otherwise. */
  takes?: string;
  /** What has it is nothing without it. */
  must?: true;
  /** Of a task: only one with this verb has it. */
  only?: 'decide';
  /** The name of its field, where that is another. */
  as?: string;
  /** Read before its step, in this order (from 1), each way: put in the way first, or only good to know. */
  read?: { at: number; removal?: 'first' | 'beside'; fitting?: 'first' | 'beside' };
  /** Of names of pieces: what is named may stay where it is and be no piece of the job; only a slip is told. */
  mayStay?: true;
}

/** A key that is read and checked, and shown nowhere by a name of its own. */
interface Plain extends Said {
  value: ValueName;
  label?: never;
  corrected?: never;
  written?: never;
}

/** Shown on a screen under this name. */
interface Labelled extends Said {
  value: ValueName;
  label: string;
  corrected?: never;
  written?: never;
}

/** A manual can have it wrong. */
interface Corrected extends Said {
  value: CorrectedValue;
  label: string;
  corrected: true;
  written?: never;
  /** Of a hole: where the hole says nothing, what its piece says holds. */
  elseOfPiece?: true;
}

/** How somebody is asked for a text for this key. */
interface Asked {
  /** The question on a screen; the lines behind it help. */
  asks: readonly [string, ...string[]];
  /** Offered while nothing is said, in this order (from 1): what it is for. */
  offered?: readonly [number, string];
  /** Only where there are bolts. */
  ofBolts?: true;
}

/** A text can be written to it from a screen or a command. */
interface Written extends Said {
  value: WrittenValue;
  label: string;
  corrected?: never;
  written: Asked;
}

interface WrittenAndCorrected extends Said {
  value: WrittenValue & CorrectedValue;
  label: string;
  corrected: true;
  written: Asked;
}

/** One key of a job file. */
export type KeyRow = Plain | Labelled | Corrected | Written | WrittenAndCorrected;
export type Keys = Readonly<Record<string, KeyRow>>;

/** The names of the keys with this in their row. */
export type KeysWith<T extends Keys, Has> = {
  [K in keyof T]: T[K] extends Has ? K : never;
}[keyof T] &
  string;

/** Rows with their names, in the order of the table. */
export function keyRows<T extends Keys>(keys: T): [keyof T & string, KeyRow][] {
  return Object.entries(keys) as [keyof T & string, KeyRow][];
}

/** The names of the keys whose rows pass the test, in the order of the table. */
export function keysWith<T extends Keys>(keys: T, has: (row: KeyRow) => boolean) {
  return keyRows(keys).flatMap(([key, row]) => (has(row) ? [key] : []));
}

export function fieldOf(key: string, row: KeyRow): string {
  return row.as ?? key;
}

// ---------------------------------------------------------------- rows that many things have

/** Anything else that is to be said of it. */
export const note = <const L extends string>(like: L) =>
  ({ value: 'text', is: 'Anything else.', like }) as const;

/** A time, for work by hand unless it is said otherwise. */
export const takes = <const L extends string>(like: L, is = 'How long it takes by hand.') =>
  ({ value: 'text', takes: 'a time', is, like }) as const;

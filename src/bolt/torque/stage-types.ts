/** What a printed torque becomes, and how far its reading has come. */
import type { Quantity } from '../../model/types.ts';
import type { SaidAt } from './one-or-other.ts';

export type Stage =
  /** By fingers and wrist. */
  | { do: 'snug' }
  /** `most`: no more than that. */
  | { do: 'torque'; quantity: Quantity; most: boolean }
  /** Further, degrees; `to` is the upper end of a range, else null. */
  | { do: 'angle'; degrees: number; to: number | null }
  /** Back, degrees; null: until it is loose. */
  | { do: 'loosen'; degrees: number | null };

/** Shared: not to be changed. */
export interface Stages {
  stages: readonly Stage[];
  /** Figures in another unit that do not say the same as the one before them. */
  differ: readonly SaidAt[];
  /** What was not read, in its order. */
  rest: readonly SaidAt[];
  /** Where it is printed, and remarks without a figure: `manual 2-17`; null when nothing is said. */
  where: string | null;
  /** What it says of the thread: `oiled threads`, `dry`; null when nothing. */
  thread: string | null;
  /** It says that the bolt is used once: `new bolts`, `do not re-use`. */
  once: boolean;
}

export interface StagesSoFar extends Stages {
  stages: Stage[];
  differ: SaidAt[];
  rest: SaidAt[];
  text: string;
  /** What says that the bolt is new, and how many stages stand before it. */
  renewed: (SaidAt & { behind: number })[];
  /** A word that says that more is to be done, until it is said what. */
  promised: SaidAt | null;
  torques: { at: number; worth: number }[];
  threads: SaidAt[];
  /** Where the last stage that was read ends, with what stands beside it. */
  end: number;
  /** Figures without a unit, until one comes that has it. */
  waiting: (SaidAt & { value: number })[];
}

/** What one kind of words adds at a place of the text; how many characters of it were read, 0 for none. */
export type Reader = (left: string, reading: StagesSoFar, at: number) => number;

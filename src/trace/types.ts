/** What is asked of a trace, and what it answers: plain values, names as in the file. */

/** How often it is this, of those on the list: 4 : 2 : 1. */
export type TraceLikely = 'often' | 'now and then' | 'rarely';

/** What it may be. */
export interface Suspect {
  name: string;
  /** A word, or a weight above zero on the same scale; null where nobody knows: then like the mean of the others. */
  likely: TraceLikely | number | null;
  /** Minutes to put it right, where that proves itself; null where unknown. */
  repair: number | null;
}

/** A look that comes out bad if it is one of some suspects, and good if it is not. */
export interface Check {
  name: string;
  /** Minutes for the look alone; null where unknown. */
  takes: number | null;
  /** Suspects that it would show. */
  bad: readonly string[];
  /** A way up to here: suspects, and names of checks for all of the way up to theirs. It shows each of them. */
  along: readonly string[];
  /** Everything that must be off for it; what is off already is left out. */
  behind: readonly string[];
}

/** What must come off first for some checks. */
export interface Cover {
  name: string;
  /** Minutes until it is off; null where unknown. */
  takes: number | null;
}

export type Says = 'good' | 'bad' | 'unclear';

/** One look, as it came out. A list of them is in the order in which they were made. */
export interface TraceMark {
  check: string;
  says: Says;
}

export interface TraceInput {
  suspects: readonly Suspect[];
  checks: readonly Check[];
  covers: readonly Cover[];
  marks: readonly TraceMark[];
}

/** Among the answers wherever the list may not be all that it can be. */
export const NOT_LISTED = 'something that is not on the list';

/** Share of a suspect in words; `left`: the only one, `alike`: all that are left are equally likely. */
export type Share = TraceLikely | 'left' | 'alike' | 'cleared';

export interface Look {
  check: string;
  /** With what has to come off first. */
  minutes: number;
  /** What has to come off first. */
  opens: string[];
  /** What it can still be when the look comes out good, and bad. */
  good: string[];
  bad: string[];
}

/** The way by which it ends soonest: after each look the next one, or the names that are left. */
export interface TraceWay {
  check: string;
  minutes: number;
  opens: string[];
  good: TraceWay | string[];
  bad: TraceWay | string[];
}

export interface Expected {
  /** Minutes until one suspect is left or no check can tell the rest apart, in the mean over the chances. */
  minutes: number;
  /** No way takes less. */
  exact: boolean;
  /** No way can take less than this: `minutes` itself where exact. */
  bound: number;
  /** `minutes` over `bound`: 1 where exact, null where the bound is nothing. */
  ratio: number | null;
  /** `looks` where no time is known: each check counts as one. */
  unit: 'minutes' | 'looks';
}

export interface TraceConflict {
  /** Smallest sets of suspects that explain every bad look together; `NOT_LISTED` by itself is always one, the last. */
  diagnoses: string[][];
  /** Sets of checks that would have to be misread, smallest first; each leaves somebody on the list. */
  doubts: string[][];
  /** Of the smallest doubts the check that is made again soonest. */
  again: string | null;
  /** More than three at once might explain it too; such sets are not listed. */
  larger: boolean;
}

export type FaultCode =
  | 'unknown-suspect'
  | 'unknown-check'
  | 'unknown-cover'
  | 'circle'
  | 'shows-nothing'
  | 'weight'
  | 'twice'
  | 'too-many';

/** What of the input was left out of the answer. */
export interface TraceFault {
  code: FaultCode;
  /** Check or suspect where it stands; for a mark the name that it gives. */
  at: string;
  /** The name that means nothing, the checks of the circle, the weight, or the most that are read. */
  says: string;
}

export interface TraceAnswer {
  /** Those left, the likeliest first; then the cleared, each with the checks that speak against it. */
  suspects: { name: string; share: Share; cleared: string[] }[];
  /** Null where no look tells anything more. */
  next: Look | null;
  way: TraceWay | null;
  expected: Expected;
  /** Where all that is left cannot be told apart: the soonest look that would show it, or that it is something else. */
  proof: Look | null;
  /** Those left, in the order in which to put them right, where a repair proves itself. */
  order: string[];
  conflict: TraceConflict | null;
  /** What has no time, among what counts here: taken as the mean of the others. */
  untimed: { checks: string[]; covers: string[]; repairs: string[] };
  faults: TraceFault[];
}

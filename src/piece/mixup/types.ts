/** What is asked of a tray that does not match its holes, and what is answered. */
import type { Fit } from '../../bolt/fit/fit.ts';
import type { HoleState, Kind, RowItem } from '../../model/types.ts';

/** How many of each kind, by letter; kinds of which there are none are left out. */
export type Counts = Record<string, number>;

/** A kind in a hole, both by name; null where nothing can be said. */
export type FitOf = (kind: string, hole: string) => Fit | null;

/**
 * How hard a bolt `holds` in a hole for `takes` would have been to miss: 0 for one that nobody would see, more for one
 * that shows. `fits` are those of the holes that it can be in, as far as they are known.
 */
export type Hard = (takes: Kind, holds: Kind, fits: readonly Fit[]) => number;

export interface TrayHole {
  name: string;
  /** What belongs in it; null (or the kind `?`) when nobody knows. */
  takes: RowItem | null;
  /** `out` is empty, `home` was never out, any other holds a bolt that was put in. */
  state: HoleState;
  /** What the diary says was put in, where that is another kind on purpose. */
  holds?: RowItem | null;
  /** Height of the head, dropped in and not turned, as measured now; mm. */
  proud?: number | null;
}

export interface TrayInput {
  holes: readonly TrayHole[];
  /** What lies in the tray. */
  left: ReadonlyMap<string, number>;
  kinds: ReadonlyMap<string, Kind>;
  fitOf?: FitOf;
  /** `hardToMiss` unless given. */
  hard?: Hard;
}

export interface WrongHole {
  takes: string;
  holds: string;
  /** Names of the holes that it can be, as one counts. */
  among: readonly string[];
  /** How one look settles it. */
  look: string;
}

export interface Explanation {
  /** How many holes are wrong. */
  wrong: number;
  holes: WrongHole[];
  /** Sum over the wrong bolts; less ranks higher, because it would have been missed. */
  hard: number;
  /** Sum of the differences in length, mm. */
  difference: number;
}

export interface Mixup {
  /** More in the tray than empty holes take. */
  surplus: Counts;
  /** Fewer. */
  missing: Counts;
  /** Set when no bolts in wrong holes can make this tray; `over`: bolts too many, negative: too few. */
  count: { over: number; say: string } | null;
  /** Best first. Empty when nothing is to be explained, or `count` says why not. */
  explanations: Explanation[];
  /** False when there were more explanations than anybody reads, and some are left out. */
  complete: boolean;
  /** Where to look first, each hole once. */
  check: { hole: string; look: string }[];
  /** What a tray can never show; null when no two bolts could be swapped. */
  invisible: string | null;
  /** Holes of which nobody knows what they take, and which were left out of the count. */
  unknown: string[];
}

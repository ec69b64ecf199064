/** What a job file says of finding a fault, and of renewing a thing or leaving it. */

/** How often it is this one, in words, the likeliest first. */
export const LIKELY = ['often', 'now and then', 'rarely'] as const;
export type Likely = (typeof LIKELY)[number];

/** What it may be. */
export interface SuspectSpec {
  key: string;
  /** As one would say it: `Float needle leaks`. */
  what: string;
  /** A word, or a weight above zero; null where nothing or nothing readable is said. */
  likely: Likely | number | null;
  /** The piece that it sits in. */
  piece: string | null;
  /** What is needed to put it right: a name under `buy:`, or what to ask for. */
  part: string | null;
  /** How long it takes to put right: `30 min`. */
  takes: string | null;
  note: string | null;
}

/** A look that comes out bad if it is one of some suspects, and good if it is none of them. */
export interface CheckSpec {
  key: string;
  /** What is looked at: `Blue spark at the plug`. */
  check: string;
  /** What a reading must keep to. */
  limit: string | null;
  /** Suspects that it would show. */
  bad: string[];
  /** A way up to here: suspects, and checks for all of the way up to theirs. */
  along: string[];
  /** How long the look alone takes: `3 min`. */
  takes: string | null;
  /** Pieces that must be off for it. */
  under: string[];
  /** What must be so for it: `hot`, `running`, `in the dark`. */
  needs: string[];
  caution: string[];
  note: string | null;
}

/** Money and time, both as written. */
export interface AmountSpec {
  price: string | null;
  takes: string | null;
}

/** The figures of a `decide` task. */
export interface WeighSpec {
  now: AmountSpec | null;
  later: AmountSpec | null;
  /** That it fails before one is in here anyway: `1 in 6`, `rarely`. */
  chance: string | null;
  /** What touching it may break. */
  harm: (AmountSpec & { chance: string | null }) | null;
}

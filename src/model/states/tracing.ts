/** Words and figures of finding a fault, and of renewing a thing or leaving it. */

/** How a look came out. */
export const LOOKED = ['good', 'bad', 'unclear'] as const;
export type Looked = (typeof LOOKED)[number];

/** With the new part in: the trouble is the same, or gone. */
export const TRIED = ['same', 'gone', 'unclear'] as const;
export type Tried = (typeof TRIED)[number];

/** The old part went back, or the new one stays. */
export const OLD_PARTS = ['back', 'out'] as const;
export type OldPart = (typeof OLD_PARTS)[number];

/** What is done about a thing within reach. */
export const REACH_ANSWERS = ['look', 'renew', 'leave', 'ask'] as const;
export type Choice = (typeof REACH_ANSWERS)[number];

/** How often it is this one, in words, the likeliest first. */
export const LIKELY = ['often', 'now and then', 'rarely'] as const;
export type Likely = (typeof LIKELY)[number];

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

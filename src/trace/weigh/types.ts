/** What is asked of renew-it-or-leave-it, and what it answers. Money is in the bench's own, time in minutes. */

export interface Amount {
  /** In the money of the bench; null where unknown. */
  price: number | null;
  /** Minutes; null where unknown. */
  takes: number | null;
}

export interface WeighInput {
  /** To renew it now. */
  now: Amount;
  /** To renew it when it fails: with the way back to here and what is used once. */
  later: Amount;
  /** That it fails before one is in here anyway, in the person's words. */
  chance: string | null;
  /** What touching it may do; null where nothing is said of that. */
  harm: (Amount & { chance: string | null }) | null;
  /** Worth of an hour in that money, if the person says so. */
  hour: number | null;
  /** Someone may be hurt if it fails: brakes, steering, fuel lines, structure, lifting. */
  safety: boolean;
}

/** The texts and figures that may be missing. */
export type Unknown =
  | 'chance'
  | 'now.price'
  | 'now.takes'
  | 'later.price'
  | 'later.takes'
  | 'harm'
  | 'harm.chance'
  | 'harm.price'
  | 'harm.takes'
  | 'hour';

export type Advice = 'renew' | 'leave' | 'close';

/** `money` and `time` each by itself, `worth`: both, by the worth of an hour. */
export type Scale = 'money' | 'time' | 'worth';

export interface Weighed {
  /**
   * The chance from which renewing is cheaper; above 1 it never is, null where not known. `chance` is the one that
   * the advice goes by: that of `by`.
   */
  turning: { chance: number | null; money: number | null; time: number | null };
  said: { chance: number; rough: boolean } | null;
  /** Null where it cannot be said, or where money and time advise differently. */
  advice: Advice | null;
  /** What the advice goes by; `both`: money and time each by itself say the same. */
  by: Scale | 'both' | 'safety' | null;
  turnsAt: {
    /** The chance of harm at which the advice turns round; null where none does. */
    harm: number | null;
    /** The worth of an hour at which it turns; null where money and time agree, or it is said. */
    hour: number | null;
  };
  /** What is not known. First what may decide or turn the advice; what cannot turn it comes after. */
  unknown: Unknown[];
  /** How many of these may. */
  matter: number;
  /** Texts that were not read as a chance. */
  notRead: ('chance' | 'harm.chance')[];
}

/** What a row of the table of verbs says. */

/** The places an entry can be about. */
export const PLACES = ['piece', 'hole', 'task', 'buy', 'check', 'suspect'] as const;
export type EntryPlace = (typeof PLACES)[number];

export interface RowSaid {
  /** What it is: editors show it. */
  is: string;
  /** What stands behind it. */
  takes: string;
  /** An example, as it stands in a line: faults quote it. */
  like: string;
}

export interface VerbRow extends RowSaid {
  /** What it can be about: any one of these sets of places; `!` marks a place that must be named. */
  about: readonly (readonly (EntryPlace | `${EntryPlace}!`)[])[];
  /**
   * What its value is: a row of what was found or of bolts, a bolt, somebody's own words (always quoted), the id of
   * another entry, any text, or one of a few words.
   */
  value: 'found' | 'bolts' | 'bolt' | 'speech' | 'id' | 'text' | readonly [string, ...string[]];
  /**
   * What kind of mark it is. On a piece or its bolts: it changes that piece alone, and is taken back there. An answer at
   * a gate: taken back, the gate asks again. A text of what is known: its sentence tells both texts, and it was not found
   * on a round. Any other.
   */
  kind: 'piece' | 'gate' | 'known' | 'other';
  /** Something comes off, and a piece that was done begins another round; or it comes back on. */
  moves: 'off' | 'on' | null;
  /** Before the first start everything is looked at again. */
  disturbs: boolean;
  /** Nothing later rests on it, and it rests on nothing; but for what corrects it. */
  standsAlone: boolean;
  /**
   * Whose time it tells: what passed since the mark before it was taking its piece off, putting it on, or other work;
   * null: it was noted amid other work.
   */
  time: 'off' | 'on' | 'other' | null;
  /** Made with its piece in the hands: one is still at it, or done with it; null: made anywhere. */
  atHand: 'still' | 'last' | null;
  /** What one looks for later: a search shows it before other marks. */
  sought: boolean;
  /** It speaks of other entries or of the counter, also long after the work, and leaves the machine as it was. */
  afterwards: boolean;
  /** Its sentence begins with a word of ours, and so with a capital. */
  ownWords?: true;
  /** Its sentence has what it was before in it, as those of what is known have. */
  tellsBoth?: true;
  /** What it was before is for taking it back, and told nowhere else. */
  wasForBack?: true;
}

export type VerbRows = Readonly<Record<string, VerbRow>>;

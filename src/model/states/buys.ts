/** How far a thing to buy has come: one row a state, and what follows from it. */

interface Row {
  said: string;
  /** It is on the bench, and can go on. */
  here: boolean;
  /** Said of what came, or of its number: it stays to be read after the right one is here. */
  noGood: boolean;
  /** The day that was promised holds. */
  awaited: boolean;
}

const ROWS = {
  wanted: { said: 'not ordered yet', here: false, noGood: false, awaited: false },
  ordered: { said: 'ordered', here: false, noGood: false, awaited: true },
  here: { said: 'here', here: true, noGood: false, awaited: false },
  /** Held against the old one. */
  compared: {
    said: 'here, the same as the old one',
    here: true,
    noGood: false,
    awaited: false,
  },
  fitted: { said: 'fitted', here: true, noGood: false, awaited: false },
  wrong: { said: 'came, and does not fit', here: false, noGood: true, awaited: false },
  /** Fewer came than are needed. */
  short: { said: 'came short', here: false, noGood: true, awaited: true },
  /** The number is no longer sold; another stands beside it. */
  superseded: { said: 'has another number now', here: false, noGood: true, awaited: true },
} as const satisfies Record<string, Row>;

export type BuyState = keyof typeof ROWS;
/** In the order in which a thing comes through them, what goes wrong last. */
export const BUY_STATES = Object.keys(ROWS) as unknown as readonly [BuyState, ...BuyState[]];

export function buyRow(state: BuyState): Row {
  return ROWS[state];
}

/** What an entry about a thing to buy says of it; null where it is no such word. */
export function buyState(word: string): BuyState | null {
  return BUY_STATES.find((state) => state === word) ?? null;
}

export function isHere(state: BuyState): boolean {
  return ROWS[state].here;
}

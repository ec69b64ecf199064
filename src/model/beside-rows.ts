/** The texts that may stand beside a verb of the diary: one row each. */

export interface Said {
  /** What it is: editors show it. */
  is: string;
  /** What stands behind it. */
  takes: string;
  /** An example, as it stands in a line: faults quote it. */
  like: string;
}

interface BesideRow extends Said {
  /** Somebody's own words: always quoted. */
  speech?: true;
}

/** Texts that may stand beside the verb. */
export const BESIDE_ROWS = {
  tray: { is: 'Where the bolts lie.', takes: 'a text', like: 'tray: cup 2' },
  set: {
    is: 'What it was set to; a wrench, in its unit.',
    takes: 'a text',
    like: 'set: 89 lbf·in',
  },
  printed: {
    is: 'The torque as it is printed, and where.',
    takes: 'a text',
    like: 'printed: 10 N·m',
    speech: true,
  },
  was: { is: 'What it was before.', takes: 'a text', like: 'was: 35 mm' },
  result: { is: 'What a test gave.', takes: 'a text', like: 'result: dry' },
  old: { is: 'Where the old part is: back, or out.', takes: 'back or out', like: 'old: back' },
  limit: {
    is: 'The limit that the reading was held against.',
    takes: 'a text',
    like: 'limit: 0.8..1.2 ohm',
  },
  judged: {
    is: 'How the reading keeps to it, and who said so.',
    takes: 'a text',
    like: 'judged: within',
  },
  advised: {
    is: 'What the figures said of a question.',
    takes: 'a text',
    like: 'advised: renew it',
  },
  promised: { is: 'When it is to come.', takes: 'a text', like: 'promised: 2026-04-25' },
  taken: {
    is: 'When a photograph was taken, by a clock put right.',
    takes: 'a time with its offset',
    like: 'taken: 2026-04-11T18:20:00+02:00',
  },
  brought: { is: 'Letters that came with it.', takes: 'letters', like: 'brought: M' },
  says: {
    is: 'What the person says.',
    takes: 'a text',
    like: 'says: "heat tomorrow"',
    speech: true,
  },
  because: {
    is: 'Why a refusal was overruled.',
    takes: 'a text',
    like: 'because: "manual says so"',
    speech: true,
  },
} as const satisfies Readonly<Record<string, BesideRow>>;

/** What may stand beside the verb of an entry, one row each, and every key of an entry in the order of its line. */
import { type EntryPlace, type RowSaid, VERB_ROWS } from './verbs.ts';

interface BesideRow extends RowSaid {
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
  shot: {
    is: 'When a photograph was taken, by a clock put right.',
    takes: 'a time with its offset',
    like: 'shot: 2026-04-11T18:20:00+02:00',
  },
  brought: { is: 'Letters that came with it.', takes: 'letters', like: 'brought: M' },
  came: {
    is: 'The entry it came along with: it counts as long as that does.',
    takes: 'the id of an entry',
    like: 'came: k3Vb9xQe',
  },
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

export type Beside = keyof typeof BESIDE_ROWS;
export const BESIDE = Object.keys(BESIDE_ROWS) as readonly Beside[];

/** What every entry has, and what it can be about. */
const HEAD_ROWS = {
  at: { is: 'When.', takes: 'a time with its offset', like: 'at: 2026-04-11T18:25:40+02:00' },
  id: { is: 'Eight characters of its own.', takes: 'eight characters', like: 'id: k3Vb9xQe' },
  piece: { is: 'Which piece.', takes: 'the name of a piece', like: 'piece: alternator' },
  hole: { is: 'Which hole or holes.', takes: 'a hole or a list of holes', like: 'hole: 9' },
  task: { is: 'Which task.', takes: 'the name of a task', like: 'task: drain' },
  buy: { is: 'Which thing to buy.', takes: 'a name under buy:', like: 'buy: gasket' },
  check: { is: 'Which check.', takes: 'the name of a check', like: 'check: spark' },
  suspect: { is: 'Which suspect.', takes: 'the name of a suspect', like: 'suspect: plug' },
} as const satisfies Readonly<Record<'at' | 'id' | EntryPlace, RowSaid>>;

/** Every key of an entry, in the order of its line. */
export const ENTRY_ROWS: Readonly<Record<string, RowSaid>> = {
  ...HEAD_ROWS,
  ...VERB_ROWS,
  ...BESIDE_ROWS,
};

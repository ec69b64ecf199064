/**
 * What can happen on a job: the verbs of the diary, one row each, and the texts that may stand beside one. An entry has
 * exactly one verb as a key. To add a verb, add its row: the compiler then asks for its sentence, for what it does to a
 * piece, and for where it leads when it is taken back.
 */
import { WRITTEN } from '../keys/addable.ts';
import { CORRECTABLE } from '../keys/known-keys.ts';
import type { VerbRow, VerbRows } from './verb-row.ts';
import { PIECE_VERBS } from './verbs-piece.ts';
import { TRACE_VERBS } from './verbs-trace.ts';

export { type EntryPlace, PLACES, type RowSaid, type VerbRow } from './verb-row.ts';

/** What was seen to at a gate, or does not count there, or is asked there too. */
const AT_GATE = {
  about: [['piece!'], []],
  value: 'text',
  kind: 'gate',
  moves: null,
  disturbs: false,
  standsAlone: false,
  time: null,
  atHand: null,
  sought: false,
  afterwards: false,
} as const;

export const VERB_ROWS = {
  ...PIECE_VERBS,
  done: {
    is: 'A task is done, or something is here.',
    takes: 'a text',
    like: 'done: passed',
    about: [['task!'], ['buy!']],
    value: 'text',
    kind: 'other',
    moves: null,
    disturbs: false,
    standsAlone: false,
    time: 'other',
    atHand: null,
    sought: true,
    afterwards: false,
  },
  inside: {
    is: 'What went into an opening.',
    takes: 'how many of what',
    like: 'inside: 2 rags',
    about: [['piece!'], []],
    value: 'text',
    kind: 'other',
    moves: null,
    disturbs: true,
    standsAlone: false,
    time: 'other',
    atHand: 'still',
    sought: false,
    afterwards: false,
  },
  cleared: {
    is: 'What came out of it again.',
    takes: 'how many of what, or all',
    like: 'cleared: 1 rag',
    about: [['piece!'], []],
    value: 'text',
    kind: 'gate',
    moves: null,
    disturbs: false,
    standsAlone: false,
    time: 'other',
    atHand: 'last',
    sought: false,
    afterwards: false,
  },
  seen: {
    is: 'A moment and what was looked at.',
    takes: 'a moment and a name',
    like: 'seen: sealing faces',
    ...AT_GATE,
  },
  struck: {
    is: 'What does not count here.',
    takes: 'a moment and a name',
    like: 'struck: sealing wrench',
    ...AT_GATE,
  },
  added: {
    is: 'Something more to look at, in says.',
    takes: 'a moment',
    like: 'added: sealing',
    ...AT_GATE,
  },
  written: {
    is: 'A text was put in as this, in says.',
    takes: 'a key or a verb',
    like: 'written: routes',
    about: [['piece!', 'hole'], []],
    value: WRITTEN,
    kind: 'known',
    moves: null,
    disturbs: false,
    standsAlone: true,
    time: null,
    atHand: null,
    sought: true,
    afterwards: false,
  },
  renamed: {
    is: 'The letter of a kind from here on.',
    takes: 'a letter',
    like: 'renamed: L20',
    about: [[]],
    value: 'text',
    kind: 'other',
    moves: null,
    disturbs: false,
    standsAlone: false,
    time: null,
    atHand: null,
    sought: false,
    afterwards: false,
    wasForBack: true,
  },
  corrected: {
    is: 'What is printed and not so here.',
    takes: 'what it is',
    like: 'corrected: torque',
    about: [['piece!', 'hole'], ['task!']],
    value: CORRECTABLE,
    kind: 'known',
    moves: null,
    disturbs: false,
    standsAlone: true,
    time: null,
    atHand: null,
    sought: true,
    afterwards: false,
  },
  ...TRACE_VERBS,
  note: {
    is: 'What somebody noted.',
    takes: 'a text',
    like: 'note: "soaking, heat tomorrow"',
    about: [['piece!', 'hole'], ['task!'], ['buy!'], []],
    value: 'speech',
    kind: 'other',
    moves: null,
    disturbs: false,
    standsAlone: true,
    time: null,
    atHand: 'still',
    sought: true,
    afterwards: false,
  },
  photo: {
    is: 'A photograph: its path from the folder of the job, or a whole one.',
    takes: 'where it lies',
    like: 'photo: photos/p104.jpg',
    about: [['piece!', 'hole'], []],
    value: 'text',
    kind: 'other',
    moves: null,
    disturbs: false,
    standsAlone: true,
    time: null,
    atHand: null,
    sought: false,
    afterwards: false,
  },
  keep: {
    is: 'Which entry is worth knowing next time.',
    takes: 'the id of an entry',
    like: 'keep: bZ4yK1uW',
    about: [[]],
    value: 'id',
    kind: 'other',
    moves: null,
    disturbs: false,
    standsAlone: true,
    time: null,
    atHand: null,
    sought: true,
    afterwards: true,
  },
  taken: {
    is: 'From which earlier job something of this piece was taken over.',
    takes: 'a file',
    like: 'taken: cover-2025.yaml',
    about: [['piece!']],
    value: 'text',
    kind: 'known',
    moves: null,
    disturbs: false,
    standsAlone: true,
    time: null,
    atHand: null,
    sought: false,
    afterwards: false,
  },
  reading: {
    is: "What the machine's counter says.",
    takes: 'a figure with its unit',
    like: 'reading: 41400 km',
    about: [[]],
    value: 'text',
    kind: 'other',
    moves: null,
    disturbs: false,
    standsAlone: true,
    time: null,
    atHand: null,
    sought: true,
    afterwards: true,
  },
  undo: {
    is: 'Takes another entry back.',
    takes: 'the id of an entry',
    like: 'undo: bZ4yK1uW',
    about: [[]],
    value: 'id',
    kind: 'other',
    moves: null,
    disturbs: false,
    standsAlone: true,
    time: null,
    atHand: null,
    sought: false,
    afterwards: true,
  },
} as const satisfies VerbRows;

/** Beside a task with a limit that was let through with nothing measured: how it was judged. */
export const NO_READING = 'no reading';

export type Verb = keyof typeof VERB_ROWS;
/** In the order in which they stand in an entry's keys. */
export const VERBS = Object.keys(VERB_ROWS) as unknown as readonly [Verb, ...Verb[]];

export function verbRow(verb: Verb): VerbRow {
  return VERB_ROWS[verb];
}

/** Its value names kinds: a row of them, or the one that belongs in a hole. */
export function namesKinds(verb: Verb): boolean {
  return (['found', 'bolts', 'bolt'] as VerbRow['value'][]).includes(verbRow(verb).value);
}

/** The words that it can be, where there are a few; null for any other text. */
export function verbWords(verb: Verb): readonly [string, ...string[]] | null {
  const { value } = verbRow(verb);
  return typeof value === 'string' ? null : value;
}

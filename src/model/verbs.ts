/**
 * What can happen on a job: the verbs of the diary, one row each, and the texts that may stand beside one. An entry has
 * exactly one verb as a key. A row more is a verb more: the compiler then asks for its sentence, for what it does to a
 * piece, and for where it leads when it is taken back.
 */
import { WRITTEN } from './addable.ts';
import { CORRECTABLE } from './known-keys.ts';
import { HOLE_STATES } from './troubles.ts';
import { LOOKS } from './types-trace.ts';

/** The places an entry can be about. */
export const PLACES = ['piece', 'hole', 'task', 'buy', 'check', 'suspect'] as const;
export type Place = (typeof PLACES)[number];

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
  about: readonly (readonly (Place | `${Place}!`)[])[];
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
  /** Its sentence begins with a word of ours, and so with a capital. */
  ownWords?: true;
  /** Its sentence has what it was before in it, as those of what is known have. */
  tellsBoth?: true;
  /** What it was before is for taking it back, and told nowhere else. */
  wasForBack?: true;
}

type Rows = Readonly<Record<string, VerbRow>>;

export const VERB_ROWS = {
  out: {
    is: 'The row that came out; ! still in, - found empty.',
    takes: 'a row',
    like: 'out: "S S M+clip !"',
    about: [['piece!', 'hole']],
    value: 'found',
    kind: 'piece',
    moves: 'off',
    disturbs: true,
    standsAlone: false,
    wasForBack: true,
  },
  in: {
    is: 'The row that went in, by fingers.',
    takes: 'a row',
    like: 'in: M+clip',
    about: [['piece!', 'hole']],
    value: 'bolts',
    kind: 'piece',
    moves: 'on',
    disturbs: true,
    standsAlone: false,
  },
  tight: {
    is: 'The pass that was done.',
    takes: 'the name of a pass',
    like: 'tight: full',
    about: [['piece!', 'hole']],
    value: 'text',
    kind: 'piece',
    moves: null,
    disturbs: false,
    standsAlone: false,
  },
  state: {
    is: 'What is wrong with the hole, or that it is mended.',
    takes: 'one word',
    like: 'state: stuck',
    about: [['piece!', 'hole!']],
    value: HOLE_STATES,
    kind: 'piece',
    moves: null,
    disturbs: true,
    standsAlone: false,
  },
  settle: {
    is: 'What belongs there.',
    takes: 'a kind',
    like: 'settle: M+clip',
    about: [['piece!', 'hole!']],
    value: 'bolt',
    kind: 'piece',
    moves: null,
    disturbs: false,
    standsAlone: false,
    wasForBack: true,
  },
  removed: {
    is: 'The piece came away.',
    takes: 'all or aside',
    like: 'removed: all',
    about: [['piece!']],
    value: ['all', 'aside'],
    kind: 'piece',
    moves: 'off',
    disturbs: true,
    standsAlone: false,
    ownWords: true,
  },
  fitted: {
    is: 'The piece is on its place.',
    takes: 'all',
    like: 'fitted: all',
    about: [['piece!']],
    value: ['all'],
    kind: 'piece',
    moves: 'on',
    disturbs: true,
    standsAlone: false,
    ownWords: true,
  },
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
  },
  seen: {
    is: 'A moment and what was looked at.',
    takes: 'a moment and a name',
    like: 'seen: sealing faces',
    about: [['piece!'], []],
    value: 'text',
    kind: 'gate',
    moves: null,
    disturbs: false,
    standsAlone: false,
  },
  struck: {
    is: 'What does not count here.',
    takes: 'a moment and a name',
    like: 'struck: sealing wrench',
    about: [['piece!'], []],
    value: 'text',
    kind: 'gate',
    moves: null,
    disturbs: false,
    standsAlone: false,
  },
  added: {
    is: 'Something more to look at, in says.',
    takes: 'a moment',
    like: 'added: sealing',
    about: [['piece!'], []],
    value: 'text',
    kind: 'gate',
    moves: null,
    disturbs: false,
    standsAlone: false,
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
  },
  looked: {
    is: 'How a look came out; with a new part in, bad is that the trouble is gone.',
    takes: 'good, bad or unclear',
    like: 'looked: good',
    about: [['check!'], ['suspect!']],
    value: LOOKS,
    kind: 'other',
    moves: null,
    disturbs: false,
    standsAlone: false,
  },
  tried: {
    is: 'What was put in to try.',
    takes: 'a text',
    like: 'tried: new plug',
    about: [['suspect!']],
    value: 'text',
    kind: 'other',
    moves: null,
    disturbs: false,
    standsAlone: false,
  },
  listed: {
    is: 'What was not in the file, as typed.',
    takes: 'a text',
    like: 'listed: Coil open',
    about: [['suspect!'], ['check!'], []],
    value: 'text',
    kind: 'other',
    moves: null,
    disturbs: false,
    standsAlone: false,
  },
  figured: {
    is: 'What a question is weighed by.',
    takes: 'a text',
    like: 'figured: chance 1 in 6',
    about: [['task!']],
    value: 'text',
    kind: 'other',
    moves: null,
    disturbs: false,
    standsAlone: true,
    tellsBoth: true,
  },
  found: {
    is: 'What the fault is.',
    takes: 'a text',
    like: 'found: Ignition coil open',
    about: [['suspect!']],
    value: 'text',
    kind: 'other',
    moves: null,
    disturbs: false,
    standsAlone: false,
    tellsBoth: true,
  },
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
  },
} as const satisfies Rows;

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
export function wordsOf(verb: Verb): readonly [string, ...string[]] | null {
  const { value } = verbRow(verb);
  return typeof value === 'string' ? null : value;
}

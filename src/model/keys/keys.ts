/**
 * The table of a job file's keys: one row each. The types of what is read, the reader, the check, the JSON Schema, help,
 * labels, questions, what can be written and what can be corrected follow from it. To add a key, add its row.
 */
import { type Keys, type KeysWith, keysWith, note, takes } from './key-row.ts';

export { HOLE_KEYS, PIECE_KEYS } from './keys-piece.ts';
export { AMOUNT_KEYS, CHECK_KEYS, HARM_KEYS, SUSPECT_KEYS } from './keys-trace.ts';

export const FILE_KEYS = {
  putback: {
    value: 'version',
    as: 'version',
    must: true,
    is: 'Version of this file’s form.',
    like: 'putback: 1',
  },
  job: {
    value: 'title',
    must: true,
    is: 'What this job is, in a few words.',
    like: 'job: Left cover weeps oil',
  },
  machine: { value: 'text', is: 'What is being repaired.', like: 'machine: Hollin 400 Twin, 1998' },
  'machine-id': {
    value: 'text',
    as: 'machineId',
    is: 'Its frame number, or another name that it alone has.',
    like: 'machine-id: HL4-20117',
  },
  like: {
    value: 'texts',
    is: 'Machines that what was learnt holds for too.',
    like: 'like: Hollin 500 Twin',
  },
  complaint: {
    value: 'text',
    is: 'What the owner said.',
    like: 'complaint: Oil below the left cover',
  },
  found: { value: 'text', is: 'What was found.', like: 'found: Gasket torn at hole 7' },
  done: { value: 'text', is: 'What was done.', like: 'done: New gasket, faces cleaned' },
  bolts: {
    value: 'kinds',
    as: 'kinds',
    is: 'The kinds of bolts, each with a letter.',
    like: 'bolts: {S: "M6x25 flange, 8 mm"}',
  },
  pieces: {
    value: 'pieces',
    is: 'What comes off and goes back.',
    like: 'pieces: {gear-lever: {bolts: P}}',
  },
  tasks: {
    value: 'tasks',
    is: 'Work that is not a piece.',
    like: 'tasks: {drain: {do: Drain the oil}}',
  },
  buy: {
    value: 'buys',
    as: 'buys',
    is: 'What must be had.',
    like: 'buy: {gasket: {what: Cover gasket, once: true}}',
  },
  suspects: {
    value: 'suspects',
    is: 'What the fault may be.',
    like: 'suspects: {coil: Ignition coil open}',
  },
  checks: {
    value: 'checks',
    is: 'What can be looked at to find the fault.',
    like: 'checks: {spark: {check: Blue spark, bad: [coil, plug]}}',
  },
  diary: {
    value: 'entries',
    is: 'What happened: the program adds a line for each mark.',
    like: 'diary:',
  },
} as const satisfies Keys;

export const KIND_KEYS = {
  thread: { value: 'text', is: 'Thread, pitch and hand.', like: 'thread: M6' },
  length: { value: 'length', is: 'Length under the head, mm unless said.', like: 'length: 25' },
  head: { value: 'text', is: 'Form of the head.', like: 'head: flange' },
  tool: { value: 'text', is: 'What turns it.', like: 'tool: 8 mm' },
  class: { value: 'text', is: 'Class or grade as marked on the head.', like: 'class: 8.8' },
  threaded: { value: 'length', is: 'Length of the threaded end, mm.', like: 'threaded: 18' },
  lh: { value: 'truth', is: 'Left-hand thread.', like: 'lh: true' },
  once: { value: 'truth', is: 'Never used twice.', like: 'once: true' },
  note: note('note: two of them are new'),
} as const satisfies Keys;

/** One bolt in a row, spelled out. */
export const ITEM_KEYS = {
  kind: {
    value: 'word',
    must: true,
    takes: 'a letter',
    is: 'The kind in this hole.',
    like: 'kind: M',
  },
  with: {
    value: 'texts',
    is: 'What lies under the head, from the head down.',
    like: 'with: [clip, washer]',
  },
} as const satisfies Keys;

/** A caution or a tip that is not the same for both ways. */
export const WAY_KEYS = {
  removal: { value: 'texts', is: 'Before it comes off.', like: 'removal: Top bolt last.' },
  fitting: {
    value: 'texts',
    is: 'Before it goes back.',
    like: 'fitting: Keep fingers off the edge.',
  },
} as const satisfies Keys;

export const PASS_KEYS = {
  name: { value: 'word', must: true, is: 'Name of the pass.', like: 'name: part' },
  torque: { value: 'torque', is: 'Its torque.', like: 'torque: 5 N·m' },
  angle: {
    value: 'number',
    takes: 'a number of degrees',
    is: 'Its angle in degrees.',
    like: 'angle: 90',
  },
  after: { value: 'text', is: 'When, for a pass that comes again later.', like: 'after: 50 km' },
} as const satisfies Keys;

export const TASK_KEYS = {
  do: { value: 'verb', is: 'Work to be done.', like: 'do: Drain the oil' },
  wait: { value: 'verb', is: 'What to wait for.', like: 'wait: Sealant cures, 12 h' },
  adjust: {
    value: 'verb',
    is: 'What to set; was and set go into the diary.',
    like: 'adjust: Chain slack',
  },
  test: { value: 'verb', is: 'What must pass.', like: 'test: Five minutes at idle' },
  decide: {
    value: 'verb',
    is: 'A question to be answered.',
    like: 'decide: Renew the shaft seal?',
  },
  before: { value: 'stepNames', is: 'Steps that come after it.', like: 'before: alternator off' },
  after: { value: 'stepNames', is: 'Steps that come before it.', like: 'after: alternator on' },
  while: {
    value: 'stepNames',
    is: 'Can be done while this is off.',
    like: 'while: alternator off',
  },
  limit: {
    value: 'text',
    label: 'Limit',
    corrected: true,
    is: 'What the result must keep to.',
    like: 'limit: 20..30 mm',
  },
  when: {
    value: 'text',
    label: 'When',
    corrected: true,
    is: 'When it is due.',
    like: 'when: next day',
  },
  takes: { ...takes('takes: 20 min'), label: 'Takes', corrected: true },
  note: { ...note('note: pan holds 3 l'), label: 'Note', corrected: true },
  proves: {
    value: 'texts',
    takes: 'a check or a list of checks',
    is: 'Checks that this test makes again.',
    like: 'proves: spark',
  },
  now: {
    value: 'amount',
    only: 'decide',
    is: 'What renewing it now costs.',
    like: 'now: {price: 12.50, takes: 40 min}',
  },
  later: {
    value: 'amount',
    only: 'decide',
    is: 'What it costs if it fails later.',
    like: 'later: {price: 12.50, takes: 5 h}',
  },
  chance: {
    value: 'chance',
    only: 'decide',
    is: 'That it fails before one is in here anyway.',
    like: 'chance: 1 in 6',
  },
  harm: {
    value: 'harm',
    only: 'decide',
    is: 'What touching it may break.',
    like: 'harm: {chance: 1 in 20, price: 60.00}',
  },
} as const satisfies Keys;

export const BUY_KEYS = {
  what: { value: 'called', is: 'What to ask for.', like: 'what: HL-1142 cover gasket' },
  price: {
    value: 'text',
    takes: 'a figure or a text',
    is: 'Price as written.',
    like: 'price: 14.20',
  },
  count: { value: 'text', takes: 'a figure or a text', is: 'How many.', like: 'count: 2' },
  from: { value: 'text', is: 'Where from.', like: 'from: the dealer' },
  once: { value: 'truth', is: 'Never used twice.', like: 'once: true' },
  for: { value: 'stepNames', is: 'Steps or pieces it is for.', like: 'for: alternator on' },
  note: note('note: two weeks to come'),
} as const satisfies Keys;

// ---------------------------------------------------------------- what follows

export type TaskVerb = KeysWith<typeof TASK_KEYS, { value: 'verb' }>;
export const TASK_VERBS = keysWith(TASK_KEYS, (row) => row.value === 'verb') as readonly TaskVerb[];

/** The kind of bolts as a mapping spells it, each part as it is written. */
export type KindParts = { -readonly [K in keyof typeof KIND_KEYS]?: string };

/** All commands: their words, their help, and where they are. Each is loaded only when it is asked for. */
import type { Command, Options } from './command.ts';

/** Options that every command has. */
export const COMMON: Options = {
  json: { value: null, say: 'answer as one JSON value' },
  at: { value: 'TIME', say: 'the time to note, RFC 3339 with its offset' },
  id: { value: 'ID', say: 'the id of the next entry, 8 characters' },
  help: { value: null, say: 'what this command takes' },
};

const SAYS: Options = { says: { value: 'TEXT', say: 'a word beside the mark' } };
const BECAUSE: Options = {
  because: { value: 'TEXT', say: 'overrule a refusal; the reason goes into the diary' },
};
const TRAY: Options = { tray: { value: 'PLACE', say: 'where the bolts lie meanwhile' } };
const ALL: Options = { all: { value: null, say: 'all holes of the piece' } };

export const COMMANDS: readonly Command[] = [
  {
    names: ['new'],
    usage: 'FILE [JOB]',
    say: 'start a job',
    options: {
      machine: { value: 'TEXT', say: 'make, model, year, distance or hours' },
      from: { value: 'TEMPLATE', say: 'start from a template: blank, wheel' },
    },
    words: { least: 1, most: 2 },
    load: () => import('./new.ts'),
  },
  {
    names: ['check'],
    usage: 'FILE…',
    say: 'what is wrong in a job file, and the way out',
    options: {},
    words: { least: 1, most: Infinity },
    load: () => import('./check.ts'),
  },
  {
    names: ['status'],
    usage: 'FILE',
    say: 'where it stands and what is next',
    options: {},
    words: { least: 1, most: 1 },
    load: () => import('./status.ts'),
  },
  {
    names: ['off', 'on', 'aside'],
    usage: 'FILE PIECE',
    say: 'a piece comes off, goes on, is moved aside still connected',
    options: { ...TRAY, ...SAYS, ...BECAUSE },
    words: { least: 2, most: 2 },
    load: () => import('./off.ts'),
  },
  {
    names: ['out'],
    usage: 'FILE PIECE [HOLE…]',
    say: 'bolts that came out',
    options: {
      ...ALL,
      row: {
        value: 'ROW',
        say: 'what came out, hole by hole: "S S M+clip !" (! still in, - empty, .35 by length)',
      },
      kind: { value: 'KIND', say: 'what came out of these holes' },
      ...TRAY,
      ...SAYS,
      ...BECAUSE,
    },
    words: { least: 2, most: Infinity },
    load: () => import('./out.ts'),
  },
  {
    names: ['in'],
    usage: 'FILE PIECE [HOLE…]',
    say: 'bolts that went in, turned by fingers',
    options: {
      ...ALL,
      kind: { value: 'KIND', say: 'what is in the hand: S, or M+clip' },
      length: { value: 'MM', say: 'or its length under the head' },
      ...SAYS,
      ...BECAUSE,
    },
    words: { least: 2, most: Infinity },
    load: () => import('./in.ts'),
  },
  {
    names: ['tight'],
    usage: 'FILE PIECE [HOLE…]',
    say: 'bolts that were tightened',
    options: {
      ...ALL,
      pass: { value: 'NAME', say: 'snug, part, full …; without it the next pass' },
      set: { value: 'TORQUE', say: 'what the wrench was set to' },
      ...SAYS,
      ...BECAUSE,
    },
    words: { least: 2, most: Infinity },
    load: () => import('./tight.ts'),
  },
  {
    names: ['hole'],
    usage: 'FILE PIECE HOLE STATE',
    say: 'stuck, rounded, sheared, stud, pulled, empty; mended',
    options: { ...SAYS, ...BECAUSE },
    words: { least: 4, most: 4 },
    load: () => import('./hole.ts'),
  },
  {
    names: ['settle'],
    usage: 'FILE PIECE HOLE KIND',
    say: 'what belongs there, where file and find differ',
    options: { ...SAYS, ...BECAUSE },
    words: { least: 4, most: 4 },
    load: () => import('./settle.ts'),
  },
  {
    names: ['done'],
    usage: 'FILE TASK',
    say: 'a task is done',
    options: {
      was: { value: 'V', say: 'what it was before' },
      set: { value: 'V', say: 'what it is now' },
      result: { value: 'V', say: 'passed, failed, or in words' },
      ...SAYS,
      ...BECAUSE,
    },
    words: { least: 2, most: 2 },
    load: () => import('./done.ts'),
  },
  {
    names: ['note'],
    usage: 'FILE [PIECE [HOLE]] TEXT',
    say: 'a note on the job, a piece or a hole',
    options: {},
    words: { least: 2, most: 4 },
    load: () => import('./note.ts'),
  },
  {
    names: ['undo'],
    usage: 'FILE [ID]',
    say: 'take a mark back; undoing an undo brings it back',
    options: { ...SAYS, ...BECAUSE },
    words: { least: 1, most: 2 },
    load: () => import('./undo.ts'),
  },
  {
    names: ['sequence'],
    usage: 'FILE PIECE',
    say: 'in which order to tighten and to loosen',
    options: { done: { value: 'HOLES', say: 'tight already: 1,7' } },
    words: { least: 2, most: 2 },
    load: () => import('./sequence.ts'),
  },
  {
    names: ['schema'],
    usage: '',
    say: 'the JSON Schema of a job file, for editors',
    options: {},
    words: { least: 0, most: 0 },
    load: () => import('./schema.ts'),
  },
  {
    names: ['bench'],
    usage: 'FOLDER',
    say: 'make a folder a bench: git, schema, settings',
    options: {},
    words: { least: 1, most: 1 },
    load: () => import('./bench.ts'),
  },
  {
    names: ['practice'],
    usage: '[FOLDER]',
    say: 'a practice bench in a new folder, opened',
    options: { 'no-open': { value: null, say: 'only make it' } },
    words: { least: 0, most: 1 },
    load: () => import('./practice.ts'),
  },
];

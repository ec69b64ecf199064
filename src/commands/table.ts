/** All commands: their words, their help, and where they are. Each is loaded only when it is asked for. */
import { BUY_STATES, HOLE_STATES } from '../model/types.ts';
import type { Command, Options } from './base/command.ts';
import { BECAUSE, NEW, SAYS, SCREEN_LOOKS } from './base/common.ts';
import { intoFile } from './table-file.ts';
import { memoryCommands } from './table-memory.ts';
import { handedOn } from './table-paper.ts';
import { traceCommands } from './table-trace.ts';

const TRAY: Options = { tray: { value: 'PLACE', say: 'where the bolts lie meanwhile' } };
const ALL: Options = { all: { value: null, say: 'all holes of the piece' } };

const first = (): readonly Command[] => [
  {
    names: ['new'],
    usage: 'FILE [JOB]',
    say: 'start a job',
    examples: [
      "new cover.yaml 'Left cover weeps oil' --machine 'Hollin 400 Twin, 1998'",
      'new wheel.yaml --from wheel',
    ],
    options: {
      machine: { value: 'TEXT', say: 'make, model, year, distance or hours' },
      from: { value: 'NAME', say: 'from a template (blank, wheel …), or an earlier job file' },
    },
    words: { least: 1, most: 2 },
    load: () => import('./file/new.ts'),
  },
  {
    names: ['check'],
    usage: 'FILE…',
    say: 'what is wrong in a file, and the way out',
    examples: ['check cover.yaml', 'check *.yaml'],
    options: {},
    words: { least: 1, most: Infinity },
    load: () => import('./job/check.ts'),
  },
  {
    names: ['status'],
    usage: 'FILE',
    say: 'where it stands and what is next',
    examples: ['status cover.yaml'],
    options: {},
    words: { least: 1, most: 1 },
    load: () => import('./job/status.ts'),
  },
  {
    names: ['off', 'on', 'aside'],
    usage: 'FILE PIECE',
    say: 'a piece comes off, goes on, is moved',
    examples: ["off cover.yaml alternator --tray 'cup 2'", 'on cover.yaml alternator'],
    options: { ...TRAY, ...NEW, ...SAYS, ...BECAUSE },
    words: { least: 2, most: 2 },
    load: () => import('./marks/off.ts'),
  },
  {
    names: ['out'],
    usage: 'FILE PIECE [HOLE…]',
    say: 'bolts that came out',
    examples: [
      "out cover.yaml alternator --row 'S S S M+clip S S S+copper S ! L S'",
      'out cover.yaml alternator 4 --kind M+clip',
    ],
    options: {
      ...ALL,
      row: {
        value: 'ROW',
        say: 'what came out, hole by hole: "S S M+clip !" (! still in, - empty, .35 by length)',
      },
      kind: { value: 'KIND', say: 'what came out of these holes' },
      ...TRAY,
      ...NEW,
      ...SAYS,
      ...BECAUSE,
    },
    words: { least: 2, most: Infinity },
    load: () => import('./marks/out.ts'),
  },
  {
    names: ['in'],
    usage: 'FILE PIECE [HOLE…]',
    say: 'bolts that went in, turned by fingers',
    examples: [
      'in cover.yaml alternator 4 --kind M+clip',
      'in cover.yaml alternator --all --kind S',
    ],
    options: {
      all: { value: null, say: 'all that take it; with something under the head, if that is said' },
      kind: { value: 'KIND', say: 'what is in the hand: S, or M+clip' },
      length: { value: 'MM', say: 'or its length under the head' },
      ...SAYS,
      ...BECAUSE,
    },
    words: { least: 2, most: Infinity },
    load: () => import('./marks/in.ts'),
  },
  {
    names: ['tight'],
    usage: 'FILE PIECE [HOLE…]',
    say: 'bolts that were tightened',
    examples: [
      'tight cover.yaml alternator --pass snug --all',
      "tight cover.yaml alternator 4 --set '10 N·m'",
    ],
    options: {
      ...ALL,
      pass: { value: 'NAME', say: 'snug, part, full …; without it the next pass' },
      set: { value: 'TORQUE', say: 'what the wrench was set to' },
      ...SAYS,
      ...BECAUSE,
    },
    words: { least: 2, most: Infinity },
    load: () => import('./marks/tight.ts'),
  },
  {
    names: ['hole'],
    usage: 'FILE PIECE HOLE STATE',
    say: 'what is wrong with a hole or its bolt',
    more: [`STATE is ${HOLE_STATES.join(', ')}.`],
    examples: [
      "hole cover.yaml alternator 9 stuck --says 'soaking, heat tomorrow'",
      'hole cover.yaml alternator 9 mended',
    ],
    options: { ...SAYS, ...BECAUSE },
    words: { least: 4, most: 4 },
    load: () => import('./marks/hole.ts'),
  },
  {
    names: ['settle'],
    usage: 'FILE PIECE HOLE KIND',
    say: 'what belongs, where file and find differ',
    examples: ['settle cover.yaml alternator 5 M'],
    options: { ...SAYS, ...BECAUSE },
    words: { least: 4, most: 4 },
    load: () => import('./marks/settle.ts'),
  },
  {
    names: ['done'],
    usage: 'FILE TASK',
    say: 'a task is done',
    examples: ['done cover.yaml drain', "done cover.yaml chain --was '35 mm' --set '25 mm'"],
    options: {
      was: { value: 'V', say: 'what it was before' },
      set: { value: 'V', say: 'what it is now' },
      result: { value: 'V', say: "what came of it; of a test passed, failed, or 'passed, WORDS'" },
      ...SAYS,
      ...BECAUSE,
    },
    words: { least: 2, most: 2 },
    load: () => import('./marks/done.ts'),
  },
  {
    names: ['note'],
    usage: 'FILE [PIECE [HOLE]] TEXT',
    say: 'a note on the job, a piece or a hole',
    examples: [
      "note cover.yaml 'the stand is borrowed'",
      "note cover.yaml alternator 9 'rust in the thread'",
    ],
    options: {},
    words: { least: 2, most: 4 },
    load: () => import('./marks/note.ts'),
  },
];

const second = (): readonly Command[] => [
  {
    names: ['undo'],
    usage: 'FILE [ID]',
    say: 'take a mark back',
    examples: ['undo cover.yaml'],
    options: { ...SAYS, ...BECAUSE },
    words: { least: 1, most: 2 },
    load: () => import('./marks/undo.ts'),
  },
  {
    names: ['sequence'],
    usage: 'FILE PIECE',
    say: 'the order to tighten and to loosen',
    examples: ['sequence cover.yaml alternator'],
    options: { done: { value: 'HOLES', say: 'tight already: 1,7' } },
    words: { least: 2, most: 2 },
    load: () => import('./bolts/sequence.ts'),
  },
  {
    names: ['fit'],
    usage: 'FILE PIECE [HOLE --lengths]',
    say: 'every bolt against every hole; or lengths',
    examples: ['fit cover.yaml alternator', 'fit cover.yaml alternator 4 --lengths'],
    options: { lengths: { value: null, say: 'of one hole: which lengths may go in it' } },
    words: { least: 2, most: 3 },
    load: () => import('./bolts/fit.ts'),
  },
  {
    names: ['mixup'],
    usage: 'FILE PIECE',
    say: 'what is left over, and what that means',
    examples: ["mixup cover.yaml alternator --left '2 S, M'"],
    options: {
      left: { value: 'TRAY', say: 'what lies in the tray: "2 S, M"' },
      proud: { value: 'HEIGHTS', say: 'how far heads stand off, mm: 4=12.5,7=3' },
    },
    words: { least: 2, most: 2 },
    load: () => import('./bolts/mixup.ts'),
  },
  {
    names: ['torque'],
    usage: 'WHAT [FIGURE]',
    say: 'convert, wrench, thread, sane, strip',
    more: ['sane and strip end with 1 where it would break the bolt or strip the thread.'],
    examples: [
      "torque convert '90 in-lb' --to N·m",
      "torque wrench '20 N·m' --length 400 --adapter 450",
      "torque strip --torque '10 N·m' --thread M6 --bite '9 turns' --into 'cast aluminium'",
    ],
    options: {
      to: { value: 'UNIT', say: 'convert: the unit wanted' },
      length: { value: 'MM', say: 'wrench: from the square to the middle of the grip' },
      adapter: { value: 'MM', say: 'wrench: from the square to the bolt' },
      angle: { value: 'DEG', say: 'wrench: between adapter and wrench, 0 straight out' },
      thread: { value: 'THREAD', say: 'sane, strip: M6x1, 1/4-20' },
      class: { value: 'MARK', say: 'what the head says: 8.8, A2-70, grade 5' },
      friction: { value: 'MU', say: 'thread: 0.14 unless said' },
      use: { value: 'PERCENT', say: 'thread: share of yield, 90 unless said' },
      torque: { value: 'TORQUE', say: 'sane, strip: what is set' },
      bite: { value: 'LENGTH', say: 'sane, strip: thread that bites: 9, 9 turns, 1.5 d' },
      engagement: { value: 'MM', say: 'the same' },
      into: { value: 'MATERIAL', say: 'sane, strip: what it is screwed into' },
    },
    words: { least: 1, most: 2 },
    load: () => import('./bolts/torque.ts'),
  },
  {
    names: ['plan'],
    usage: 'FILE',
    say: 'what can be done, and what holds the rest',
    examples: ['plan cover.yaml --reach alternator', 'plan cover.yaml --minutes 20'],
    options: {
      reach: { value: 'PIECE', say: 'what must come off to have it off' },
      minutes: { value: 'N', say: 'what can be done in this time and left safe' },
    },
    words: { least: 1, most: 1 },
    load: () => import('./job/plan.ts'),
  },
  {
    names: ['gate'],
    usage: 'FILE MOMENT [PIECE]',
    say: 'loosening, prying, sealing, closing, start',
    examples: ['gate cover.yaml prying alternator', 'gate cover.yaml start --seen all'],
    options: {
      seen: { value: 'ITEM', say: 'it was looked at; all for every one that does not stop' },
      struck: { value: 'ITEM', say: 'it does not count here' },
      added: { value: 'TEXT', say: 'one more thing to look at' },
      ...SAYS,
      ...BECAUSE,
    },
    words: { least: 2, most: 3 },
    load: () => import('./marks/gate.ts'),
  },
  {
    names: ['inside', 'cleared'],
    usage: 'FILE [PIECE] THINGS',
    say: 'rags and plugs in an opening, and out',
    examples: ["inside cover.yaml alternator '2 rags'", 'cleared cover.yaml alternator all'],
    options: { ...SAYS },
    words: { least: 2, most: 3 },
    load: () => import('./marks/inside.ts'),
  },
  {
    names: ['buy'],
    usage: 'FILE [THING STATE]',
    say: 'what to get; or how far one thing has come',
    more: [`STATE is ${BUY_STATES.join(', ')}.`],
    examples: ['buy cover.yaml --csv', 'buy cover.yaml gasket ordered --promised 2026-05-02'],
    options: {
      csv: { value: null, say: 'as a table for a spreadsheet, cells made harmless' },
      raw: { value: null, say: 'the same table with its cells as they are' },
      promised: { value: 'DATE', say: 'when it is to come' },
      ...TRAY,
      ...SAYS,
    },
    words: { least: 1, most: 3 },
    load: () => import('./job/buy.ts'),
  },
];

const third = (): readonly Command[] => [
  {
    names: ['diary'],
    usage: 'FILE',
    say: 'what happened, as prose',
    examples: ['diary cover.yaml', 'diary cover.yaml --all --commits'],
    options: {
      all: { value: null, say: 'what was taken back too' },
      commits: { value: null, say: 'the commit that brought each mark' },
    },
    words: { least: 1, most: 1 },
    load: () => import('./job/diary.ts'),
  },
];

const last = (): readonly Command[] => [
  {
    names: ['schema'],
    usage: '',
    say: 'the JSON Schema of a job file, for editors',
    examples: ['schema'],
    options: {},
    words: { least: 0, most: 0 },
    load: () => import('./file/schema.ts'),
  },
  {
    names: ['bench'],
    usage: 'FOLDER',
    say: 'make a folder a bench',
    examples: ['bench repairs'],
    options: {},
    words: { least: 1, most: 1 },
    load: () => import('./bench/bench.ts'),
  },
  {
    names: ['merge'],
    usage: 'BASE OURS THEIRS',
    say: "git's merge driver for job files",
    examples: ['merge base.yaml ours.yaml theirs.yaml'],
    options: {},
    words: { least: 3, most: 3 },
    load: () => import('./bench/merge.ts'),
  },
  {
    names: ['practice'],
    usage: '[FOLDER]',
    say: 'a practice bench, opened',
    more: ['Without FOLDER that of before, if there is one.'],
    examples: ['practice', 'practice /tmp/bench --no-open', 'practice --lines'],
    options: {
      'no-open': { value: null, say: 'only make it' },
      new: { value: null, say: 'a new one, though there is one of before' },
      ...SCREEN_LOOKS,
    },
    words: { least: 0, most: 1 },
    load: () => import('./bench/practice.ts'),
  },
  {
    names: ['help'],
    usage: '[COMMAND]',
    say: 'what there is, or all about one command',
    examples: ['help out', 'help --man'],
    options: { man: { value: null, say: 'as a page for man' } },
    words: { least: 0, most: 1 },
    load: () => import('./shell/help-of.ts'),
  },
  {
    names: ['completions'],
    usage: 'SHELL',
    say: 'make a shell complete what is typed',
    more: ['SHELL is bash, zsh or fish; the first line of the script says where it goes.'],
    examples: ['completions bash'],
    options: { line: { value: 'TEXT', say: 'what can stand at the end of this command line' } },
    words: { least: 1, most: Infinity },
    load: () => import('./shell/completions.ts'),
  },
  {
    names: ['keys'],
    usage: '',
    say: 'the keys of the screens, by name',
    examples: ['keys', 'keys --json'],
    options: {},
    words: { least: 0, most: 0 },
    load: () => import('./bench/keys.ts'),
  },
  {
    names: ['doctor'],
    usage: '',
    say: 'what it runs on, and what is odd there',
    examples: ['doctor'],
    options: {},
    words: { least: 0, most: 0 },
    load: () => import('./bench/doctor.ts'),
  },
];

/** In the order in which help tells them. */
const MAKE = [first, intoFile, second, traceCommands, third, memoryCommands, handedOn, last];

/** A run asks for one command, and the rows up to it are all that it makes. */
const SECTIONS = MAKE.map((make) => {
  let made: readonly Command[] | null = null;
  return () => (made ??= make());
});

export function commandNamed(name: string): Command | undefined {
  for (const section of SECTIONS) {
    const found = section().find((command) => command.names.includes(name));
    if (found) return found;
  }
  return undefined;
}

export const allCommands = (): readonly Command[] => SECTIONS.flatMap((section) => section());

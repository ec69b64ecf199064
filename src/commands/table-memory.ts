/** The commands of what is remembered: their words and their help. */

import type { Command } from './base/command.ts';
import { BECAUSE } from './base/common.ts';

export const memoryCommands = (): readonly Command[] => [
  {
    names: ['find'],
    usage: 'WORDS…',
    say: 'over all jobs of a bench, the best first',
    more: [
      'Each word is looked for without case and accents, by its beginning; of numbers any part.',
      'A word may also stand in the job, machine or piece that a line belongs to; 2026-05 is a month.',
      'Other benches: benches: [FOLDER, …] in ~/.config/putback/settings.yaml.',
    ],
    examples: ['find 500-2103', 'find hollin stuck --most 5'],
    options: { most: { value: 'N', say: 'so many lines; 20 unless said, with --json all' } },
    words: { least: 1, most: Infinity },
    load: () => import('./memory/find.ts'),
  },
  {
    names: ['last'],
    usage: 'FILE [PIECE]',
    say: 'what earlier jobs on this machine know',
    more: [
      'Jobs of one bench know each other by machine: (without case, year, distance and blanks),',
      'for sure by machine-id: and like:. --take puts map, kinds, torques, truths, joint, cautions,',
      'tips and times of a piece into the file where nothing stands yet; never marks. undo takes it back.',
    ],
    examples: ['last cover.yaml', 'last cover.yaml alternator --take'],
    options: {
      take: { value: null, say: 'take over what the newest of them knows of the piece' },
      their: { value: 'PIECE', say: 'which piece it was there, where that is not sure' },
      from: { value: 'FILE', say: 'of this earlier job only' },
    },
    words: { least: 1, most: 2 },
    load: () => import('./memory/last.ts'),
  },
  {
    names: ['keep'],
    usage: 'FILE [ID]',
    say: 'an entry is worth knowing next time',
    examples: ['keep cover.yaml', 'keep cover.yaml k3Vb9xQe'],
    options: {},
    words: { least: 1, most: 2 },
    load: () => import('./memory/keep.ts'),
  },
  {
    names: ['reading'],
    usage: 'FILE FIGURE',
    say: "what the machine's counter says now",
    examples: ["reading cover.yaml '41400 km'"],
    options: { ...BECAUSE },
    words: { least: 2, most: 2 },
    load: () => import('./memory/keep.ts'),
  },
  {
    names: ['template'],
    usage: 'FILE [PIECE]',
    say: 'keep what was learnt, without the diary',
    more: ['Written into templates/ of the bench, to be read and edited: new FILE --from NAME.'],
    examples: [
      'template cover.yaml --as left-cover',
      'template cover.yaml alternator --as alternator',
    ],
    options: { as: { value: 'NAME', say: 'what it is called: small letters, digits, hyphens' } },
    words: { least: 1, most: 2 },
    load: () => import('./file/template.ts'),
  },
  {
    names: ['due'],
    usage: '[FOLDER]',
    say: 'what follows from jobs, and when it is due',
    more: ['By the calendar, or by what the counter of a machine said last: putback reading.'],
    examples: ['due', 'due repairs --ics'],
    options: { ics: { value: null, say: 'as a file for calendars' } },
    words: { least: 0, most: 1 },
    load: () => import('./memory/due.ts'),
  },
  {
    names: ['book'],
    usage: 'FOLDER MACHINE',
    say: "a machine's book: its jobs, what is in it",
    examples: ["book . 'Hollin 400 Twin'"],
    options: {},
    words: { least: 2, most: 2 },
    load: () => import('./memory/book.ts'),
  },
];

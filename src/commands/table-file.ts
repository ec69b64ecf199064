/** Commands that put what one says into the person's part of the file. */
import { ADDABLE } from '../model/types.ts';
import type { Command } from './base/command.ts';
import { NEW } from './base/common.ts';
import { correctedSaid, writtenSaid } from './file/keys-said.ts';

export const intoFile = (): readonly Command[] => [
  {
    names: ['add'],
    usage: 'FILE TEXT',
    say: 'one line as a part, task, test, caution …',
    more: [
      `KIND is ${ADDABLE.slice(0, -1).join(', ')} or ${ADDABLE.at(-1)}.`,
      'Without --as the best guess is taken, and said. A figure at the end is the limit.',
      'A check is a look for the fault: behind a colon stands which suspects it would show.',
    ],
    examples: [
      "add cover.yaml '6204 bearing'",
      "add cover.yaml 'spring, goggles!' --as caution --piece alternator",
      "add cover.yaml 'Blue spark: coil, plug, 3 min' --as check",
    ],
    options: {
      as: { value: 'KIND', say: 'what it is, where the guess would be another' },
      piece: { value: 'PIECE', say: 'the piece that it belongs to' },
      hole: { value: 'HOLE', say: 'the hole of it' },
    },
    words: { least: 2, most: 2 },
    load: () => import('./file/add.ts'),
  },
  {
    names: ['write'],
    usage: 'FILE PIECE KEY TEXT',
    say: 'a text into the file: routes, marks, map …',
    more: [
      ...writtenSaid(),
      'bolts is how many (10), or which (S S M+clip S).',
      'Lines of a map may be parted by /.',
    ],
    examples: ["write cover.yaml alternator routes 'the lead runs behind the frame tube'"],
    options: { ...NEW },
    words: { least: 4, most: 4 },
    load: () => import('./file/write.ts'),
  },
  {
    names: ['rename'],
    usage: 'FILE KIND LETTER',
    say: 'another letter for a kind, everywhere',
    examples: ['rename cover.yaml S L20'],
    options: {},
    words: { least: 3, most: 3 },
    load: () => import('./file/rename.ts'),
  },
  {
    names: ['correct'],
    usage: 'FILE NAME [HOLE] WHAT TEXT',
    say: 'what is printed and not so here',
    more: ['NAME is a piece or a task; where both have that name, the piece.', ...correctedSaid()],
    examples: ["correct cover.yaml alternator torque '8 N·m, bulletin 12'"],
    options: {
      printed: { value: 'TEXT', say: 'which one is not so, where there are several: its start' },
    },
    words: { least: 4, most: 5 },
    load: () => import('./file/correct.ts'),
  },
];

/** Commands that make something to be handed on: paper, pictures. */
import type { Command } from './base/command.ts';

export const handedOn = (): readonly Command[] => [
  {
    names: ['paper'],
    usage: 'FILE WHAT [PIECE]',
    say: 'a page to print: card, labels, tag …',
    more: [
      'WHAT is card (a piece, to poke its bolts through), blank (the same to fill in),',
      'labels (for bags), tag (for the machine), steps (the way up), sheet (for a second',
      'opinion), report (for the owner; more files of one machine make one book).',
      'The page lies beside the job, whole in itself; any browser prints it.',
    ],
    examples: [
      'paper cover.yaml card alternator --open',
      'paper cover.yaml labels --label 52.5x29.7 --size letter',
      'paper cover.yaml report earlier.yaml -o record.html',
    ],
    options: {
      open: { value: null, say: 'open it as the desktop opens such files' },
      out: { value: 'FILE', say: 'where it is written; - is the terminal', letter: 'o' },
      size: { value: 'SIZE', say: 'a4 or letter; without it as your settings say, else a4' },
      width: { value: 'MM', say: 'card: measured from the first hole across to the last' },
      holes: { value: 'N', say: 'blank: how many' },
      row: { value: 'ROW', say: 'blank: what is known already, "S S M+clip"' },
      label: { value: 'SIZE', say: 'labels: of one, in mm; 70x37 unless said' },
      all: { value: null, say: 'labels: of all pieces, not only what is off' },
      ask: { value: 'WHO', say: 'tag: who can be asked' },
      text: { value: null, say: 'sheet: as Markdown to paste' },
      question: { value: 'TEXT', say: 'sheet: what is asked' },
      with: { value: 'WORDS', say: 'sheet: names, places, prices are not left out' },
      by: { value: 'WHO', say: 'report: who did it' },
      inside: { value: null, say: 'report: photographs in the page, not beside it' },
    },
    words: { least: 2, most: Infinity },
    load: () => import('./paper/paper.ts'),
  },
  {
    names: ['map'],
    usage: 'FILE PIECE',
    say: 'its holes as they stand, or as a picture',
    examples: ['map cover.yaml alternator', 'map cover.yaml alternator --svg -o cover.svg'],
    options: {
      svg: { value: null, say: 'as a picture (SVG)' },
      out: { value: 'FILE', say: 'where the picture is written', letter: 'o' },
    },
    words: { least: 2, most: 2 },
    load: () => import('./paper/map.ts'),
  },
  {
    names: ['photo'],
    usage: 'FILE [PICTURE…]',
    say: 'photographs to their piece, by the clock',
    more: [
      'By the camera’s clock a picture goes to the piece that was at hand at that moment;',
      'which one cannot be told is asked. Without pictures: those in the folders that',
      'bench.yaml names under photos-from.',
    ],
    examples: [
      'photo cover.yaml DCIM/*.jpg --shift 3m20s',
      'photo cover.yaml as-it-was.jpg --piece alternator --hole 9 --copy',
    ],
    options: {
      piece: { value: 'PIECE', say: 'of this piece, whatever the clock says' },
      hole: { value: 'HOLE', say: 'of this hole of it' },
      shift: { value: 'TIME', say: 'added to the camera’s clock: 3m20s, -1h' },
      copy: { value: null, say: 'copied to photos/ beside the job' },
      stay: { value: null, say: 'they stay where they are' },
      says: { value: 'TEXT', say: 'a word beside the mark' },
    },
    words: { least: 1, most: Infinity },
    load: () => import('./paper/photo.ts'),
  },
];

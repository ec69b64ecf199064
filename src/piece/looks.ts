/**
 * What the states of a hole look like, said once: its signs on the screen, its outline on paper, its colour on both.
 * Shape and colour say the same, so that neither alone is needed.
 */
import type { HoleNow } from '../model/types.ts';

export const SHAPES = ['home', 'out', 'in', 'tight', 'trouble'] as const;
export type Shape = (typeof SHAPES)[number];

interface Look {
  /** In words, for the key beside a picture. */
  say: string;
  /** Left and right of its number on the screen. */
  signs: readonly [string, string];
  /** Name of a terminal's colour; null: the colour of the text. */
  colour: 'cyan' | 'green' | 'red' | null;
  /** The same on paper: dark enough to be read in grey. */
  ink: string;
  outline: 'circle' | 'dashed circle' | 'square' | 'hexagon' | 'diamond';
  /** Filled with its colour, the number white. */
  filled: boolean;
}

export const LOOKS: Readonly<Record<Shape, Look>> = {
  home: {
    say: 'untouched',
    signs: ['|', '|'],
    colour: null,
    ink: '#000',
    outline: 'circle',
    filled: false,
  },
  out: {
    say: 'out',
    signs: ['(', ')'],
    colour: null,
    ink: '#000',
    outline: 'dashed circle',
    filled: false,
  },
  in: {
    say: 'in, by fingers',
    signs: ['[', ']'],
    colour: 'cyan',
    ink: '#006a78',
    outline: 'square',
    filled: false,
  },
  tight: {
    say: 'tight',
    signs: ['{', '}'],
    colour: 'green',
    ink: '#0b6623',
    outline: 'hexagon',
    filled: true,
  },
  trouble: {
    say: 'in trouble',
    signs: ['!', '!'],
    colour: 'red',
    ink: '#b00020',
    outline: 'diamond',
    filled: false,
  },
};

export function shapeOf(hole: HoleNow): Shape {
  if (hole.trouble !== null || hole.state === 'conflict') return 'trouble';
  return hole.state;
}

/**
 * What the four colours look like. Colour never says anything alone; where the terminal's own red and green are hard to
 * tell apart, other ones can be set.
 */
import type { Colour } from './text.ts';

/** `usual`: the terminal's own. `safe`: told apart by everybody. `none`: no colour; weight stays. */
export const PALETTES = ['usual', 'safe', 'none'] as const;
export type Palette = (typeof PALETTES)[number];

/** SGR numbers of ECMA-48. */
const USUAL: Readonly<Record<Colour, string>> = {
  red: '31',
  green: '32',
  magenta: '35',
  cyan: '36',
};

/**
 * Of the 256 colours of xterm: near to vermilion, bluish green, reddish purple and blue of Okabe and Ito's set for all
 * kinds of colour vision (Color Universal Design, 2008), darkened so that each can be read on white and on black.
 */
export const SAFE: Readonly<Record<Colour, number>> = {
  red: 166,
  green: 29,
  magenta: 133,
  cyan: 26,
};

/** What goes into the escape sequence; null: nothing. */
export function codeOf(colour: Colour, palette: Palette): string | null {
  if (palette === 'none') return null;
  return palette === 'usual' ? USUAL[colour] : `38;5;${SAFE[colour]}`;
}

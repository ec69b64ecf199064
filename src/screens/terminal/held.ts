/** What the distance of two presses says, since a terminal tells of presses only: was the key let go, was anything read. */
import type { Press } from '../kit/press.ts';

/**
 * ms. Keyboards wait up to 660 before a held key repeats, then send it every 30 or so; nobody reads a caution
 * and presses the same key again in less.
 */
export const ANEW = 700;

/** ms. Who types a text, with one finger even, is quicker from letter to letter; who reads an answer first is not. */
const READ = 500;

/** ms. A held key repeats within this, no finger taps so quickly; what comes in closer still had only waited to be read. */
const REPEAT = { least: 5, most: 45 };

/** So many of them in a row are a held key. */
const REPEATS = 2;

/** Of one press. */
export interface HeldPress {
  /** Nobody has read anything since the press before it. */
  soon: boolean;
  /** The key of the press before it was still down. */
  held: boolean;
  /** The keyboard repeats it by itself, and has for a while: whoever taps quickly is not told so. */
  repeats: boolean;
}

export function tellPresses(clock: () => number): (press: Press) => HeldPress {
  let last: Press | null = null;
  let at = Number.NEGATIVE_INFINITY;
  let run = 0;
  return (press) => {
    const now = clock();
    const soon = now - at < READ;
    const held = press === last && now - at < ANEW;
    if (!held || now - at > REPEAT.most) run = 0;
    else if (now - at >= REPEAT.least) run += 1;
    last = press;
    at = now;
    return { soon, held, repeats: run >= REPEATS };
  };
}

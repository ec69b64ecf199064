/** Whether a key was let go between two presses: a terminal tells of presses only, so their distance says it. */
import type { Press } from '../kit/press.ts';

/**
 * ms. Keyboards wait up to 660 before a held key repeats, then send it every 30 or so; nobody reads a caution
 * and presses the same key again in less.
 */
export const ANEW = 700;

/** Answers of each press whether the key before it was still down. */
export function heldPresses(clock: () => number): (press: Press) => boolean {
  let last: Press | null = null;
  let at = Number.NEGATIVE_INFINITY;
  return (press) => {
    const now = clock();
    const held = press === last && now - at < ANEW;
    last = press;
    at = now;
    return held;
  };
}

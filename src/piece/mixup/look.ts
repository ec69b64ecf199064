/** How one look tells whether a hole holds the wrong bolt. */

import type { Fit } from '../../bolt/fit/fit.ts';
import { headsAgree, SAME_LENGTH, sameBolt, threadsAgree } from '../../bolt/fit/same.ts';
import { mm } from '../../bolt/read/numbers.ts';
import type { Kind } from '../../model/types.ts';
import { longerBy, MUCH_LONGER, SEEN, staysOff } from '../hard.ts';

function byLength(takes: Kind, holds: Kind, by: number, fits: readonly Fit[]): string {
  const [own, other] = [mm(takes.length ?? 0), mm(holds.length ?? 0)];
  const measure = `take it out and measure it: ${other} under the head, not ${own}`;
  if (by < 0) return `It looks right from outside; ${measure}.`;
  const off = staysOff(fits);
  if (off !== null && off >= SEEN) return `Its head stays ${mm(off)} or more off the seat.`;
  if (off !== null) return `It goes right in and looks right; ${measure}.`;
  return by < MUCH_LONGER
    ? `Its head may stay off the seat; if it is down, ${measure}.`
    : `Its head should stay off the seat, up to ${mm(by)}; if it is down, ${measure}.`;
}

function bySight(takes: Kind, holds: Kind): string | null {
  if (threadsAgree(holds, takes) === false) {
    const [mine, its] = [holds, takes].map((k) => `${k.thread}${k.leftHand ? ' left-hand' : ''}`);
    return `Turn it: ${mine} in a hole for ${its} jams, or turns without tightening.`;
  }
  if (headsAgree(holds, takes) === false) {
    return `Look at the head: ${holds.head}, not ${takes.head}.`;
  }
  if (takes.tool !== null && holds.tool !== null && takes.tool !== holds.tool) {
    return `Try the tool: ${holds.tool}, not ${takes.tool}.`;
  }
  return null;
}

/**
 * One or two sentences. What shows from outside comes first; `fits` are those of the holes that the bolt can be in.
 */
export function lookAtTray(
  takes: Kind | undefined,
  holds: Kind | undefined,
  fits: readonly Fit[],
): string {
  if (!takes || !holds) return 'Take it out and lay it beside one that is known.';
  if (sameBolt(holds, takes) === true) {
    return 'It is the same bolt under another letter: there is nothing to put right.';
  }
  const seen = bySight(takes, holds);
  if (seen !== null) return seen;
  const by = longerBy(holds, takes);
  if (by === null)
    return `Take it out and lay it beside one that is known: not every length is noted.`;
  if (Math.abs(by) >= SAME_LENGTH) return byLength(takes, holds, by, fits);
  if (takes.class !== null && holds.class !== null && takes.class !== holds.class) {
    return `Read the mark on the head: ${holds.class}, not ${takes.class}.`;
  }
  return 'As far as is noted it is the same bolt; take it out and lay it beside one that is known.';
}

/** How hard a wrong bolt would have been to miss. */
import type { Fit } from '../bolt/fit/fit.ts';
import { headsAgree, SAME_LENGTH, sameBolt, threadsAgree } from '../bolt/fit/same.ts';
import type { Kind } from '../model/types.ts';

/** A head that stands off by less looks down, mm (common practice, no source). */
export const SEEN = 1;
/** From here on a longer bolt is taken to bottom until somebody has probed the hole, mm. */
export const MUCH_LONGER = 10;

/** By how much a bolt is longer than another, mm; null when a length is not known. */
export function longerBy(holds: Kind, takes: Kind): number | null {
  return holds.length === null || takes.length === null ? null : holds.length - takes.length;
}

/** How far its head would stay off the seat, mm; null when that is not known. */
function off(fit: Fit): number | null {
  if (fit.bottomsBy !== null) return Math.max(0, fit.bottomsBy);
  return fit.sticksOut !== null || (fit.verdict === 'longer' && fit.sure) ? 0 : null;
}

/** The same over several holes, of which the easiest to miss it in counts. */
export function staysOff(fits: readonly Fit[]): number | null {
  const known = fits.map(off);
  const said = known.filter((mm) => mm !== null);
  return said.length < known.length || said.length === 0 ? null : Math.min(...said);
}

function byLength(takes: Kind, holds: Kind, fits: readonly Fit[]): number {
  const by = longerBy(holds, takes);
  if (by === null || by < SAME_LENGTH) return 1;
  const stands = staysOff(fits);
  if (stands !== null) return stands < SEEN ? 1 : 3;
  return by < MUCH_LONGER ? 2 : 3;
}

/**
 * 0: the same bolt under another letter. 1: goes in like the right one (shorter, or longer and the hole takes it, or
 * nothing known). 2: longer by less than 10 mm. 3: its head stands off. And 4 more for another tool, 8 for another
 * head, 16 for another thread.
 */
export function hardToMiss(takes: Kind, holds: Kind, fits: readonly Fit[]): number {
  if (sameBolt(holds, takes) === true) return 0;
  const tool = takes.tool !== null && holds.tool !== null && takes.tool !== holds.tool ? 4 : 0;
  const head = headsAgree(holds, takes) === false ? 8 : 0;
  const thread = threadsAgree(holds, takes) === false ? 16 : 0;
  return byLength(takes, holds, fits) + tool + head + thread;
}

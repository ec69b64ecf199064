/** Suspects and checks of a job as the tracing room takes them: minutes instead of texts, covers instead of pieces. */
import { readNumber } from '../../bolt/read/numbers.ts';
import type { Upper } from '../../model/types.ts';
import type { Check, Suspect } from '../../trace/types.ts';
import { readDuration } from '../time/duration.ts';

/** Minutes out of `3 min`, `1 h 30 min`; a figure alone is minutes. Null where nothing can be read. */
export function minutesIn(text: string | null): number | null {
  if (text === null) return null;
  const read = readDuration(text);
  // `3 min with the tank off` has a rest: what is no time does not change the figure.
  return read ? read.seconds / 60 : readNumber(text.trim());
}

export function suspectsOf({ suspects }: Upper): Suspect[] {
  return [...suspects.values()].map(({ key, likely, takes }) => {
    return { name: key, likely, repair: minutesIn(takes) };
  });
}

/** `behind` as the file names it: the pieces directly over the check. */
export function checksOf({ checks }: Upper): Check[] {
  return [...checks.values()].map(({ key, takes, bad, along, under }) => {
    return { name: key, takes: minutesIn(takes), bad, along, behind: under };
  });
}

/** When a test is due, as far as a calendar can tell. */

import { type Instant, printInstant, readInstant } from '../model/time.ts';
import { readDuration } from './duration.ts';

const DAY = 86_400;
/** What no clock knows. */
const BY_USE = /\b(?:km|mi|miles?|kilomet(?:er|re)s?|oil change|ride|running|service)\b/i;

/** The day or time of `next day` or `after 24 h`, counted from when the piece was back; a time on the clock of `now`. */
export function dueAt(when: string | null, back: string | null, now?: Instant): string | null {
  const from = back === null ? null : readInstant(back);
  if (when === null || from === null || BY_USE.test(when)) return null;
  if (/\bnext day\b/i.test(when)) {
    return printInstant({ ...from, seconds: from.seconds + DAY }).slice(0, 10);
  }
  const wait = readDuration(when)?.seconds;
  return wait === undefined
    ? null
    : printInstant({ ...(now ?? from), seconds: from.seconds + wait });
}

/** `later`: its day has not come, or it waits for a distance or an oil change, which no clock knows. */
export function isDue(now: Instant, when: string | null, due: string | null): 'due' | 'later' {
  if (due !== null) {
    const today = printInstant(now).slice(0, due.length);
    const come = due.length === 10 ? today >= due : now.seconds >= (readInstant(due)?.seconds ?? 0);
    return come ? 'due' : 'later';
  }
  const byUse = when !== null && /^(?:after|at the next|next)\b/i.test(when) && BY_USE.test(when);
  return byUse ? 'later' : 'due';
}

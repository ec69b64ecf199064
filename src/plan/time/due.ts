/** When something is due, as far as a calendar, a clock or the counter of the machine can tell. */

import { type CounterReading, readReading, sayCounter } from '../../bolt/read/counter.ts';
import { livingOf } from '../../job/fold/living-of.ts';
import { kept } from '../../model/kept.ts';
import { near } from '../../model/nearword.ts';
import { noSuchDay } from '../../model/no-such-day.ts';
import { DAY, type Instant, printInstant, readInstant, secondsOf } from '../../model/time.ts';
import type { Entry, Job } from '../../model/types.ts';
import { verbRow } from '../../model/verbs/verbs.ts';
import { mayHaveFigure, readDuration } from './duration.ts';
import { readWhen, type When, type WhenSpan } from './when.ts';

/** What neither a clock nor a counter tells. */
const BY_USE = /\b(?:km|mi|miles?|kilomet(?:er|re)s?|oil change|ride|running|service)\b/i;

/** What the counter of a machine said, and when. */
export interface Told extends CounterReading {
  /** RFC 3339; empty for the one beside the machine's name in a job without a diary. */
  at: string;
}

/** All that one job says of the counter, in the order of its diary. */
export function readingsIn(job: Job): Told[] {
  const living = livingOf(job);
  const first = job.upper.machine === null ? null : readReading(job.upper.machine);
  const beside = first ? [{ ...first, at: living[0]?.at ?? '' }] : [];
  const read = living.flatMap((e): Told[] => {
    const found = e.verb === 'reading' ? readReading(e.value) : null;
    return found ? [{ ...found, at: e.at }] : [];
  });
  return [...beside, ...read];
}

/** When somebody last worked on the machine: at a piece or its bolts, or at a task; null: nobody has. */
export function workedLast(job: Job): string | null {
  const isWork = (e: Entry) => verbRow(e.verb).kind === 'piece' || e.verb === 'done';
  const last = () => livingOf(job).findLast((e) => isWork(e) && e.buy === undefined);
  return kept(job, 'worked last', last)?.at ?? null;
}

export interface DueWhen {
  by: 'days' | 'distance' | 'hours' | 'use';
  /** A date, or RFC 3339 on the clock of `now`, where the calendar tells. */
  due: string | null;
  /** `41280 km`, where the counter tells. */
  at: string | null;
  /** What is left by the counter: `12 km`; below nothing it is over. */
  left: string | null;
  /** `later`: its day or its distance has not come, or it waits for use that nothing counts. */
  state: 'due' | 'later';
}

/**
 * `when` as printed, null for at once; `back`: when that was finished which it counts from, null where that was never.
 * `readings`: of this job's counter; `current`: the newest of the machine. Of two of them, what comes first counts.
 */
export function dueWhen(
  when: string | null,
  back: string | null,
  readings: readonly Told[],
  current: Told | null,
  now: Instant,
): DueWhen {
  const nothing = { due: null, at: null, left: null };
  if (when === null) return { by: 'days', ...nothing, state: 'due' };
  const hourMeter = readings.some((r) => r.unit === 'h') || current?.unit === 'h';
  const read = readWhen(when, hourMeter);
  const from = back === null ? null : readInstant(back);
  if (read === null) return byClock(when, from, now);
  // Nothing counts it: it is shown until somebody has looked at it.
  if ('odd' in read) return { by: 'use', ...nothing, state: 'due' };
  const counted = byCounter(read, from, readings, current);
  const due = read.span === null || from === null ? null : dayAfter(from, read.span);
  const come = due !== null && printInstant(now).slice(0, 10) >= due;
  if (counted === null) return { by: 'days', ...nothing, due, state: come ? 'due' : 'later' };
  return { ...counted, due, state: come ? 'due' : counted.state };
}

/** What of the text no calendar and no counter can have: `-5 days`. */
export function notCounted(when: string | null): string | null {
  const read = when === null ? null : readWhen(when);
  if (read) return 'odd' in read ? read.odd : null;
  return noSuchDay(when ?? '')?.value ?? unitSlip(when ?? '');
}

function byClock(when: string, from: Instant | null, now: Instant): DueWhen {
  const nothing = { due: null, at: null, left: null };
  const byUseOnly = mayHaveFigure(when) && BY_USE.test(when);
  const wait = byUseOnly ? undefined : readDuration(when)?.seconds;
  if (wait !== undefined) {
    if (from === null) return { by: 'days', ...nothing, state: 'later' };
    const seconds = from.seconds + wait;
    const due = printInstant({ ...(Number.isFinite(now.seconds) ? now : from), seconds });
    return { by: 'days', ...nothing, due, state: now.seconds >= seconds ? 'due' : 'later' };
  }
  const byUse = /^(?:after|at the next|next)\b/i.test(when) && BY_USE.test(when);
  return { by: 'use', ...nothing, state: byUse ? 'later' : 'due' };
}

function byCounter(
  { km, hours }: When,
  from: Instant | null,
  readings: readonly Told[],
  current: Told | null,
): Omit<DueWhen, 'due'> | null {
  const span = km ?? hours;
  if (span === null) return null;
  const unit = km === null ? 'h' : 'km';
  const by = km === null ? ('hours' as const) : ('distance' as const);
  // What the counter said when that was finished, or the last that was read before.
  const then =
    from === null
      ? undefined
      : readings.findLast(
          (r) => r.unit === unit && (r.at === '' || secondsOf(r.at) <= from.seconds),
        );
  if (!then) return { by, at: null, left: null, state: 'later' };
  const goal = then.value + span;
  const left = current?.unit === unit ? goal - current.value : span;
  return {
    by,
    at: sayCounter({ value: goal, unit }),
    left: sayCounter({ value: left, unit }),
    state: left <= 0 ? 'due' : 'later',
  };
}

/** The day so long after; of a month that has no such day, its last. */
function dayAfter(from: Instant, span: WhenSpan): string {
  if ('days' in span)
    return printInstant({ ...from, seconds: from.seconds + span.days * DAY }).slice(0, 10);
  const day = printInstant(from).slice(0, 10);
  const all = Number(day.slice(0, 4)) * 12 + Number(day.slice(5, 7)) - 1 + span.months;
  const [year, month] = [Math.floor(all / 12), all % 12];
  const last = new Date(Date.UTC(year, month + 1, 0)).getUTCDate();
  const two = (n: number) => String(n).padStart(2, '0');
  return `${String(year).padStart(4, '0')}-${two(month + 1)}-${two(Math.min(last, Number(day.slice(8))))}`;
}

const UNITS = ['km', 'miles', 'hours', 'minutes', 'days', 'weeks', 'months', 'years', 'seasons'];

/** `after 6 monts`, `in 6`: a figure that was meant to be counted, behind which nothing stands that counts. */
function unitSlip(when: string): string | null {
  const [, said, unit = ''] =
    /^(?:after|in|every) (\d+(?:[.,]\d+)?(?: ([a-z]+))?)$/i.exec(when.trim()) ?? [];
  if (said === undefined || readDuration(when)?.seconds !== undefined) return null;
  return unit === '' || near(unit, UNITS) !== null ? said : null;
}

/** How long the calendar makes a job, and which steps make it so long. */

import { type Hours, workedUntil } from '../model/hours.ts';
import { printInstant } from '../model/time.ts';
import { byHand, type Handled } from './hands.ts';
import type { Holds } from './holds.ts';
import type { Standing } from './order/standing.ts';
import { heldByCure, willCure } from './seal/cure.ts';
import { readDuration, secondsSaid } from './time/duration.ts';

export interface Calendar {
  /** Open steps without slack, each behind what it waits for. */
  critical: string[] | null;
  /** RFC 3339: when all is done at the earliest, by hand in the hours that were said; no order is ready before. */
  finish: string | null;
}

const NOTHING: Calendar = { critical: null, finish: null };

/**
 * Work by hand takes no time here unless the file says how long, and then one thing comes after the other; what else
 * makes a job long is waiting, which runs beside. Nothing is said when a wait, or a part that a step waits for, has no
 * date, or when no time is known at all.
 */
export function calendarOf(standing: Standing, holds: Holds, hours: Hours): Calendar {
  const { relations, finished, before, order, now } = standing;
  const activities: Handled[] = [];
  let known = false;
  const curing = curesAhead(standing);
  for (const place of order) {
    if (finished.done[place] || waitsForUse(holds, place)) continue;
    const timed = timeOf(standing, holds, place);
    if (timed === null) return NOTHING;
    known ||= timed.known;
    const after = (before.next[place] ?? []).map((other) => relations.steps[other]?.step ?? '');
    after.push(...curing.flatMap((cure) => (cure.held.has(place) ? [cure.key] : [])));
    activities.push({ ...timed, after });
    const cure = curing.find((c) => c.on === place);
    if (cure) {
      known = true;
      activities.push({ key: cure.key, duration: cure.seconds, after: [timed.key], hands: false });
    }
  }
  if (!known) return NOTHING;
  const { least, critical } = byHand(
    activities,
    (from, work) => workedUntil(hours, now.seconds + from, work, now.offset) - now.seconds,
  );
  const seconds = now.seconds + least;
  if (!Number.isFinite(seconds)) return NOTHING;
  const steps = critical.filter((key) => !curing.some((cure) => cure.key === key));
  return { critical: steps, finish: printInstant({ ...now, seconds }) };
}

/** Joints that are to be made yet and then have to stand, where no task of the file waits for it. */
function curesAhead(standing: Standing) {
  const { job, relations, finished } = standing;
  return relations.steps.flatMap((step, on) => {
    const piece = step.kind === 'on' && !finished.done[on] ? job.pieces.get(step.key) : undefined;
    const seconds = piece ? willCure(standing, piece) : null;
    if (seconds === null) return [];
    const held = new Set(heldByCure(standing, { piece: step.key }));
    return [{ key: `${step.key} cures`, on, seconds, held }];
  });
}

/** It waits until the machine has run so far or so long: the job is over by then, and the calendar leaves it out. */
function waitsForUse(holds: Holds, place: number): boolean {
  return holds.of(place).some((h) => h.by === 'time' && h.name !== null && h.until === null);
}

interface Timed {
  key: string;
  duration: number;
  release: number;
  hands: boolean;
  /** Some time or date of it is known. */
  known: boolean;
}

/** Null when it takes or awaits something of which nobody knows how long. */
function timeOf(
  { job, relations, finished, now }: Standing,
  holds: Holds,
  place: number,
): Timed | null {
  const step = relations.steps[place];
  if (!step) return null;
  const running = finished.running.get(place)?.until ?? null;
  const dated = running === null ? ['buy', 'time'] : ['buy'];
  const parts = holds.of(place).filter((hold) => dated.includes(hold.by));
  let release = 0;
  for (const { seconds } of parts) {
    if (seconds === null) return null;
    release = Math.max(release, seconds - now.seconds);
  }
  if (running !== null) {
    return {
      key: step.step,
      duration: 0,
      release: Math.max(release, running - now.seconds),
      hands: false,
      known: true,
    };
  }
  const isPiece = step.kind === 'off' || step.kind === 'on';
  const spec = (isPiece ? job.pieces.get(step.key) : job.tasks.get(step.key))?.spec;
  const said =
    step.kind === 'wait'
      ? readDuration(job.tasks.get(step.key)?.spec.say.text ?? '')?.seconds
      : spec && secondsSaid(spec.takes);
  if (step.kind === 'wait' && said === undefined) return null;
  const known = parts.length > 0 || said != null;
  return { key: step.step, duration: said ?? 0, release, hands: step.kind !== 'wait', known };
}

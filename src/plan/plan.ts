/**
 * The whole job: all steps in order, what can be done now, what is held by what, and how long the calendar makes it.
 * Everything here is worked out from the file and the diary, and written nowhere.
 */
import { type Hours, NO_HOURS } from '../model/hours.ts';
import type { Job } from '../model/types.ts';
import { calendarOf } from './calendar.ts';
import { type Holds, holdsOf } from './holds.ts';
import type { StepKind } from './order/relations.ts';
import { type Standing, standingOf } from './order/standing.ts';
import { sayStep } from './piece/next-step.ts';
import { atTime } from './time/at-time.ts';

export interface Plan {
  /** What happened in the order in which it did, then what is open in the order in which it can come. */
  steps: { step: string; kind: StepKind; done: boolean }[];
  /** Pieces in the order in which they came and come off, and went and go on. */
  off: string[];
  on: string[];
  /** Steps that nothing stands in the way of. Each open step is here or in `heldBy`. */
  canDo: { step: string; say: string }[];
  /**
   * `for`: steps before it that are open, things to buy that are not here, things left inside. `until`: a time or a
   * date when all of that is over, null when that is not known. A wait that runs is held by nothing but its end, and
   * so is what would load a joint that cures.
   */
  heldBy: { step: string; for: string[]; until: string | null }[];
  /** Steps without slack, and when all is done at the earliest; null where no time or date is known. */
  critical: string[] | null;
  finish: string | null;
}

/** `now` is RFC 3339; `hours`: in which somebody works. */
export function plan(job: Job, now: string, hours: Hours = NO_HOURS): Plan {
  const standing = standingOf(job, now);
  return planOf(standing, holdsOf(standing), hours);
}

/** The same, kept while the job and the time stay. */
export function planNow(job: Job, now: string): Plan {
  return atTime(job, now, 'plan', () => plan(job, now));
}

function planOf(standing: Standing, holds: Holds, hours: Hours): Plan {
  const { relations, finished, order } = standing;
  const canDo: Plan['canDo'] = [];
  const heldBy: Plan['heldBy'] = [];
  for (const place of order) {
    const step = relations.steps[place];
    if (!step || finished.done[place]) continue;
    const holding = holds.of(place);
    if (holding.length === 0) canDo.push({ step: step.step, say: sayStep(standing.job, step) });
    else {
      const named = new Set(holding.flatMap((h) => h.name ?? []));
      heldBy.push({ step: step.step, for: [...named], until: untilOf(holding) });
    }
  }
  const steps = order.flatMap((place) => {
    const step = relations.steps[place];
    if (!step) return [];
    return [
      { step: step.step, kind: step.kind, done: finished.done[place] ?? false, key: step.key },
    ];
  });
  const keysOf = (kind: StepKind) => steps.filter((s) => s.kind === kind).map((s) => s.key);
  return {
    steps: steps.map(({ step, kind, done }) => ({ step, kind, done })),
    off: keysOf('off'),
    on: keysOf('on'),
    canDo,
    heldBy,
    ...calendarOf(standing, holds, hours),
  };
}

/** The last of several ends, where each of them is known. */
function untilOf(
  holding: readonly { until: string | null; seconds: number | null }[],
): string | null {
  let last: { until: string | null; seconds: number } | null = null;
  for (const { until, seconds } of holding) {
    if (until === null || seconds === null) return null;
    if (last === null || seconds > last.seconds) last = { until, seconds };
  }
  return last?.until ?? null;
}

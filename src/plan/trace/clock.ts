/** What a piece took by the times that stand in the diary. */
import { secondsOf } from '../../model/time.ts';
import type { Entry, Job } from '../../model/types.ts';
import { verbRow } from '../../model/verbs/verbs.ts';

/** A longer gap between two marks is a break, and no work. */
const BREAK = 3600;

interface Measured {
  /** Minutes to have it off, of its last round that has any; null where no two marks tell. */
  off: number | null;
  on: number | null;
}

/**
 * A mark is made behind the work that it tells of: the time since the mark before it is what it took, and what was noted
 * or looked up in between is part of that. A break, and a clock set back, count as nothing.
 */
export function measured(job: Job): ReadonlyMap<string, Measured> {
  const sums = new Map<string, { off: Sum; on: Sum }>();
  let before: Entry | null = null;
  let pending: number | null = null;
  for (const entry of job.entries) {
    if (!job.living.has(entry.id) || entry.verb === 'undo') continue;
    const gap = before ? secondsOf(entry.at) - secondsOf(before.at) : null;
    before = entry;
    if (gap !== null) pending = (pending ?? 0) + (gap >= 0 && gap <= BREAK ? gap : 0);
    const { time } = verbRow(entry.verb);
    if (time === null) continue;
    if (entry.piece !== undefined && time !== 'other' && pending !== null) {
      const both = sums.get(entry.piece) ?? { off: [0, null], on: [0, null] };
      const round = job.rounds.get(entry.id) ?? 1;
      const [last, seconds] = both[time];
      both[time] = [round, (last === round ? (seconds ?? 0) : 0) + pending];
      sums.set(entry.piece, both);
    }
    pending = 0;
  }
  // Marks that were all made in one go, or after a break, say nothing of how long the work took.
  const minutes = ([, seconds]: Sum) => (seconds ? Math.round(seconds / 60) || null : null);
  const both = [...sums].map(
    ([piece, { off, on }]) => [piece, { off: minutes(off), on: minutes(on) }] as const,
  );
  return new Map(both);
}

/** Round, and seconds in it. */
type Sum = [round: number, seconds: number | null];

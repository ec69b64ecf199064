/** What a piece took by the times that stand in the diary. */
import { secondsOf } from '../../model/time.ts';
import type { Entry, Job, Verb } from '../../model/types.ts';

/** A longer gap between two marks is a break, and no work. */
const BREAK = 3600;
const OFF: readonly Verb[] = ['out', 'state', 'removed'];
const ON: readonly Verb[] = ['in', 'tight', 'fitted'];

export interface Measured {
  /** Minutes to have it off, of its last round that has any; null where no two marks tell. */
  off: number | null;
  on: number | null;
}

/**
 * A mark is made behind the work that it tells of: the time since the mark before it, whatever that was about, is what
 * it took. The first mark of all, and one behind a break or a clock set back, tell nothing.
 */
export function measured(job: Job): ReadonlyMap<string, Measured> {
  const sums = new Map<string, { off: Sum; on: Sum }>();
  let before: Entry | null = null;
  for (const entry of job.entries) {
    if (!job.living.has(entry.id) || entry.verb === 'undo') continue;
    const gap = before ? secondsOf(entry.at) - secondsOf(before.at) : Number.NaN;
    before = entry;
    const way = OFF.includes(entry.verb) ? 'off' : ON.includes(entry.verb) ? 'on' : null;
    if (entry.piece === undefined || way === null || !(gap >= 0 && gap <= BREAK)) continue;
    const both = sums.get(entry.piece) ?? { off: [0, null], on: [0, null] };
    const round = job.rounds.get(entry.id) ?? 1;
    const [last, seconds] = both[way];
    both[way] = [round, (last === round ? (seconds ?? 0) : 0) + gap];
    sums.set(entry.piece, both);
  }
  const minutes = ([, seconds]: Sum) => (seconds === null ? null : Math.round(seconds / 60));
  return new Map(
    [...sums].map(([piece, { off, on }]) => [piece, { off: minutes(off), on: minutes(on) }]),
  );
}

/** Round, and seconds in it. */
type Sum = [round: number, seconds: number | null];

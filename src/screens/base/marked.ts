/** Which row of the job is marked, and which piece a key is about. */
import type { Job } from '../../model/types.ts';
import { ladder } from '../../plan/ladder.ts';
import { nextNow } from '../../plan/next/next-now.ts';
import type { State } from './state.ts';

/** The marked row of the job: a piece's key, or a task's name on the ladder; the next one where `here` is none. */
export function markedOf(job: Job, here: string | null, now: string): string | null {
  const names = ladder(job, now).map((r) => r.name);
  if (here !== null && names.includes(here)) return here;
  // A look for the fault has no row of its own.
  const rung = nextNow(job, now)?.rung ?? '';
  return rung !== '' ? rung : (names[0] ?? null);
}

/** The piece that a key is about; null where a task is marked. */
export function markedPiece({ view, open, now }: State): string | null {
  if (view.screen === 'piece') return view.piece;
  const rung = open && view.screen === 'job' ? markedOf(open.job, view.here, now) : null;
  return rung !== null && open?.job.pieces.has(rung) ? rung : null;
}

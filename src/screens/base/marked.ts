/** Which row of the job, or which piece, a key is about. */
import { ladder } from '../now/ladder.ts';
import { nextNow } from '../now/next-now.ts';
import type { State } from './state.ts';

/** The row of the job that is marked: a piece's key, or a task's name on the ladder; the next one where none is. */
export function markedRung(state: State): string | null {
  const job = state.open?.job;
  if (!job || state.view.screen !== 'job') return null;
  const names = ladder(job, state.now).map((r) => r.name);
  const { here } = state.view;
  if (here !== null && names.includes(here)) return here;
  return nextNow(job, state.now)?.rung ?? names[0] ?? null;
}

/** The piece that a key is about; null where a task is marked. */
export function markedPiece(state: State): string | null {
  if (state.view.screen === 'piece') return state.view.piece;
  const rung = markedRung(state);
  return rung !== null && state.open?.job.pieces.has(rung) ? rung : null;
}

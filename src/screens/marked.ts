/** Which piece a key on the job, or on a piece, is about. */
import { nextStep } from '../plan/next.ts';
import type { State } from './state.ts';

/** The piece that is marked; the next one where none is. */
export function hereInJob(state: State): string | null {
  const job = state.open?.job;
  if (!job || state.view.screen !== 'job') return null;
  const { here } = state.view;
  if (here !== null && job.pieces.has(here)) return here;
  return nextStep(job)?.piece ?? job.pieces.keys().next().value ?? null;
}

export function markedPiece(state: State): string | null {
  return state.view.screen === 'piece' ? state.view.piece : hereInJob(state);
}

/** Bolts whose torque has still to be looked up. */
import { byNoFigure, notSet } from '../../job/fold/no-figure.ts';
import type { Job, PieceNow } from '../../model/types.ts';
import { caresOf } from '../care/care.ts';

/**
 * Of a piece that is undone or was: all without a figure where it can hurt somebody or wants the maker's order; of any
 * other what was tightened by none.
 */
export function torqueUnknown(job: Job, piece: PieceNow): string[] {
  if (piece.where === 'home') return [];
  return caresOf(piece.spec).care.length > 0 ? notSet(job, piece) : byNoFigure(job, piece);
}

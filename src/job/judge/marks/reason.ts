/** What the figures say of a bolt in a hole where it does not belong. */
import { type Fit, fit, fitLength } from '../../../bolt/fit/fit.ts';
import type { HoleNow, Job, PieceNow } from '../../../model/types.ts';
import { placeOf } from '../../fold/place.ts';
import type { InHand } from './hand.ts';

/** Null when nothing is known of the kind but its letter. */
export function fitOfHand(job: Job, piece: PieceNow, hole: HoleNow, hand: InHand): Fit | null {
  const place = placeOf(piece, hole, job.upper.kinds);
  if (hand.length !== undefined) return fitLength(hand.length, hand.with, place);
  const kind = job.upper.kinds.get(hand.kind);
  return kind && place.takes ? fit(kind, hand.with, place) : null;
}

/** The reason in mm, or null when there is none but the letter. */
export function reasonInWords(
  job: Job,
  piece: PieceNow,
  hole: HoleNow,
  hand: InHand,
): string | null {
  const fitted = fitOfHand(job, piece, hole, hand);
  if (!fitted || fitted.verdict === null || fitted.verdict === 'right') return null;
  return fitted.why;
}

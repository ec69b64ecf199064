/** Why a bolt does not belong in a hole, in mm where that is known. */
import type { HoleNow, Job, PieceNow } from '../types.ts';
import type { InHand } from './hand.ts';

/** One sentence, or null when nothing can be said but that it is another kind. */
export function reasonInWords(
  job: Job,
  _piece: PieceNow,
  hole: HoleNow,
  hand: InHand,
): string | null {
  const own = hole.belongs ? job.upper.kinds.get(hole.belongs.kind)?.length : null;
  const held = hand.length ?? job.upper.kinds.get(hand.kind)?.length;
  if (own == null || held == null || own === held) return null;
  const mm = Math.abs(held - own);
  return held > own ? `It is ${mm} mm too long.` : `It is ${mm} mm too short.`;
}

/** Which lengths may go into a hole of a piece, by all that the job knows of it. */
import { type Lengths, lengthsFor } from '../../bolt/length/lengths.ts';
import { hardestOf, readStages } from '../../bolt/torque/stages.ts';
import { textsIn } from '../../model/said.ts';
import type { HoleNow, Kind, PieceNow } from '../../model/types.ts';
import { torqueOf } from './once.ts';
import { placeOf } from './place.ts';

/** Null where nobody knows what belongs there, or its thread has no figures. */
export function lengthsOf(
  piece: PieceNow,
  hole: HoleNow,
  kinds: ReadonlyMap<string, Kind>,
): Lengths | null {
  return lengthsFor({
    place: placeOf(piece, hole, kinds),
    joint: textsIn(piece.spec.joint),
    torque: hardestOf(readStages(torqueOf(piece, hole.name)?.text ?? '')),
  });
}

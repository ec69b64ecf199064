/** The pass that is on, for one hole: with its own torque where it has one. */
import type { Kind, PassSpec, PieceNow } from '../../model/types.ts';
import { passAt } from '../../piece/passes.ts';

export function passFor(
  piece: PieceNow,
  kinds: ReadonlyMap<string, Kind>,
  pass: PassSpec,
  hole: string | null,
): PassSpec {
  return passAt(piece.spec, kinds, pass, hole ?? '');
}

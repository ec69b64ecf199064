/** The pass that is on, for one hole: with its own torque where it has one. */
import type { Kind, PassSpec, PieceNow, Torque } from '../../model/types.ts';
import { passAt } from '../../piece/passes.ts';

/** The torque of a hole as printed: its own, else that of the piece. */
export function torqueOf(piece: PieceNow, hole: string): Torque | null {
  return piece.spec.holes.get(hole)?.torque ?? piece.spec.torque;
}

export function passFor(
  piece: PieceNow,
  kinds: ReadonlyMap<string, Kind>,
  pass: PassSpec,
  hole: string | null,
): PassSpec {
  return passAt(piece.spec, kinds, pass, hole ?? '');
}

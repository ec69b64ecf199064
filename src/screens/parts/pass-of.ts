/** The pass that is on, for one hole: with its own torque where it has one. */
import type { Kind, PassSpec, PieceNow, Torque } from '../../job/types.ts';
import { passesOf } from '../../piece/passes.ts';

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
  const own = piece.spec.holes.get(hole ?? '')?.torque ?? null;
  if (own === null) return pass;
  const mine = passesOf({ ...piece.spec, torque: own }, kinds);
  return mine.find((p) => p.name === pass.name) ?? pass;
}

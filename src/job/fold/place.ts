/** A hole of a piece as the fit of a bolt needs it. */
import type { Place } from '../../bolt/fit/reach.ts';
import type { HoleNow, Kind, PieceNow } from '../../model/types.ts';

export function placeOf(piece: PieceNow, hole: HoleNow, kinds: ReadonlyMap<string, Kind>): Place {
  const kind = hole.belongs ? kinds.get(hole.belongs.kind) : undefined;
  return {
    takes: kind && hole.belongs ? { kind, with: hole.belongs.with } : null,
    hole: piece.spec.holes.get(hole.name) ?? null,
    piece: piece.spec,
  };
}

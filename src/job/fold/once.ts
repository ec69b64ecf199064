/** Which bolts are used once, or may be, as kinds and torques say. */
import { readStages } from '../../bolt/torque/stages.ts';
import type { HoleNow, Job, Kind, PieceNow, Torque } from '../../model/types.ts';
import { passesAt } from '../../piece/passes.ts';

/** The torque of a hole as printed: its own, else that of the piece. */
export function torqueOf({ spec }: PieceNow, hole: string): Torque | null {
  return spec.holes.get(hole)?.torque ?? spec.torque;
}

/** Its kind is used once, or the torque of its hole is printed with new bolts. */
export function isUsedOnce(piece: PieceNow, hole: string, kind: Kind | undefined): boolean {
  return kind?.once === true || readStages(torqueOf(piece, hole)?.text ?? '').once;
}

/** Holes whose bolts are turned by angle, as it is printed: such bolts stretch, and many makers want new ones. */
export function turnedByAngle(job: Job, piece: PieceNow, holes: readonly HoleNow[]): HoleNow[] {
  const { kinds } = job.upper;
  return holes.filter((hole) => {
    const kind = hole.belongs?.kind ?? '';
    return (
      !isUsedOnce(piece, hole.name, kinds.get(kind)) &&
      passesAt(piece.spec, kinds, hole.name).some((p) => p.name.startsWith('angle'))
    );
  });
}

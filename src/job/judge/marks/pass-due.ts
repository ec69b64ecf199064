/** Which pass is on: what the holes of a piece lack, and the earliest of that. */
import type { HoleNow, Kind, PassSpec, PieceNow, PieceSpec } from '../../../model/types.ts';
import { passesAt } from '../../../piece/passes.ts';
import { type RoundStage, stagesOf } from '../../../piece/sequence/rounds.ts';

type Kinds = ReadonlyMap<string, Kind>;

/** The earliest pass that a hole of the piece lacks; null when all are done. */
export function passDue(piece: PieceNow, kinds: Kinds): PassSpec | null {
  return stageDue(piece, kinds, worked(piece.holes))?.pass ?? null;
}

/** The earliest that one of these holes still lacks, with the holes whose turn it is; null when all are done. */
export function stageDue(
  piece: PieceNow,
  kinds: Kinds,
  holes: readonly HoleNow[],
): RoundStage | null {
  const { spec } = piece;
  const due = new Map(holes.map((h) => [h.name, nextPass(spec, kinds, h)]));
  const names = piece.holes.map((h) => h.name);
  const stages = stagesOf(spec, kinds, names);
  return stages.find((s) => s.holes.some((hole) => due.get(hole) === s.pass.name)) ?? null;
}

/** The holes that were worked on in this round; all of them where none was. */
export function worked(holes: readonly HoleNow[]): readonly HoleNow[] {
  const touched = holes.filter((h) => h.state !== 'home');
  return touched.length > 0 ? touched : holes;
}

/** What a bolt lacks behind the last pass that it had; undefined when it had all. */
function nextPass(spec: PieceSpec, kinds: Kinds, hole: HoleNow): string | undefined {
  const own = passesAt(spec, kinds, hole.name).map((p) => p.name);
  return own[own.findLastIndex((name) => hole.passes.includes(name)) + 1];
}

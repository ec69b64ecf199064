/** What is tightened by no figure: nothing is printed for a hole, and nobody noted what the wrench was set to. */
import { leadsToFigure } from '../../bolt/torque/no-figure-said.ts';
import { remembering } from '../../model/remembering.ts';
import type { Job, Kind, PieceNow, PieceSpec } from '../../model/types.ts';
import { list } from '../../model/words.ts';
import { passesAt } from '../../piece/passes.ts';
import { livingAt } from './living-of.ts';

type Kinds = ReadonlyMap<string, Kind>;

export const NO_TORQUE = "Torque not known: the manual's figure.";

/** It is asked for each hole of a ring. */
const leads = remembering(leadsToFigure);

/** No pass of this hole has a torque, an angle or a text to look it up by: `banana` is none. */
export function hasNoFigure(spec: PieceSpec, kinds: Kinds, hole: string): boolean {
  return passesAt(spec, kinds, hole).every(
    ({ torque, angle }) =>
      angle === null && (torque === null || (torque.quantity === null && !leads(torque.text))),
  );
}

/** Of all its holes, those without one; in the order of the piece. */
function withoutFigure({ spec, holes }: PieceNow, kinds: Kinds): string[] {
  return holes.map((h) => h.name).filter((hole) => hasNoFigure(spec, kinds, hole));
}

/** Of those, what neither file nor diary of this round has a figure for. */
export function notSet(job: Job, piece: PieceNow): string[] {
  const { spec, round } = piece;
  const open = withoutFigure(piece, job.upper.kinds);
  if (open.length === 0) return [];
  const set = livingAt(job, spec.key).filter(
    (e) => e.verb === 'tight' && e.set !== undefined && (job.rounds.get(e.id) ?? round) === round,
  );
  const told = new Set(set.flatMap((e) => e.hole ?? piece.holes.map((h) => h.name)));
  return open.filter((hole) => !told.has(hole));
}

/** Bolts that were tightened by no figure: beyond snug, as far as anybody noted. */
export function byNoFigure(job: Job, piece: PieceNow): string[] {
  const tightened = new Set(
    piece.holes.filter((h) => h.passes.some((p) => p !== 'snug')).map((h) => h.name),
  );
  return tightened.size === 0 ? [] : notSet(job, piece).filter((hole) => tightened.has(hole));
}

/** `torque of 1 and 2 not known: the manual's figure`; of all alike without their names. Null where each has one. */
export function noFigureSaid(piece: PieceNow, holes: readonly string[]): string | null {
  if (holes.length === 0) return null;
  const of = holes.length === piece.holes.length ? '' : ` of ${list(holes)}`;
  return `torque${of} not known: the manual's figure`;
}

/** Which hole comes next on a piece, from where it stands. */
import type { HoleNow, Kind, PieceNow } from '../../model/types.ts';
import { indicesOf, restOf } from './choose.ts';
import { roundOf, stagesOf } from './rounds.ts';
import { sequence } from './sequence.ts';

export interface NextHole {
  next: string;
  /** What is left of the pass, in its order; `next` leads. */
  rest: string[];
  /** The order is the maker's, printed in the file. */
  printed: boolean;
}

const namesOf = (holes: readonly HoleNow[]) => holes.map((hole) => hole.name);

/** A bolt is in it, and nothing speaks against turning it. */
function holds(hole: HoleNow): boolean {
  const turns = hole.state === 'in' || hole.state === 'tight';
  return turns && hole.trouble === null && hole.conflict === null;
}

/**
 * What is left of a pass, in its order; null when nothing is. As long as only the beginning of the order is
 * done, the rest stays as it was shown; after any other hole it is ordered anew. Untouched bolts count as done.
 */
export function nextHole(
  piece: PieceNow,
  kinds: ReadonlyMap<string, Kind>,
  pass: string,
): NextHole | null {
  const names = namesOf(piece.holes);
  const done = piece.holes.filter((h) => h.passes.includes(pass) || h.state === 'home');
  const open = piece.holes.filter((h) => holds(h) && !done.includes(h));
  // Where the pass comes group by group: the first group that lacks it.
  const stages = stagesOf(piece.spec, kinds, names).filter((s) => s.pass.name === pass);
  const stage = stages.find((s) => open.some((h) => s.holes.includes(h.name)));
  const left = open.filter((h) => stage?.holes.includes(h.name));
  const whole = orderOf(piece, kinds, pass, names);
  const task = {
    done: done.map((h) => names.indexOf(h.name)),
    left: left.map((h) => names.indexOf(h.name)),
  };
  const begun = restOf(whole.order, task)?.flatMap((i) => names[i] ?? []);
  const skip = piece.holes.filter((h) => !done.includes(h) && !left.includes(h));
  const rest =
    begun ??
    (whole.fixed
      ? whole.order.filter((i) => task.left.includes(i)).flatMap((i) => names[i] ?? [])
      : sequence(piece.spec, kinds, names, namesOf(done), namesOf(skip)).tighten);
  const next = rest[0];
  return next === undefined ? null : { next, rest, printed: piece.spec.sequence !== null };
}

/** Order of all holes in a pass, and whether what is done leaves it as it is. */
function orderOf(
  piece: PieceNow,
  kinds: ReadonlyMap<string, Kind>,
  pass: string,
  names: readonly string[],
): { order: number[]; fixed: boolean } {
  const { spec } = piece;
  if (spec.sequence !== null) return { order: indicesOf(spec.sequence, names), fixed: true };
  if (pass === 'final') {
    const round = roundOf(spec, kinds, names);
    return { order: round.map((name) => names.indexOf(name)), fixed: true };
  }
  const { tighten } = sequence(spec, kinds, names);
  return { order: tighten.map((name) => names.indexOf(name)), fixed: false };
}

/** The first of `from` in loosening order; null when `from` is empty. */
export function loosenNext(
  piece: PieceNow,
  kinds: ReadonlyMap<string, Kind>,
  from: readonly string[],
): string | null {
  const { loosen } = sequence(piece.spec, kinds, namesOf(piece.holes));
  return loosen.find((name) => from.includes(name)) ?? from[0] ?? null;
}

/** Which hole comes next on a piece, from where it stands. */
import { kept } from '../../model/kept.ts';
import type { HoleNow, Kind, PieceNow, PieceSpec } from '../../model/types.ts';
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
  const { spec, holes } = piece;
  const names = namesOf(holes);
  const isDone = holes.map((h) => h.passes.includes(pass) || h.state === 'home');
  const open = new Set(holes.filter((h, i) => holds(h) && !isDone[i]).map((h) => h.name));
  // Where the pass comes group by group: the first group that lacks it.
  const stages = stagesOf(spec, kinds, names).filter((s) => s.pass.name === pass);
  const stage = new Set(stages.find((s) => s.holes.some((name) => open.has(name)))?.holes);
  const isLeft = names.map((name) => open.has(name) && stage.has(name));
  const whole = orderOf(spec, kinds, pass, names);
  const indices = [...names.keys()];
  const done = indices.filter((i) => isDone[i]);
  const left = indices.filter((i) => isLeft[i]);
  const named = (some: readonly number[]) => some.flatMap((i) => names[i] ?? []);
  const begun = restOf(whole.order, { done, left });
  const skip = indices.filter((i) => !isDone[i] && !isLeft[i]);
  const rest =
    (begun && named(begun)) ??
    (whole.fixed
      ? named(whole.order.filter((i) => isLeft[i]))
      : sequence(spec, kinds, names, named(done), named(skip)).tighten);
  const next = rest[0];
  return next === undefined ? null : { next, rest, printed: piece.spec.sequence !== null };
}

/** Order of all holes in a pass, and whether what is done leaves it as it is. */
function orderOf(
  spec: PieceSpec,
  kinds: ReadonlyMap<string, Kind>,
  pass: string,
  names: readonly string[],
): { order: number[]; fixed: boolean } {
  const isRound = pass === 'final';
  const make = () => {
    if (spec.sequence !== null) return indicesOf(spec.sequence, names);
    const order = isRound ? roundOf(spec, kinds, names) : sequence(spec, kinds, names).tighten;
    return indicesOf(order, names);
  };
  const question = `${isRound ? 'round' : 'order'} of ${names.join(' ')}`;
  return { order: kept(spec, question, make, kinds), fixed: isRound || spec.sequence !== null };
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

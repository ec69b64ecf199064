/** Which hole is next, in the order of the piece, counting what is done. */
import type { Kind, PieceNow } from '../job/types.ts';

export interface NextHole {
  next: string;
  /** All that still lack the pass, in the order in which they come. */
  rest: string[];
  /** The order is the maker's, as the file has it. */
  printed: boolean;
}

export function nextHole(
  piece: PieceNow,
  _kinds: ReadonlyMap<string, Kind>,
  pass: string,
): NextHole | null {
  const order = piece.spec.sequence ?? piece.holes.map((h) => h.name);
  const rest = order.filter((name) => {
    const hole = piece.holes.find((h) => h.name === name);
    return hole !== undefined && !hole.passes.includes(pass);
  });
  const next = rest[0];
  return next === undefined ? null : { next, rest, printed: piece.spec.sequence !== null };
}

/** Of these holes, the one that comes out next. */
export function loosenNext(_piece: PieceNow, free: readonly string[]): string | null {
  return free[0] ?? null;
}

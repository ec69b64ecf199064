/** Fits of a piece by names: a kind's letter in a hole's name. */
import { type Fit, fit } from '../../bolt/fit/fit.ts';
import type { Job, PieceNow } from '../../model/types.ts';
import { placeOf } from './place.ts';

/** Null where the kind or the hole is not known. Each is judged once. */
export function fitOfPiece(job: Job, piece: PieceNow): (kind: string, hole: string) => Fit | null {
  const { kinds } = job.upper;
  const holes = new Map(piece.holes.map((h) => [h.name, h]));
  const known = new Map<string, Fit | null>();
  return (letter, name) => {
    const key = `${letter} ${name}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const kind = kinds.get(letter);
    const hole = holes.get(name);
    const judged = kind && hole ? fit(kind, null, placeOf(piece, hole, kinds)) : null;
    known.set(key, judged);
    return judged;
  };
}

/** Letters of the kinds that belong in a piece, each once, in the order of its holes. */
export function kindsIn(piece: PieceNow): string[] {
  return [...new Set(piece.holes.flatMap((h) => (h.belongs ? [h.belongs.kind] : [])))];
}

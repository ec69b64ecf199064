/** What must be back before a piece can go on: pieces under it that came off and are not finished. */
import { carrierOf, oversIn } from '../overs.ts';
import type { Job, PieceNow } from '../types.ts';

/** A is under B: B comes off before A and goes back after it. */
export function blockers(job: Job, piece: PieceNow): PieceNow[] {
  return piecesUnder(job, piece).filter((p) => !isBack(p));
}

/** Pieces that lie under this one. */
function piecesUnder(job: Job, over: PieceNow): PieceNow[] {
  const overs = oversIn(job);
  return [...job.pieces.values()].filter((p) => overs.get(p.spec.key)?.has(over.spec.key));
}

/** Pieces over this one; what it comes off with is none of them. */
export function piecesOver(job: Job, { spec }: PieceNow): PieceNow[] {
  const keys = [...(oversIn(job).get(spec.key) ?? [])].filter((key) => !spec.along.includes(key));
  return keys.flatMap((key) => job.pieces.get(key) ?? []);
}

/** Those of them that are still on the machine. */
export function stillOver(job: Job, piece: PieceNow): PieceNow[] {
  return piecesOver(job, piece).filter(
    (over) => over.away === 'no' && over.where !== 'open' && !carrierOf(job, over),
  );
}

function isBack(piece: PieceNow): boolean {
  if (piece.holes.length === 0) return piece.away === 'no';
  return piece.where === 'home' || piece.where === 'tight' || piece.where === 'tested';
}

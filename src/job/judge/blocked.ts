/** What must be back before a piece can go on: pieces under it that came off and are not finished. */
import type { Job, PieceNow } from '../types.ts';

/** A is under B: B comes off before A and goes back after it. */
export function blockers(job: Job, piece: PieceNow): PieceNow[] {
  return piecesUnder(job, piece).filter((p) => !isBack(p));
}

/** Pieces that lie under this one. */
function piecesUnder(job: Job, over: PieceNow): PieceNow[] {
  return [...job.pieces.values()].filter((p) => p.spec.under.includes(over.spec.key));
}

/** Pieces over this one that are still on the machine. */
export function stillOver(job: Job, piece: PieceNow): PieceNow[] {
  return piece.spec.under.flatMap((key) => {
    const over = job.pieces.get(key);
    return over && over.away === 'no' && over.where !== 'open' ? [over] : [];
  });
}

function isBack(piece: PieceNow): boolean {
  if (piece.holes.length === 0) return piece.away === 'no';
  return piece.where === 'home' || piece.where === 'tight' || piece.where === 'tested';
}

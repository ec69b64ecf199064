/** What must be back before a piece can go on: pieces under it that came off and are not finished. */

import type { Job, PieceNow } from '../../../model/types.ts';
import { carrierOf, layersOf } from '../../fold/overs.ts';

/**
 * A is under B: B comes off before A and goes back after it. What lies further down is meant too where all between is
 * back already, or never came off.
 */
export function blockers(job: Job, piece: PieceNow): PieceNow[] {
  const { unders } = layersOf(job);
  const through = new Set([piece.spec.key]);
  const found = new Set<PieceNow>();
  for (const over of through) {
    for (const key of unders.get(over) ?? []) {
      const below = job.pieces.get(key);
      if (!below) continue;
      if (isBack(below)) through.add(key);
      else found.add(below);
    }
  }
  return [...found];
}

/** Pieces over this one; what it comes off with is none of them. */
export function piecesOver(job: Job, { spec }: PieceNow): PieceNow[] {
  const keys = [...(layersOf(job).overs.get(spec.key) ?? [])].filter(
    (key) => !spec.along.includes(key),
  );
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

/** Where a piece stands, and what a hole takes, in words. */

import { carrierOf } from '../../job/fold/overs.ts';
import { sayUnder } from '../../job/fold/say-hole.ts';
import type { Job, PieceNow, RowItem } from '../../model/types.ts';
import { inPlace, list, listPieces } from '../../model/words.ts';
import { fingerTight } from '../order/job-now.ts';
import { stillIn, toFill } from './piece-now.ts';

/** `coming off, 3 of 11 out`, `off, bolts in cup 2`, `on by fingers, 3 of 11`, `off with Left cover`. */
export function sayWhere(piece: PieceNow, job: Job): string {
  const carriers = piece.spec.along.flatMap((key) => job.pieces.get(key) ?? []);
  if (piece.where === 'home' && carriers.length > 0) {
    // What comes with another piece has no marks of its own.
    const carrier = carrierOf(job, piece);
    return carrier ? `off with ${carrier.spec.name}` : `comes with ${listPieces(carriers)}`;
  }
  const again = piece.round > 1 ? `, round ${piece.round}` : '';
  return `${where(piece)}${again}`;
}

function where(piece: PieceNow): string {
  const n = piece.holes.length;
  const out = n - stillIn(piece).length;
  if (piece.away === 'aside') return 'moved aside, still connected';
  if (piece.away === 'removed' && out < n) return `off, ${out} of ${n} bolts out`;
  if (n === 0) {
    if (piece.where === 'open') return piece.tray === null ? 'off' : `off, ${piece.tray}`;
    return piece.where === 'on' ? 'back on' : 'untouched';
  }
  switch (piece.where) {
    case 'home':
      return 'untouched';
    case 'off':
      return `coming off, ${out} of ${n} out`;
    case 'open':
      return piece.tray === null ? 'off' : `off, bolts ${inPlace(piece.tray)}`;
    case 'on':
      return whereOn(piece);
    case 'tight':
    case 'tested':
      return piece.where;
  }
}

function whereOn(piece: PieceNow): string {
  const n = piece.holes.length;
  const tight = piece.holes.filter((h) => h.state === 'tight').length;
  const back = tight + fingerTight(piece).length;
  if (tight > 0 || (back > 0 && toFill(piece).length === 0)) return `in, ${tight} of ${n} tight`;
  // On its place, and all its bolts are out again: nothing holds it.
  if (back === 0) return 'on its place, no bolt in';
  return `on by fingers, ${back} of ${n}`;
}

/** `M, M6x35 flange, clip under the head`; what is not noted is said to be so. */
export function sayTakes(job: Job, item: RowItem | null): string {
  if (item === null) return 'a bolt that nobody has noted';
  const text = job.upper.kinds.get(item.kind)?.text ?? '';
  const under = item.with.length > 0 ? `${list(item.with.map(sayUnder))} under the head` : '';
  return [item.kind, text, under].filter((t) => t !== '').join(', ');
}

/** The next right thing for a piece, as far as the piece itself can say. */
import type { Job, PieceNow } from '../../model/types.ts';
import { passUnderWay, stillIn, toFill, toSettle } from './piece-now.ts';
import { roundLeft } from './round-left.ts';

/**
 * `row` type what came out, `out` its bolts, `count` them before it is pried off, `remove` it (no bolts),
 * `settle` what differs, `in` its bolts, `fit` it (no bolts), `mend` a pulled thread, `tight` its bolts, `done`.
 */
export type WayNow =
  | 'row'
  | 'out'
  | 'count'
  | 'remove'
  | 'settle'
  | 'in'
  | 'fit'
  | 'mend'
  | 'tight'
  | 'done';

export function wayNow(job: Job, piece: PieceNow): WayNow {
  const { holes, away } = piece;
  if (holes.length === 0) {
    if (away !== 'no') return 'fit';
    if (piece.fitted) return 'done';
    if (comesAlong(piece)) return 'done';
    return piece.spec.row === null ? 'row' : 'remove';
  }
  switch (piece.where) {
    case 'home':
      return 'out';
    case 'off':
      if (away !== 'no') return onWay(job, piece);
      return stillIn(piece).length > 0 ? 'out' : 'count';
    case 'open':
    case 'on':
      return onWay(job, piece);
    case 'tight':
    case 'tested':
      return roundLeft(job, piece).length > 0 ? 'tight' : 'done';
  }
}

/** It comes off with another piece and has no step of its own. */
export function comesAlong({ where, holes, spec }: PieceNow): boolean {
  return where === 'home' && holes.length === 0 && spec.along.length > 0;
}

function onWay(job: Job, piece: PieceNow): WayNow {
  if (toSettle(piece).length > 0) return 'settle';
  if (toFill(piece).length > 0) return 'in';
  if (pulledHole(piece) !== null) return 'mend';
  return passUnderWay(piece, job.upper.kinds) === null ? 'done' : 'tight';
}

/** The first hole whose thread is pulled: the others are left as they are until it is mended. */
export function pulledHole({ holes }: PieceNow): string | null {
  return holes.find((h) => h.trouble === 'pulled')?.name ?? null;
}

/** Said on a key: `take it off`. */
export const WAY_LABELS: Readonly<Record<WayNow, string>> = {
  row: 'type the row that came out',
  out: 'take it off, a key a bolt',
  count: 'count before you pry',
  remove: 'it is off',
  settle: 'settle what differs',
  in: 'put it back',
  fit: 'it is back on',
  mend: 'how it is mended',
  tight: 'tighten',
  done: 'to the job',
};

/** May this piece come off, be moved aside, go on? A bolt that is still in stops what would pry. */

import type { Inside, Job, PieceNow, Verdict } from '../../../model/types.ts';
import { listPieces } from '../../../model/words.ts';
import { sayThing } from '../../fold/inside.ts';
import {
  already,
  badName,
  list,
  namesOf,
  noPiece,
  refuse,
  type Stamp,
  type Wished,
  write,
} from '../base/verdict.ts';
import { blockers, orderSaid, overSaid } from './blocked.ts';
import { insideUnder, type Lacking, notHere } from './inside.ts';
import { onceSaid, unnotedOnce } from './used-once.ts';

export function judgeOff(job: Job, wish: Wished<'off' | 'aside' | 'on'>, stamp: Stamp): Verdict {
  const value = wish.do === 'aside' ? 'aside' : 'all';
  const tray = wish.tray === undefined ? {} : { tray: wish.tray };
  const entry = { verb: 'removed', value, piece: wish.piece, ...tray } as const;
  const piece = job.pieces.get(wish.piece);
  if (!piece) return newPiece(wish, entry, stamp);
  if (piece.away === (wish.do === 'aside' ? 'aside' : 'removed')) return already();
  const inside = piece.holes.filter((h) => h.state !== 'out');
  if (inside.length > 0 && wish.because === undefined) {
    const [is, them] = inside.length === 1 ? ['is', 'it'] : ['are', 'them'];
    const say = `${list(namesOf(inside))} ${is} still in. Take ${them} out before you pry.`;
    return refuse('still-in', say, { holes: namesOf(inside) });
  }
  return write(stamp, wish, entry, { warnings: overSaid(job, piece) });
}

function newPiece(
  wish: Wished<'off' | 'aside' | 'on'>,
  entry: { verb: 'removed'; value: string; piece: string },
  stamp: Stamp,
): Verdict {
  const odd = badName(wish.piece);
  if (odd) return odd;
  return write(stamp, wish, entry, {
    edits: [{ edit: 'piece', piece: wish.piece }],
    warnings: [{ code: 'new-piece', say: `${wish.piece} is new in this job.` }],
  });
}

/** STOP: what went in must come out before something closes over it. */
export function refuseInside(piece: PieceNow, inside: Inside[]) {
  const said = list(inside.map(sayThing));
  const say = `Still inside: ${said}. ${piece.spec.name} closes over it: take it out first.`;
  return refuse('inside', say, { things: inside.map(({ what, count }) => ({ what, count })) });
}

/** What it needs is not here: which things, and how far they have come. */
export function refuseLacking(lacks: readonly Lacking[]) {
  return refuse('blocked', sayLacking(lacks), { by: lacks.map((l) => l.buy) });
}

export function sayLacking(lacks: readonly Lacking[]): string {
  return `Not here yet: ${list(lacks.map((l) => `${l.what} (${l.state})`))}.`;
}

export function judgeOn(job: Job, wish: Wished<'off' | 'aside' | 'on'>, stamp: Stamp): Verdict {
  const piece = job.pieces.get(wish.piece);
  if (!piece) return noPiece(job, wish.piece);
  if (piece.away === 'no') return already();
  const by = blockers(job, piece);
  if (by.length > 0 && wish.because === undefined) {
    const say = `${listPieces(by)} must be back on first: ${piece.spec.name} goes over it.`;
    return refuse('blocked', say, { by: by.map((p) => p.spec.key) });
  }
  const inside = insideUnder(job, piece.spec.key);
  if (inside.length > 0 && wish.because === undefined) return refuseInside(piece, inside);
  const lacks = notHere(job, piece.spec.key);
  if (lacks.length > 0 && wish.because === undefined) return refuseLacking(lacks);
  const seals = unnotedOnce(job, piece).filter((o) => lacks.every((l) => l.buy !== o.buy));
  const entry = { verb: 'fitted', value: 'all', piece: piece.spec.key } as const;
  return write(stamp, wish, entry, { warnings: [...orderSaid(job, piece), ...onceSaid(seals)] });
}

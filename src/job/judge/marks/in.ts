/** May this bolt go into this hole? The one place where a wrong bolt is stopped. */

import type { HoleNow, Job, PieceNow, RowItem, Verdict, Warning } from '../../../model/types.ts';
import { listPieces } from '../../../model/words.ts';
import { printItem, sameItem } from '../../../piece/row.ts';
import { sayUnder } from '../../fold/say-hole.ts';
import {
  already,
  holeField,
  list,
  namesOf,
  noPiece,
  pickHoles,
  type Refused,
  refuse,
  type Stamp,
  type Wished,
  write,
  wrong,
} from '../base/verdict.ts';
import { blockers, orderSaid } from './blocked.ts';
import { type InHand, readHand } from './hand.ts';
import { insideUnder, isNoted, type Lacking, notHere } from './inside.ts';
import { intoEmpty, noMore } from './none-left.ts';
import { refuseInside, refuseLacking, sayLacking } from './piece.ts';
import { fitOfHand, reasonInWords } from './reason.ts';
import { asksOnce, isOfBolts, onceSaid, unnotedOnce, usedOnce, whyOld } from './used-once.ts';
import { wasRounded } from './was-rounded.ts';
import { wrongBolt } from './wrong-bolt.ts';

export function judgeIn(job: Job, wish: Wished<'in'>, stamp: Stamp): Verdict {
  const piece = job.pieces.get(wish.piece);
  if (!piece) return noPiece(job, wish.piece);
  if (!wish.hand) {
    return wrong('no-hand', 'Say what is in your hand: its kind, or its length.');
  }
  const forced = wish.because !== undefined;
  const picked = pickHoles(piece, wish.holes);
  if ('ok' in picked) return picked;
  const hand = readHand(job, piece, picked, wish.hand, forced ? 'choose' : 'ask');
  if ('ok' in hand) return hand;

  const asked = wish.holes ? picked : picked.filter((h) => takes(h, hand) && isOpen(h));
  if (asked.length === 0) return noneLeft(job, piece, hand);
  const bare = wish.spares === undefined ? [] : asked.filter((h) => lacksUnder(h, hand));
  const spared = sayBare(bare, wish.spares ?? '');
  const open = asked.filter((h) => !bare.includes(h) && !holds(h, hand));
  const [first] = spared;
  if (open.length === 0) {
    return first ? refuse(first.code, first.say, { holes: namesOf(bare) }) : already();
  }
  const more = noMore(job, piece, open, hand);
  const stopped = forced ? null : stop(job, piece, open, hand, wish.holes ? open : []);
  if (stopped) return stopped;

  if (more !== null && !forced) return refuse('none-left', more, { kind: hand.kind });

  const bolts = open.map((hole) => ({ hole, item: goesIn(hole, hand) }));
  const old = usedOnce(job, piece, bolts);
  const asks = forced ? null : asksOnce(job, piece, old);
  const never = forced ? [] : neverNoted(job, piece);
  if (asks) return never.length === 0 ? asks : withLacking(asks, never);
  if (never.length > 0) return refuseLacking(never);
  const words = bolts.map(({ item }) => printItem(item));
  const value = new Set(words).size === 1 ? (words[0] ?? '') : words.join(' ');
  const entry = { verb: 'in', value, piece: piece.spec.key, ...holeField(piece, open) } as const;
  const warnings = [
    ...(isGoingOn(piece) ? orderSaid(job, piece) : []),
    ...spared,
    ...remindUnder(bolts, hand),
    ...sayOther(job, piece, open, hand),
    ...intoEmpty(job, open, hand),
    ...wasRounded(job, piece, open),
    ...(more !== null ? [{ code: 'none-left', say: more }] : []),
    ...onceSaid(old),
    ...(piece.holes.some((h) => h.state === 'in') ? [] : sayMissing(job, piece)),
  ];
  return write(stamp, wish, entry, { warnings });
}

/** What seals and is used once, and what is not here yet: told with the first bolt. */
function sayMissing(job: Job, piece: PieceNow): Warning[] {
  const lacks = notHere(job, piece.spec.key);
  const seals = unnotedOnce(job, piece).filter((o) => lacks.every((l) => l.buy !== o.buy));
  const told = lacks.map((l) => ({
    code: 'not-here',
    say: `Not here yet: ${l.what} (${l.state}).`,
  }));
  return [...onceSaid(seals), ...told];
}

/** The hole belongs to what is in the hand; what lies under the head may be left unsaid. */
function takes(hole: HoleNow, hand: InHand): boolean {
  if (!hole.belongs) return false;
  if (hole.belongs.kind !== hand.kind) return false;
  return hand.with === null || sameItem(hole.belongs, { kind: hand.kind, with: hand.with });
}

/** Its bolt is in the hand, without what belongs under the head: among several that is what is forgotten. */
function lacksUnder({ belongs, state, unsettled }: HoleNow, hand: InHand): boolean {
  if (state !== 'out' || unsettled || hand.with !== null || !belongs) return false;
  return belongs.kind === hand.kind && belongs.with.length > 0;
}

/** `7 takes copper under the head: put it under, then Space.` */
function sayBare(bare: readonly HoleNow[], then: string): Warning[] {
  if (bare.length === 0) return [];
  const alike = Map.groupBy(bare, (h) => list((h.belongs?.with ?? []).map(sayUnder)));
  const said = [...alike].map(([under, holes]) => {
    return `${list(namesOf(holes))} ${holes.length === 1 ? 'takes' : 'take'} ${under}`;
  });
  const say = `${said.join(', ')} under the head: put it under, then ${then}.`;
  return [{ code: 'not-under', say }];
}

/** Empty, or in conflict: `all` leaves out holes whose bolt is in, or never came out. */
function isOpen(hole: HoleNow): boolean {
  return hole.state === 'out' || hole.state === 'conflict';
}

function holds(hole: HoleNow, hand: InHand): boolean {
  if (hole.state !== 'in' && hole.state !== 'tight') return false;
  return (
    hole.holds?.kind === hand.kind &&
    (hand.with === null || sameItem(hole.holds, goesIn(hole, hand)))
  );
}

function goesIn(hole: HoleNow, hand: InHand): RowItem {
  if (hand.with !== null) return { kind: hand.kind, with: hand.with };
  return hole.belongs?.kind === hand.kind ? hole.belongs : { kind: hand.kind, with: [] };
}

function noneLeft(job: Job, piece: PieceNow, hand: InHand): Verdict {
  const taking = piece.holes.filter((h) => takes(h, hand));
  const inside = taking.filter((h) => h.state === 'home');
  if (taking.length > 0 && inside.length === taking.length) return notOut(inside);
  if (taking.length > 0) return already();
  return wrongBolt(job, piece, null, hand);
}

/**
 * The first thing that speaks against it, in the order in which one would see it at the machine. `named`: the holes that
 * somebody named, each of which must take what is in the hand.
 */
function stop(
  job: Job,
  piece: PieceNow,
  open: HoleNow[],
  hand: InHand,
  named: readonly HoleNow[],
): Refused | null {
  const by = blockers(job, piece);
  if (by.length > 0) {
    const say = `${listPieces(by)} must be back on first: ${piece.spec.name} goes over it.`;
    return refuse('blocked', say, { by: by.map((p) => p.spec.key) });
  }
  const things = insideUnder(job, piece.spec.key);
  if (things.length > 0) return refuseInside(piece, things);
  // What is missing is asked about before the first bolt, not again once the piece is on its place.
  const lacks = isGoingOn(piece) ? notHere(job, piece.spec.key) : [];
  const noted = lacks.filter((l) => isNoted(job, l.buy));
  if (noted.length > 0) return refuseLacking(lacks);
  const inside = open.filter((h) => h.state === 'home');
  if (inside.length > 0) return notOut(inside);
  const full = open.filter((h) => h.state === 'in' || h.state === 'tight');
  const first = full[0];
  if (first) {
    const say = `${first.name} is full: ${first.holds ? printItem(first.holds) : 'a bolt'} is in it.`;
    return refuse('full', say, { holes: namesOf(full) });
  }
  const unclear = open.filter((h) => h.unsettled || h.conflict);
  if (unclear.length > 0) return unsettled(unclear);
  const odd = named.find(
    (h) => h.belongs !== null && !takes(h, hand) && !isSame(job, piece, h, hand),
  );
  return odd ? wrongBolt(job, piece, odd, hand) : null;
}

/**
 * What is listed for the piece and nobody noted as here or ordered. Bolts and washers that are used once are asked about by
 * themselves, and a reason that was given for the joint at its gate is one for these too.
 */
function neverNoted(job: Job, piece: PieceNow): Lacking[] {
  if (!isGoingOn(piece) || whyOld(job, piece).length > 0) return [];
  return notHere(job, piece.spec.key).filter(
    ({ buy }) => !isNoted(job, buy) && !isOfBolts(job, piece, buy),
  );
}

function withLacking({ ok, refused }: Refused, lacks: readonly Lacking[]): Refused {
  return { ok, refused: { ...refused, say: `${sayLacking(lacks)} ${refused.say}` } };
}

/** It is away, or all its bolts are out and nobody noted it as fitted. */
function isGoingOn(piece: PieceNow): boolean {
  return piece.away !== 'no' || (!piece.fitted && piece.holes.every((h) => h.state === 'out'));
}

/** The same bolt under another letter, with the same things under its head. */
function isSame(job: Job, piece: PieceNow, hole: HoleNow, hand: InHand): boolean {
  const fitted = fitOfHand(job, piece, hole, hand);
  return fitted?.verdict === 'same' && fitted.sure;
}

function notOut(holes: HoleNow[]): Refused {
  const say = `${list(namesOf(holes))}: the bolt never came out.`;
  return refuse('not-out', say, { holes: namesOf(holes) });
}

function unsettled(holes: HoleNow[]): Refused {
  const said = holes.map((h) => {
    if (h.conflict) return `${h.name}: ${h.conflict.say}`;
    return `${h.name}: the file says ${h.claim ? printItem(h.claim) : 'nothing'}, ${h.found ? printItem(h.found) : 'nothing'} came out`;
  });
  return refuse('unsettled', `${said.join('. ')}. Settle first which is true.`, {
    holes: namesOf(holes),
  });
}

/** A bolt of another letter that was let in, because it is the same bolt or somebody gave a reason. */
function sayOther(job: Job, piece: PieceNow, holes: HoleNow[], hand: InHand): Warning[] {
  return holes.flatMap((hole) => {
    if (!hole.belongs || takes(hole, hand)) return [];
    const why = reasonInWords(job, piece, hole, hand);
    const say = `${hole.name} takes ${printItem(hole.belongs)}${why ? `: ${why}` : '.'}`;
    return [{ code: 'other-kind', say }];
  });
}

function remindUnder(bolts: readonly { hole: HoleNow; item: RowItem }[], hand: InHand): Warning[] {
  if (hand.with !== null) return [];
  return bolts.flatMap(({ hole, item }) => {
    if (item.with.length === 0) return [];
    return [{ code: 'under-head', say: `${hole.name} has ${list(item.with)} under the head.` }];
  });
}

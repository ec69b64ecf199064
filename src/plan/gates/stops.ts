/** What stops, in one sentence: how many, where, since when, and the way out. */

import { printInstant, secondsOf } from '../../model/time.ts';
import type { HoleNow, PieceNow } from '../../model/types.ts';
import { capital, list, listNames } from '../../model/words.ts';
import { printItem } from '../../piece/row.ts';
import type { Fluid } from '../care/fluids.ts';
import { type Inside, readThings, sayThing } from '../order/inside.ts';
import { looseOf } from '../order/loose.ts';
import { putInLine, troubleLine } from '../order/noted.ts';
import type { Standing } from '../order/standing.ts';
import { untoldCures } from '../seal/cure.ts';
import { sayOn, saySince, sayTime } from '../time/days.ts';

/** `2 rags went in through the opening under Left cover on 2 May: take them out.` */
export function stillInside({ job, lines, now }: Standing, thing: Inside): string {
  const { piece, count, total } = thing;
  const name = piece === null ? null : (job.pieces.get(piece)?.spec.name ?? piece);
  const said = lines.all.findLast(
    (line) =>
      line.verb === 'inside' &&
      (line.piece ?? null) === piece &&
      readThings(line.value).some((t) => t.what === thing.what),
  )?.says;
  const opening = name === null ? '' : ` through the opening under ${name}`;
  const where = said === undefined ? opening : `${opening} (${said})`;
  const when = sayOn(thing.since, printInstant(now));
  const them = count === 1 ? 'it' : 'them';
  if (count === total) return `${sayThing(thing)} went in${where} ${when}: take ${them} out.`;
  const all = sayThing({ ...thing, count: total });
  return `${count} of the ${all} that went in${where} ${when} ${count === 1 ? 'is' : 'are'} still inside: take ${them} out.`;
}

/** `9 is still in: stuck since 11 April (soaking). Get it out before you pry.` */
export function sayStillIn(standing: Standing, piece: PieceNow, still: readonly HoleNow[]): string {
  const hard = still.filter((h) => h.trouble !== null);
  const easy = still.filter((h) => h.trouble === null);
  const [is, it] = still.length === 1 ? ['is', 'it'] : ['are', 'them'];
  const said = [
    ...(easy.length > 0
      ? [`${listNames(easy)} ${easy.length === 1 ? 'is' : 'are'} still in.`]
      : []),
    ...hard.map((h) => `${h.name} is still in: ${h.trouble}${sinceOf(standing, piece, h)}.`),
  ];
  // Many names are one list; what is stuck says so by itself.
  const all = still.length > MOST ? [`${still.length} bolts ${is} still in.`] : said;
  return `${all.join(' ')} Get ${it} out before you pry.`;
}

/** More bolts than this are counted. */
const MOST = 6;

export function sayOdd(odd: readonly HoleNow[]): string {
  const said = odd.map((h) => {
    if (h.conflict) return `${h.name}: ${h.conflict.say}`;
    const claim = h.claim ? printItem(h.claim) : 'nothing';
    return `${h.name}: the file says ${claim}, ${h.found ? printItem(h.found) : 'nothing'} came out`;
  });
  return `${said.join('. ')}. Settle which is true before anything goes in.`;
}

/** `2 pulled since 2 May (insert M6 x 9)`. */
export function hurtSince(standing: Standing, piece: PieceNow, hurt: readonly HoleNow[]): string {
  return list(hurt.map((h) => `${h.name} ${h.trouble}${sinceOf(standing, piece, h)}`));
}

function sinceOf({ lines, now }: Standing, piece: PieceNow, hole: HoleNow): string {
  const line = troubleLine(lines, piece, hole);
  if (!line) return '';
  const says = line.says === undefined ? '' : ` (${line.says})`;
  return ` since ${saySince(line.at, printInstant(now))}${says}`;
}

/**
 * `Left cover: 1 and 2 have been only finger-tight since 2 May. Tighten them.`, `Left cover: 9 bolts are not tight: snug
 * and part done, full not yet. Tighten them.`
 */
export function looseSaid(standing: Standing, piece: PieceNow): string {
  const all = looseOf(standing.job, piece);
  const said = all.map(({ holes, lacks }) => {
    const one = holes.length === 1;
    const which = holes.length > MOST ? `${holes.length} bolts` : list(holes);
    if (lacks !== null) return `${which} ${one ? 'is' : 'are'} not tight: ${lacks}.`;
    const line = putInLine(standing.lines, piece, holes);
    const since = line ? ` since ${saySince(line.at, printInstant(standing.now))}` : '';
    return `${which} ${one ? 'has' : 'have'} been only finger-tight${since}.`;
  });
  const it = all.flatMap((l) => l.holes).length === 1 ? 'it' : 'them';
  return `${piece.spec.name}: ${said.join(' ')} Tighten ${it}.`;
}

/** `The oil has been out since 11 April. Fill it in.` */
export function fluidOut(standing: Standing, fluid: Fluid): string {
  const now = printInstant(standing.now);
  const at = standing.lines.done.get(fluid.drained)?.at;
  const since = at === undefined ? '' : ` since ${saySince(at, now)}`;
  const what = capital(fluid.what);
  const mark = fluid.fill === null ? ', and say here that it is in' : '';
  // Filled in too early it weeps out again.
  const cures = untoldCures(standing).flatMap((cure) => cure.until ?? []);
  const last = cures.toSorted((a, b) => secondsOf(a) - secondsOf(b)).at(-1);
  const when = last === undefined ? '' : ` once the joint has cured, at ${sayTime(last, now)}`;
  return `${what} has been out${since}. Fill it in${when}${mark}.`;
}

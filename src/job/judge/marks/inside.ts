/** What goes into the machine and must come out, what is seen to before a step, and how far a thing to buy has come. */

import { buyState, isHere } from '../../../model/states/buys.ts';
import type { BuySpec, Edit, Entry, Inside, Job, NewBuy, Verdict } from '../../../model/types.ts';
import { isSeal } from '../../../piece/seals.ts';
import { NAME } from '../../diary/entry.ts';
import { readThings, sayThing } from '../../fold/inside.ts';
import { lastBought } from '../../fold/living-of.ts';
import { withBelow } from '../../fold/overs.ts';
import {
  already,
  list,
  meant,
  noPiece,
  type Stamp,
  type Wished,
  write,
  wrong,
} from '../base/verdict.ts';

export function judgeInside(job: Job, wish: Wished<'inside' | 'cleared'>, stamp: Stamp): Verdict {
  if (wish.piece !== undefined && !job.pieces.has(wish.piece)) return noPiece(job, wish.piece);
  const place = wish.piece === undefined ? {} : { piece: wish.piece };
  const what = wish.what.trim();
  const things = what === 'all' && wish.do === 'cleared' ? [] : readThings(what);
  if (what === '' || (what !== 'all' && things.length === 0)) {
    return wrong('no-thing', 'Say how many of what: 2 rags, 1 plug.');
  }
  if (wish.do === 'inside') return write(stamp, wish, { verb: 'inside', value: what, ...place });
  const there = job.inside.filter((i) => wish.piece === undefined || i.piece === wish.piece);
  if (what === 'all' && there.length === 0) return already();
  const odd = things.find((t) => !there.some((i) => i.what === t.what && i.count >= t.count));
  if (odd) {
    const has =
      there.length === 0 ? 'nothing is noted as inside' : `inside is ${list(there.map(sayThing))}`;
    return wrong('not-inside', `${sayThing(odd)}: ${has}.`, { what: odd.what });
  }
  if (wish.piece !== undefined || what === 'all') {
    return write(stamp, wish, { verb: 'cleared', value: what, ...place });
  }
  // Said without its opening, it came out of the one that has it all.
  const openings = [...new Set(there.map((i) => i.piece))].filter((piece) =>
    things.every((t) =>
      there.some((i) => i.piece === piece && i.what === t.what && i.count >= t.count),
    ),
  );
  const [opening, ...others] = openings;
  if (opening === undefined || others.length > 0) {
    const named = [...new Set(there.flatMap((i) => i.piece ?? []))];
    return wrong('which-opening', `Which opening? Inside is something of ${list(named)}.`, {
      pieces: named,
    });
  }
  const from = opening === null ? {} : { piece: opening };
  return write(stamp, wish, { verb: 'cleared', value: what, ...from });
}

/** What is inside an opening that this piece closes, or that lies under it. */
export function insideUnder(job: Job, piece: string): Inside[] {
  if (job.inside.length === 0) return [];
  const closed = withBelow(job, piece);
  return job.inside.filter((i) => i.piece !== null && closed.has(i.piece));
}

export function judgeGate(job: Job, wish: Wished<'gate'>, stamp: Stamp): Verdict {
  if (wish.piece !== undefined && !job.pieces.has(wish.piece)) return noPiece(job, wish.piece);
  const place = wish.piece === undefined ? {} : { piece: wish.piece };
  const item = wish.item.trim();
  if (item === '') return wrong('no-item', 'Say what was looked at.');
  if (wish.how === 'added') {
    return write(stamp, { ...wish, says: item }, { verb: 'added', value: wish.moment, ...place });
  }
  return write(stamp, wish, { verb: wish.how, value: `${wish.moment} ${item}`, ...place });
}

export function judgeBuy(job: Job, wish: Wished<'buy'>, stamp: Stamp): Verdict {
  const edits: Edit[] =
    wish.add && !job.upper.buys.has(wish.buy)
      ? [{ edit: 'named', section: 'buy', key: wish.buy, fields: fieldsOf(wish.add) }]
      : [];
  if ((edits.length === 0 && !job.upper.buys.has(wish.buy)) || !NAME.test(wish.buy)) {
    const known = meant(wish.buy, job.upper.buys.keys());
    return wrong('no-such-buy', `${wish.buy} is not on the list.${known}`, { buy: wish.buy });
  }
  const beside = {
    ...(wish.promised === undefined ? {} : { promised: wish.promised }),
    ...(wish.tray === undefined ? {} : { tray: wish.tray }),
  };
  const last = lastBought(job, wish.buy);
  const same = last?.value === wish.state && Object.keys(beside).length === 0;
  if (last && same && !cameOffSince(job, wish.buy, last)) return already();
  const what = { verb: 'done', value: wish.state, buy: wish.buy, ...beside } as const;
  return write(stamp, wish, what, { edits });
}

function fieldsOf({ what, for: step, once, count }: NewBuy): Record<string, string> {
  return {
    what,
    ...(count === undefined ? {} : { count }),
    ...(once ? { once: 'true' } : {}),
    for: step,
  };
}

/** What it is for came off again after this mark: then it is another one of its kind that is spoken of. */
function cameOffSince(job: Job, buy: string, mark: Entry): boolean {
  const pieces = job.upper.buys.get(buy)?.for.map((step) => step.split(' ')[0]) ?? [];
  return job.entries
    .slice(job.entries.indexOf(mark) + 1)
    .some((e) => job.living.has(e.id) && e.verb === 'removed' && pieces.includes(e.piece));
}

/** A thing to buy, and how far it has come. */
export interface Lacking {
  buy: string;
  what: string;
  state: string;
}

/** What is listed for a piece to go on and is not here: never noted, ordered, wrong, short, or used once already. */
export function notHere(job: Job, piece: string): Lacking[] {
  return [...job.upper.buys.values()].flatMap((spec) => {
    const steps = spec.for.map((step) => step.trim().replace(/\s+/g, ' '));
    if (!steps.some((step) => step === piece || step === `${piece} on`)) return [];
    const last = lastBought(job, spec.key);
    if (!last) return [{ buy: spec.key, what: spec.what, state: 'wanted' }];
    const used = spec.once && isHereAt(last) && wentInSince(job, piece, last);
    if (isHereAt(last) && !used) return [];
    return [{ buy: spec.key, what: spec.what, state: used ? 'used once already' : last.value }];
  });
}

function isHereAt({ value }: Entry): boolean {
  const state = buyState(value);
  return state !== null && isHere(state);
}

/** Whether anything was ever noted of a thing to buy. */
export function isNoted(job: Job, buy: string): boolean {
  return lastBought(job, buy) !== undefined;
}

/** The last that was noted of it is that it is here. */
export function isHereNow(job: Job, buy: string): boolean {
  const last = lastBought(job, buy);
  return last !== undefined && isHereAt(last);
}

/** A new one is noted as here, and did not go in with the piece in an earlier round. */
export function isFresh(job: Job, piece: string, { key, once, what }: BuySpec): boolean {
  const last = lastBought(job, key);
  if (!last || !isHereAt(last)) return false;
  return !(once || isSeal(what)) || !wentInSince(job, piece, last);
}

/** The piece went on after this mark and came off again: what is used once went in with it. */
function wentInSince(job: Job, piece: string, mark: Entry): boolean {
  const since = job.entries
    .slice(job.entries.indexOf(mark) + 1)
    .filter((e) => job.living.has(e.id) && e.piece === piece);
  const on = since.findIndex((e) => e.verb === 'fitted' || e.verb === 'in');
  return on >= 0 && since.slice(on).some((e) => e.verb === 'removed');
}

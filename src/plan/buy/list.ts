/** What must be had for this job: as the file lists it, and what comes on the list by itself. */

import { kept } from '../../model/kept.ts';
import { DAY, isDate, readDay } from '../../model/time.ts';
import type { BuySpec, Job, NewBuy, PieceNow } from '../../model/types.ts';
import { isSeal } from '../../piece/seals.ts';
import type { DiaryLine } from '../order/lines.ts';
import { isBack } from '../order/needed.ts';
import { spoken } from '../order/relations.ts';
import { type Standing, standingOf } from '../order/standing.ts';
import { atTime } from '../time/at-time.ts';
import { type Itself, itselfOf } from './itself.ts';
import { type Bought, boughtOf, isHere } from './state.ts';

export interface Buy extends Bought {
  /** Its name in the diary, whether it stands in the file or not. */
  buy: string;
  what: string;
  count: string | null;
  price: string | null;
  from: string | null;
  once: boolean;
  /** Steps it is for. */
  for: string[];
  /** Steps that are open and wait for it. */
  holds: string[];
  /** Promised for a day that is over. */
  late: boolean;
  /** Why it is on the list, where the file does not list it; else null. */
  why: string | null;
  /** What it is for is done: its piece is back. Whether it went in is told by `state` alone. */
  wentIn: boolean;
  /** It is only named somewhere, or may do again: a question, not an order. */
  ask: boolean;
}

/** In the order of the file, then what comes by itself in the order of the pieces. */
export function buyList(job: Job, now: string): readonly Buy[] {
  return buysOf(standingOf(job, now));
}

/** The same, kept while the job and the time stay. */
export function buysNow(job: Job, now: string): readonly Buy[] {
  return atTime(job, now, 'buys', () => buyList(job, now));
}

/**
 * `coming` are the pieces that come off, or are off: what is used once at them is on the list by itself, and stays there
 * when one goes back without it.
 */
export function buysOf(
  standing: Standing,
  coming: readonly PieceNow[] | null = null,
): readonly Buy[] {
  if (coming !== null) return findBuys(standing, coming);
  const off = () => standing.pieces.filter((piece) => !isBack(piece));
  return kept(standing, 'buys', () => findBuys(standing, off()));
}

function findBuys(standing: Standing, coming: readonly PieceNow[]): Buy[] {
  const { job, lines } = standing;
  const listed = [...job.upper.buys.values()];
  const marks = Map.groupBy(
    lines.all.filter((line) => line.buy !== undefined),
    (line) => line.buy ?? '',
  );
  const known = new Set(listed.map((buy) => buy.key));
  const back = standing.pieces.filter((piece) => isBack(piece) && !coming.includes(piece));
  const without = itselfOf(job, back, listed).filter((buy) => buy.once && !buy.ask);
  const rows = (all: readonly Itself[]) =>
    all
      .filter((buy) => !known.has(buy.key))
      .map((spec) => buyOf(standing, spec, marks.get(spec.key) ?? [], spec));
  return [
    ...listed.map((spec) => buyOf(standing, spec, marks.get(spec.key) ?? [], null)),
    ...rows(itselfOf(job, coming, listed)),
    ...rows(without.map(putBackWithout)).filter((buy) => !isHere(buy.state)),
  ];
}

/** Nobody noted that it was had: the old one went back in, or the new one was never put down. */
function putBackWithout(buy: Itself): Itself {
  return { ...buy, why: `${buy.why}; it is back, and no new one was noted` };
}

function buyOf(
  standing: Standing,
  spec: BuySpec,
  marks: readonly DiaryLine[],
  itself: Itself | null,
): Buy {
  const { job, relations, finished, rounds } = standing;
  const steps = [...new Set(spec.for.map((said) => stepFor(job, said)))];
  const seal = !spec.once && isSeal(spec.what);
  const used =
    spec.once || seal
      ? Math.max(-1, ...steps.map((step) => rounds(step.split(' ')[0] ?? '').start))
      : -1;
  const bought = boughtOf(marks, used);
  const open = steps.filter((step) => {
    const place = relations.at.get(step);
    return place !== undefined && !finished.done[place];
  });
  const wentIn = steps.length > 0 && open.length === 0 && steps.some((s) => relations.at.has(s));
  const { state } = bought;
  // A seal that nobody calls used once has been in once: whether it will do again is a question.
  const again =
    seal && bought.at === null && marks.some((m) => m.verb === 'done' && m.index < used);
  return {
    ...bought,
    buy: spec.key,
    what: spec.what,
    count: spec.count,
    price: spec.price,
    from: spec.from,
    once: spec.once,
    for: steps,
    holds: isHere(state) || again || itself?.sure === false ? [] : open,
    late: isLate(bought, standing),
    why: itself?.why ?? null,
    wentIn,
    ask: again || itself?.ask === true,
  };
}

/** What writes it into the file, where it came on the list by itself; null where the file lists it. */
export function newBuy({ what, for: steps, once, count, why }: Buy): NewBuy | null {
  const [step] = steps;
  if (why === null || step === undefined) return null;
  return {
    what,
    for: step,
    ...(once ? { once: true as const } : {}),
    ...(count === null ? {} : { count }),
  };
}

/** A piece as such means that it goes on. */
function stepFor(job: Job, said: string): string {
  const step = spoken(said);
  return !job.tasks.has(step) && job.pieces.has(step) ? `${step} on` : step;
}

function isLate({ promised, state }: Bought, { now }: Standing): boolean {
  if (promised === null || isHere(state)) return false;
  const day = readDay(promised, now.offset);
  return day !== null && now.seconds >= day.seconds + (isDate(promised) ? DAY : 0);
}

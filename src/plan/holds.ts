/** What stands in the way of a step, beside the steps before it: parts, things left inside, time. */

import { kept } from '../model/kept.ts';
import { DAY, printInstant, readDay, readInstant } from '../model/time.ts';
import { type Buy, buysOf } from './buy/list.ts';
import { type Inside, insideOf } from './order/inside.ts';
import { isAway } from './order/needed.ts';
import type { Standing } from './order/standing.ts';
import { heldByCure, untoldCures } from './seal/cure.ts';
import { type TestItem, testListOf } from './tests/testlist.ts';

interface Hold {
  by: 'step' | 'buy' | 'inside' | 'time';
  /** A step, a thing to buy, a thing inside, `after 100 km`; null where nothing but time is waited for. */
  name: string | null;
  /** Until when, as a time or a date; null when nobody knows. */
  until: string | null;
  /** The same in seconds since 1970. */
  seconds: number | null;
}

export interface Holds {
  /** By place in `relations.steps`: what holds an open step that could come next otherwise. */
  of: (place: number) => Hold[];
  buys: readonly Buy[];
  inside: readonly Inside[];
}

export function holdsOf(standing: Standing): Holds {
  return kept(standing, 'holds', () => findHolds(standing));
}

function findHolds(standing: Standing): Holds {
  const { relations, finished, before } = standing;
  const buys = buysOf(standing);
  const inside = insideOf(standing.lines);
  const byStep = new Map<number, Hold[]>();
  const add = (place: number | undefined, hold: Hold): void => {
    if (place === undefined || finished.done[place]) return;
    byStep.set(place, [...(byStep.get(place) ?? []), hold]);
  };
  for (const buy of buys) {
    for (const step of buy.holds) add(relations.at.get(step), promiseOf(buy, standing));
  }
  for (const thing of inside) {
    const hold = { by: 'inside', name: thing.what, until: null, seconds: null } as const;
    for (const place of closedBy(thing, standing)) add(place, hold);
  }
  for (const [place, { until }] of finished.running) {
    if (until === null) continue; // it is over when somebody says so
    const at = printInstant({ ...standing.now, seconds: until });
    add(place, { by: 'time', name: null, until: at, seconds: until });
  }
  for (const cure of untoldCures(standing)) {
    const seconds = cure.until === null ? null : (readInstant(cure.until)?.seconds ?? null);
    for (const place of heldByCure(standing, cure)) {
      add(place, { by: 'time', name: null, until: cure.until, seconds });
    }
  }
  for (const { test, when, due } of laterOf(standing)) {
    const day = due === null ? null : (readDay(due, standing.now.offset)?.seconds ?? null);
    // Due in a season or a year: it follows from the job, and is not waited for to call the job finished.
    const isPart = day !== null && day - standing.now.seconds <= FOLLOWS;
    const [seconds, until, name] = isPart ? [day, due, null] : [null, null, when];
    add(relations.at.get(test), { by: 'time', name, until, seconds });
  }
  for (const [place, name] of againOver(standing)) {
    add(place, { by: 'step', name, until: null, seconds: null });
  }
  const waitsFor = (place: number) =>
    (before.next[place] ?? []).map((other) => stepHold(standing, other));
  return { of: (place) => [...waitsFor(place), ...(byStep.get(place) ?? [])], buys, inside };
}

/** s. A test that is so far off is no part of the work. */
const FOLLOWS = 31 * DAY;

/** Tests of the file whose day has not come, or which wait for a distance or an oil change. */
function laterOf(standing: Standing): TestItem[] {
  const timed = [...standing.job.tasks.values()].some(({ spec }) => spec.when !== null);
  return timed ? testListOf(standing).filter((t) => t.listed && t.state === 'later') : [];
}

/** A step before this one; when it ends is known where it is a wait that runs. */
function stepHold({ relations, finished, now }: Standing, place: number): Hold {
  const name = relations.steps[place]?.step ?? '';
  const seconds = finished.running.get(place)?.until ?? null;
  const until = seconds === null ? null : printInstant({ ...now, seconds });
  return { by: 'step', name, until, seconds };
}

function promiseOf(buy: Buy, { now }: Standing): Hold {
  const day = buy.promised === null || buy.late ? null : readDay(buy.promised, now.offset);
  return { by: 'buy', name: buy.buy, until: day && buy.promised, seconds: day?.seconds ?? null };
}

/** Steps that would shut a thing in or run the machine with it inside: its piece, what goes over that, every test. */
function closedBy({ piece }: Inside, { relations, allOvers }: Standing): number[] {
  const tests = relations.steps.flatMap((s, i) => (s.kind === 'test' ? [i] : []));
  if (piece === null) return tests;
  const closing = new Set([piece]);
  for (const key of closing) for (const over of allOvers.get(key) ?? []) closing.add(over);
  return [...[...closing].flatMap((key) => relations.at.get(`${key} on`) ?? []), ...tests];
}

/** Pieces that cannot come off because one that was off already lies over them again. */
function againOver({ job, relations, finished, pieces, overs }: Standing): [number, string][] {
  return pieces.flatMap(({ spec }) => {
    const place = relations.at.get(`${spec.key} off`);
    if (place === undefined || finished.done[place]) return [];
    return [...(overs.get(spec.key) ?? [])].flatMap((over): [number, string][] => {
      const off = relations.at.get(`${over} off`);
      const now = job.pieces.get(over);
      return off !== undefined && finished.done[off] && now && !isAway(now)
        ? [[place, `${over} off`]]
        : [];
    });
  });
}

/** Coming back after days: the note of a good workmate, from the diary alone. */

import { inWords } from '../../job/truth/said.ts';
import { type Hours, NO_HOURS } from '../../model/hours.ts';
import { daysBetween, printInstant } from '../../model/time.ts';
import type { BuyState, Job, PieceNow } from '../../model/types.ts';
import { isHere } from '../buy/state.ts';
import { calendarOf } from '../calendar.ts';
import { holdsOf } from '../holds.ts';
import type { Inside } from '../order/inside.ts';
import { isAway } from '../order/needed.ts';
import { troubleLine } from '../order/noted.ts';
import { type Standing, standingOf } from '../order/standing.ts';
import { type Cure, untoldCures } from '../seal/cure.ts';
import { type TestItem, testListOf } from '../tests/testlist.ts';
import { atTime } from '../time/at-time.ts';
import { type Within, withinOf } from '../twenty.ts';
import { dontOf } from './dont.ts';

interface Of {
  piece: string;
  name: string;
}

export interface Back {
  /** Since the last mark; null when there is none. */
  days: number | null;
  last: string | null;
  /** In the order in which they came off. */
  off: (Of & { tray: string | null; aside: boolean; since: string | null })[];
  /** Bolts out, and the piece still on. */
  half: (Of & { out: number; of: number; tray: string | null })[];
  inside: Inside[];
  trouble: (Of & { hole: string; trouble: string; since: string | null; says: string | null })[];
  fingerTight: (Of & { holes: string[] })[];
  conflicts: (Of & { hole: string; say: string })[];
  awaited: {
    buy: string;
    what: string;
    state: BuyState;
    promised: string | null;
    late: boolean;
    holds: string[];
    /** Its piece is back without it. */
    without: boolean;
  }[];
  here: { buy: string; what: string; tray: string | null }[];
  /** Waits that run. */
  waits: { step: string; say: string; until: string | null }[];
  /** What is sealed and must not be loaded yet, where no wait tells it. */
  cures: Cure[];
  /** Tests that are due now. */
  due: TestItem[];
  /** In the next twenty minutes. */
  next: Within;
  /** When all is done at the earliest; null where no time or date is known. */
  finish: string | null;
  dont: string[];
}

const SHORT_WHILE = 20;

/** `now` is RFC 3339. */
export function backAfter(job: Job, now: string, hours: Hours = NO_HOURS): Back {
  const standing = standingOf(job, now);
  const holds = holdsOf(standing);
  const pieces = [...job.pieces.values()];
  const last = standing.lines.all.at(-1)?.at ?? null;
  return {
    days: last === null ? null : daysBetween(last, now),
    last,
    ...piecesOff(standing, pieces),
    inside: [...holds.inside],
    trouble: pieces.flatMap((piece) => troubleOf(standing, piece)),
    fingerTight: pieces.flatMap((piece) => {
      const holes = piece.holes.filter((h) => h.state === 'in').map((h) => h.name);
      return holes.length > 0 ? [{ ...nameOf(piece), holes }] : [];
    }),
    conflicts: pieces.flatMap((piece) =>
      piece.holes.flatMap((h) =>
        h.conflict ? [{ ...nameOf(piece), hole: h.name, say: h.conflict.say }] : [],
      ),
    ),
    ...boughtParts(holds.buys),
    waits: waitsOf(standing),
    cures: untoldCures(standing),
    due: testListOf(standing).filter((item) => item.state === 'due' || item.state === 'failed'),
    finish: calendarOf(standing, holds, hours).finish,
    next: withinOf(standing, holds, SHORT_WHILE),
    dont: dontOf(standing),
  };
}

/** The same, kept while the job and the time stay. */
export function backNow(job: Job, now: string, hours: Hours = NO_HOURS): Back {
  const question = hours === NO_HOURS ? 'back' : 'back in the hours of the bench';
  return atTime(job, now, question, () => backAfter(job, now, hours));
}

function nameOf({ spec }: PieceNow): Of {
  return { piece: spec.key, name: spec.name };
}

function piecesOff({ lines }: Standing, pieces: readonly PieceNow[]): Pick<Back, 'off' | 'half'> {
  const when = (piece: PieceNow) => lines.off.get(piece.spec.key)?.index ?? -1;
  const off = pieces.filter(isAway).sort((a, b) => when(a) - when(b));
  const half = pieces.filter((p) => p.where === 'off' && !isAway(p));
  return {
    off: off.map((piece) => ({
      ...nameOf(piece),
      tray: piece.tray,
      aside: piece.away === 'aside',
      since: lines.off.get(piece.spec.key)?.at ?? null,
    })),
    half: half.map((piece) => ({
      ...nameOf(piece),
      out: piece.holes.filter((h) => h.state === 'out').length,
      of: piece.holes.length,
      tray: piece.tray,
    })),
  };
}

/** With what was said when it was noted: `soaking, heat tomorrow`. */
function troubleOf(standing: Standing, piece: PieceNow): Back['trouble'] {
  return piece.holes.flatMap((hole) => {
    if (hole.trouble === null) return [];
    const line = troubleLine(standing.lines, piece, hole);
    const since = { since: line?.at ?? null, says: line?.says ?? null };
    return [{ ...nameOf(piece), hole: hole.name, trouble: hole.trouble, ...since }];
  });
}

function boughtParts(buys: ReturnType<typeof holdsOf>['buys']): Pick<Back, 'awaited' | 'here'> {
  const awaited = buys.filter(
    (buy) =>
      !isHere(buy.state) &&
      // What the file lists and no step waits for is forgotten by the time that it is needed.
      (buy.holds.length > 0 || buy.at !== null || (buy.why === null && !buy.ask)),
  );
  const here = buys.filter(
    (buy) => !buy.wentIn && (buy.state === 'here' || buy.state === 'compared'),
  );
  return {
    awaited: awaited.map(({ buy, what, state, promised, late, holds, wentIn: without }) => {
      return { buy, what, state, promised, late, holds, without };
    }),
    here: here.map(({ buy, what, tray }) => ({ buy, what, tray })),
  };
}

function waitsOf({ job, relations, finished, now }: Standing): Back['waits'] {
  return [...finished.running].flatMap(([place, { until }]) => {
    const step = relations.steps[place];
    if (!step) return [];
    const end = until === null ? null : printInstant({ ...now, seconds: until });
    const spec = job.tasks.get(step.key)?.spec;
    const say = spec ? inWords([spec.say]) : step.key;
    return [{ step: step.step, say, until: end }];
  });
}

/** Whether a bolt may go into a hole: one verdict, from whatever is known, and what to measure where too little is. */
import type { Kind } from '../../model/types.ts';
import { unknownKind, withLength } from '../read/kind.ts';
import { threadOf } from '../thread/threads.ts';
import { type FitKnown, gather } from './fit-known.ts';
import { wanted } from './fit-measure.ts';
import { closeOf, sayClose } from './fit-spare.ts';
import type { Fit, FitVerdict, Measure } from './fit-types.ts';
import { fitSentence } from './fit-words.ts';
import type { Place } from './reach.ts';
import {
  headsAgree,
  SAME_LENGTH,
  sameBolt,
  shanksAgree,
  strongerBy,
  threadsAgree,
} from './same.ts';

export type { Fit, FitVerdict } from './fit-types.ts';

/** A length told by a ruler is the right one within this, mm. */
const BY_RULER = 0.5;
const round = (mm: number) => Math.round(mm * 1000) / 1000 + 0;

/** Enough is known that nothing worse can be hiding. */
function harmless(k: FitKnown): boolean {
  const bottomKnown = k.by !== null || k.reach.clear;
  const biteKnown = (k.reach.farther ?? -1) >= 0 || (k.engagement !== null && k.material !== null);
  return bottomKnown && biteKnown && !k.disputed;
}

/** Bites less than it must. Never said of the hole's own bolt, nor of one that reaches as far. */
function isShort(k: FitKnown): boolean {
  const { most, need, reach } = k;
  if (k.kind === k.own || most === null || (reach.farther !== null && reach.farther >= 0))
    return false;
  return most <= 0 || (need !== null && most < need - SAME_LENGTH);
}

/** The rule of the trade is sure only where the hole's own bolt is known to bite more than this one. */
function shortIsSure(k: FitKnown): boolean {
  return k.own === null || k.reach.farther !== null || (k.most ?? 1) <= 0;
}

function byFigures(k: FitKnown): { verdict: FitVerdict; sure: boolean } | null {
  const { x } = k.reach;
  const sure = !k.disputed && (k.own === null || threadsAgree(k.kind, k.own) === true);
  if (x !== null && k.kind.threaded !== null && x - k.kind.threaded > SAME_LENGTH) {
    return { verdict: 'shank', sure };
  }
  if (!k.open && k.by !== null && k.by > SAME_LENGTH && !(k.disputed && k.reach.clear)) {
    return { verdict: 'bottoms', sure };
  }
  if (isShort(k)) return { verdict: 'short', sure: sure && shortIsSure(k) };
  if (k.open && k.by !== null && k.by > SAME_LENGTH) return { verdict: 'through', sure };
  return null;
}

function judge(k: FitKnown): { verdict: FitVerdict | null; sure: boolean } {
  const { kind, own, reach } = k;
  if (own && kind === own) {
    const worse = k.ownStack ? byFigures(k) : null;
    const sure = !k.disputed && (!k.ownStack || reach.farther !== null);
    return worse?.verdict === 'bottoms' ? worse : { verdict: 'right', sure };
  }
  if (!own) return byFigures(k) ?? { verdict: null, sure: false };
  const same = sameBolt(kind, own);
  if (same === true && !k.ownStack) return { verdict: 'same', sure: !k.disputed };
  if (threadsAgree(kind, own) === false) return { verdict: 'wrong-thread', sure: true };
  const weaker = (strongerBy(kind, own) ?? 0) < 0;
  if (headsAgree(kind, own) === false || weaker) return { verdict: 'wrong-head', sure: true };
  const found = byFigures(k);
  if (found) return found;
  const longer = reach.farther ?? lengthDifference(kind, own);
  if (longer === null) return { verdict: null, sure: false };
  if (Math.abs(longer) < SAME_LENGTH) {
    const jams = !shanksAgree(kind, own) && reach.x === null;
    return { verdict: 'same', sure: same !== null && reach.farther !== null && !jams };
  }
  // By length alone, with another stack under the head, not even the direction is sure.
  const sure = reach.farther !== null && harmless(k) && threadsAgree(kind, own) === true;
  return { verdict: longer > 0 ? 'longer' : 'shorter', sure };
}

function lengthDifference(kind: Kind, own: Kind | null): number | null {
  return own === null || kind.length === null || own.length === null
    ? null
    : kind.length - own.length;
}

/**
 * Judges a kind in a hole. `under` is what lies under its head; null: what lies under the hole's own. Judged in this order:
 * own kind, thread, head, shank, bottoms, short, through; then by length alone. Pure and total.
 */
export function fit(kind: Kind, under: readonly string[] | null, place: Place): Fit {
  const taken = place.takes;
  // The same letter is the same kind, whoever made the object.
  const same = taken !== null && taken.kind.letter === kind.letter;
  const k = gather(same ? taken.kind : kind, under, place);
  const judged = judge(k);
  const { verdict } = judged;
  const close = verdict === 'wrong-thread' || verdict === 'wrong-head' ? null : closeOf(k);
  const sure = judged.sure && close === null;
  const thread = threadOf(k.kind.thread ?? k.own?.thread ?? null);
  // Figures of a thread that does not belong there would be none.
  const starts = verdict !== 'wrong-thread';
  const mm = starts ? k.engagement : null;
  const by = starts ? k.by : null;
  return {
    verdict,
    sure,
    engagement:
      mm === null
        ? null
        : {
            mm: round(mm),
            turns: thread && round(mm / thread.pitch),
            d: thread && round(mm / thread.d),
          },
    bottomsBy: k.open ? null : roundOr(by),
    sticksOut: k.open ? roundOr(by) : null,
    proud: starts ? roundOr(k.reach.x) : null,
    byLength: k.kind === k.own ? 0 : roundOr(lengthDifference(k.kind, k.own)),
    measure: withProbe(wanted(k, place, verdict, sure), close !== null),
    // Of a longer one nothing may be said to be fine that is to be probed.
    why: [
      fitSentence(k, verdict, verdict === 'longer' ? sure : judged.sure),
      ...(close ? [sayClose(close)] : []),
    ].join(' '),
  };
}

/** The hole itself is to be probed, whatever else would help. */
function withProbe(measure: readonly Measure[], close: boolean): Measure[] {
  return close ? ['probe', ...measure.filter((m) => m !== 'probe')] : [...measure];
}

function roundOr(mm: number | null): number | null {
  return mm === null ? null : round(mm);
}

/** Judges a bolt of which only the length is known: the right thread and head, and this length under it in mm. */
export function fitLength(mm: number, under: readonly string[] | null, place: Place): Fit {
  const own = place.takes?.kind ?? null;
  if (own && own.length !== null && Math.abs(own.length - mm) <= BY_RULER)
    return fit(own, under, place);
  return fit(withLength(own ?? unknownKind('', null), mm, ''), under, place);
}

/** Whether a bolt may go into a hole: one verdict, from whatever is known, and what to measure where too little is. */
import type { Kind } from '../job/types.ts';
import { type Judged, sentence } from './fit-words.ts';
import { withLength } from './kind.ts';
import { type Material, materialOf } from './materials.ts';
import { type Place, type Reach, reachOf } from './reach.ts';
import { headsAgree, SAME_LENGTH, sameBolt, strongerBy, threadsAgree } from './same.ts';
import { threadOf } from './threads.ts';

export type FitVerdict =
  | 'right'
  | 'same'
  | 'longer'
  | 'shorter'
  | 'short'
  | 'bottoms'
  | 'through'
  | 'shank'
  | 'wrong-thread'
  | 'wrong-head';

/** What would make it sure; MEASURES in fit-words.ts says how. */
export type Measure = 'length' | 'thread' | 'head' | 'thick' | 'turns' | 'probe' | 'under' | 'into';

export interface Fit {
  /** Null when too little is known to say anything. */
  verdict: FitVerdict | null;
  /** False where the verdict stands on too little, or on figures that contradict each other. */
  sure: boolean;
  /** Thread that bites: mm, turns, diameters (null for a thread without figures). Null when it is not known. */
  engagement: { mm: number; turns: number | null; d: number | null } | null;
  /** r − b, mm: above 0 it bottoms by so much, below 0 so much is left. Null when not known, and for an open hole. */
  bottomsBy: number | null;
  /** The same of a hole that is open behind: above 0 the bolt sticks out by so much. */
  sticksOut: number | null;
  /** How far the head stands off when dropped in and not turned, mm. */
  proud: number | null;
  /** Length less the length of the bolt that belongs here, mm. */
  byLength: number | null;
  measure: Measure[];
  /** One sentence. */
  why: string;
}

/** The least engagement of all materials, in diameters (steel): less is too little whatever is tapped. */
const LEAST_OF_ALL = 0.8;
/** A length told by a ruler is the right one within this, mm. */
const BY_RULER = 0.5;
const round = (mm: number) => Math.round(mm * 1000) / 1000;

/** Open behind: a hole that is wet, and a nut or a through hole, have no bottom. */
function isOpen(place: Place, into: string | null): boolean {
  return place.hole?.wet === true || /\b(?:nut|through|open)\b/i.test(into ?? '');
}

interface Known {
  kind: Kind;
  own: Kind | null;
  /** Another stack under the head than the hole's own. */
  otherStack: boolean;
  reach: Reach;
  open: boolean;
  material: Material | null;
  /** mm of engagement that it must have; null without a diameter. */
  need: number | null;
  /** mm that the hole's own bolt bites with; infinite where it is not known. */
  ownBites: number;
  /** Upper bound of the engagement, mm. */
  most: number | null;
  engagement: number | null;
  by: number | null;
}

function gather(kind: Kind, under: readonly string[] | null, place: Place): Known {
  const stack = under ?? place.takes?.with ?? [];
  const into = place.hole?.into ?? place.piece?.into ?? null;
  const reach = reachOf(kind, stack, place);
  const { x, xMost, depth, clear, farther } = reach;
  const material = materialOf(into);
  const own = place.takes?.kind ?? null;
  const d = threadOf(kind.thread ?? own?.thread ?? null)?.d ?? null;
  const bites = (reaches: number) => Math.max(0, Math.min(reaches, depth ?? reaches));
  // What the hole's own bolt bites with is enough, whatever the rule says.
  const ownBites = x === null || farther === null ? Number.POSITIVE_INFINITY : bites(x - farther);
  return {
    kind,
    own,
    otherStack:
      place.takes !== null && under !== null && under.join('+') !== place.takes.with.join('+'),
    reach,
    open: isOpen(place, into),
    material,
    need: d === null ? null : Math.min((material?.atLeast ?? LEAST_OF_ALL) * d, ownBites),
    ownBites,
    most: xMost === null ? null : bites(xMost),
    engagement: x !== null && (depth !== null || clear || x <= 0) ? bites(x) : null,
    by: x === null || depth === null ? null : x - depth,
  };
}

/** Enough is known that nothing worse can be hiding. */
function harmless(k: Known): boolean {
  const bottomKnown = k.by !== null || k.reach.clear;
  const biteKnown = (k.reach.farther ?? -1) >= 0 || (k.engagement !== null && k.material !== null);
  return bottomKnown && biteKnown && !k.reach.disputed;
}

/** Bites less than it must. Never said of the hole's own bolt, nor of one that reaches as far. */
function isShort(k: Known): boolean {
  const { most, need, reach } = k;
  if (k.kind === k.own || most === null || (reach.farther !== null && reach.farther >= 0))
    return false;
  return most <= 0 || (need !== null && most < need - SAME_LENGTH);
}

/** The rule of the trade is sure only where the hole's own bolt is known to bite more than this one. */
function shortIsSure(k: Known): boolean {
  return k.own === null || k.reach.farther !== null || (k.most ?? 1) <= 0;
}

function byFigures(k: Known): { verdict: FitVerdict; sure: boolean } | null {
  const { x } = k.reach;
  const sure = !k.reach.disputed && (k.own === null || threadsAgree(k.kind, k.own) === true);
  if (x !== null && k.kind.threaded !== null && x - k.kind.threaded > SAME_LENGTH) {
    return { verdict: 'shank', sure };
  }
  if (!k.open && k.by !== null && k.by > SAME_LENGTH && !(k.reach.disputed && k.reach.clear)) {
    return { verdict: 'bottoms', sure };
  }
  if (isShort(k)) return { verdict: 'short', sure: sure && shortIsSure(k) };
  if (k.open && k.by !== null && k.by > SAME_LENGTH) return { verdict: 'through', sure };
  return null;
}

function judge(k: Known): { verdict: FitVerdict | null; sure: boolean } {
  const { kind, own, reach } = k;
  if (own && kind === own) {
    const worse = k.otherStack ? byFigures(k) : null;
    return worse?.verdict === 'bottoms' ? worse : { verdict: 'right', sure: !reach.disputed };
  }
  if (!own) return byFigures(k) ?? { verdict: null, sure: false };
  const same = sameBolt(kind, own);
  if (same === true && !k.otherStack) return { verdict: 'same', sure: true };
  if (threadsAgree(kind, own) === false) return { verdict: 'wrong-thread', sure: true };
  const weaker = (strongerBy(kind, own) ?? 0) < 0;
  if (headsAgree(kind, own) === false || weaker) return { verdict: 'wrong-head', sure: true };
  const found = byFigures(k);
  if (found) return found;
  const longer = reach.farther ?? lengthDifference(kind, own);
  if (longer === null) return { verdict: null, sure: false };
  if (Math.abs(longer) < SAME_LENGTH) return { verdict: 'same', sure: same !== null };
  const sure = harmless(k) && threadsAgree(kind, own) === true;
  return { verdict: longer > 0 ? 'longer' : 'shorter', sure };
}

function lengthDifference(kind: Kind, own: Kind | null): number | null {
  return own === null || kind.length === null || own.length === null
    ? null
    : kind.length - own.length;
}

/** What to measure next; nothing else helps before the lengths are known. */
function wanted(k: Known, place: Place, verdict: FitVerdict | null, sure: boolean): Measure[] {
  if (sure) return [];
  const { kind, own, reach } = k;
  const settled = verdict === 'same' || verdict === 'right';
  const noLength = kind.length === null || (own !== null && own.length === null);
  const list: [Measure, boolean][] = [
    ['turns', reach.disputed],
    ['probe', reach.disputed],
    ['length', noLength],
    ['thread', own !== null && threadsAgree(kind, own) === null],
    ['head', verdict === 'same' && own !== null && headsAgree(kind, own) === null],
  ];
  const figures: [Measure, boolean][] = [
    ['under', reach.needsStack],
    ['turns', reach.x === null && own !== null],
    [
      'thick',
      reach.xMost === null &&
        own === null &&
        (place.hole?.thick ?? place.piece?.thick ?? null) === null,
    ],
    ['probe', k.by === null && !reach.clear && reach.depth === null],
    ['into', k.material === null && (reach.farther ?? -1) < 0],
  ];
  const all = settled || (noLength && reach.x === null) ? list : [...list, ...figures];
  return [...new Set(all.filter(([, missing]) => missing).map(([what]) => what))];
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
  const { verdict, sure } = judge(k);
  const thread = threadOf(k.kind.thread ?? k.own?.thread ?? null);
  // Figures of a thread that does not belong there would be none.
  const starts = verdict !== 'wrong-thread';
  const mm = starts ? k.engagement : null;
  const by = starts ? k.by : null;
  const judged: Judged = {
    ...k,
    verdict,
    sure,
    farther: k.reach.farther,
    x: k.reach.x,
    otherStack: k.otherStack ? (taken?.with ?? []) : null,
    wet: place.hole?.wet === true,
  };
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
    measure: wanted(k, place, verdict, sure),
    why: sentence(judged),
  };
}

function roundOr(mm: number | null): number | null {
  return mm === null ? null : round(mm);
}

/** Judges a bolt of which only the length is known: the right thread and head, and this length under it in mm. */
export function fitLength(mm: number, under: readonly string[] | null, place: Place): Fit {
  const own = place.takes?.kind ?? null;
  if (own && own.length !== null && Math.abs(own.length - mm) <= BY_RULER)
    return fit(own, under, place);
  return fit(withLength(own ?? UNKNOWN, mm, ''), under, place);
}

const UNKNOWN: Kind = {
  letter: '',
  text: '',
  thread: null,
  length: null,
  lengthText: null,
  head: null,
  tool: null,
  class: null,
  threaded: null,
  leftHand: false,
  once: false,
  note: null,
};

/** The one-line reason, in mm: `It would bottom 8 mm before the head clamps.` */
export function say(f: Fit): string {
  return f.why;
}

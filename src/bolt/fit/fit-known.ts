/** What is known of one bolt in one hole, gathered before anything is judged. */
import type { Kind } from '../../model/types.ts';
import { type Material, materialOf } from '../thread/materials.ts';
import { threadOf } from '../thread/threads.ts';
import { type Place, type Reach, reachOf } from './reach.ts';

/** The least engagement of all materials, in diameters (steel): less is too little whatever is tapped. */
const LEAST_OF_ALL = 0.8;

export interface FitKnown {
  kind: Kind;
  own: Kind | null;
  /** The hole's own stack, where the bolt has another one under its head; else null. */
  ownStack: readonly string[] | null;
  reach: Reach;
  /** The figures of the hole contradict each other, or the bolt that came out of it. */
  disputed: boolean;
  /** Open behind, and into a liquid. */
  open: boolean;
  wet: boolean;
  material: Material | null;
  /** mm of engagement by the rule of the trade; null without a diameter. */
  need: number | null;
  /** mm that the hole's own bolt bites with, which is enough for it; infinite where it is not known. */
  ownBites: number;
  /** Upper bound of the engagement, mm. */
  most: number | null;
  engagement: number | null;
  /** x − D: how far it reaches past the usable thread, mm. */
  by: number | null;
}

/** Open behind: a hole that is wet, and a nut or a through hole, have no bottom. */
export function isOpen(place: Place, into: string | null): boolean {
  if (place.hole?.wet === true) return true;
  return into !== null && /\b(?:nut|through|open)\b/i.test(into);
}

/** Puts together what bolt, hole and piece say; `under` null: what lies under the hole's own head. */
export function gather(kind: Kind, under: readonly string[] | null, place: Place): FitKnown {
  const taken = place.takes;
  const stack = under ?? taken?.with ?? [];
  const into = (place.hole?.into ?? place.piece?.into)?.text ?? null;
  const reach = reachOf(kind, stack, place);
  const { x, xMost, depth, clear, farther } = reach;
  const material = materialOf(into);
  const own = taken?.kind ?? null;
  const d = threadOf(kind.thread ?? own?.thread ?? null)?.d ?? null;
  const bites = (reaches: number) => Math.max(0, Math.min(reaches, depth ?? reaches));
  const ownBites = x === null || farther === null ? Number.POSITIVE_INFINITY : bites(x - farther);
  return {
    kind,
    own,
    ownStack: taken && under && under.join('+') !== taken.with.join('+') ? taken.with : null,
    reach,
    disputed: reach.disputed || reach.ownMisses,
    open: isOpen(place, into),
    wet: place.hole?.wet === true,
    material,
    need: d === null ? null : (material?.atLeast ?? LEAST_OF_ALL) * d,
    ownBites,
    most: xMost === null ? null : bites(xMost),
    engagement: x !== null && (depth !== null || clear || x <= 0) ? bites(x) : null,
    by: x === null || depth === null ? null : x - depth,
  };
}

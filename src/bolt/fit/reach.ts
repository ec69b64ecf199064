/**
 * How far a bolt reaches into its hole, from whatever little was measured. One datum, the joint face: with length L under
 * the head, thickness t and the stack w under the head, the end comes to r = L − t − w; usable thread runs from a to b.
 * Here x = r − a is counted from the first usable thread, and D = b − a is the usable depth. All in mm.
 */
import type { HoleSpec, Kind, PieceSpec } from '../../model/types.ts';
import { threadOf } from '../thread/threads.ts';
import { SAME_LENGTH } from './same.ts';
import { stackDifference, stackOf } from './stack.ts';

/** One hole, as far as it is known. */
export interface Place {
  /** What belongs in it, and what lies under that head; null when nobody knows. */
  takes: { kind: Kind; with: readonly string[] } | null;
  /** The hole's own words; null when it has none. */
  hole: HoleSpec | null;
  /** The piece's words, which hold for its holes where those say nothing. */
  piece: Pick<PieceSpec, 'thick' | 'thread' | 'into'> | null;
  /** Thickness of things under heads by their word, mm. */
  thickness?: ReadonlyMap<string, number>;
}

export interface Reach {
  /** x of this bolt; it is also how far the head stands off when dropped in and not turned. Null: not known. */
  x: number | null;
  /** x can be no more than this, even where it is not known; null: no bound. */
  xMost: number | null;
  /** D; null: nobody probed. */
  depth: number | null;
  /** It cannot bottom, because the hole's own bolt reaches as far or farther and came out whole. */
  clear: boolean;
  /** How much farther it reaches than the hole's own bolt; null: not known. */
  farther: number | null;
  /** The things measured contradict each other, or the bolt that came out whole. */
  disputed: boolean;
  /** By these figures the hole's own bolt would not come to its thread. */
  ownMisses: boolean;
  /** What lies under the heads keeps a figure from being known. */
  needsStack: boolean;
}

/** Fingers count to the turn and rulers to half a millimetre: more than this apart, one of two measures is wrong. */
const APART = 1.5;

/** Without what binary fractions add, so that 9 − 7.4 − 1.6 is 0. `+ 0` takes the sign off a nought. */
const clean = (mm: number) => Math.round(mm * 1e6) / 1e6 + 0;

/** How much farther than the hole's own bolt, by length and by how much thicker the stack is. */
function fartherThanOwn(kind: Kind, stacks: number | null, place: Place): number | null {
  const own = place.takes;
  if (!own || stacks === null) return null;
  if (kind === own.kind) return clean(-stacks);
  const [mine, its] = [kind.length, own.kind.length];
  return mine === null || its === null ? null : clean(mine - its - stacks);
}

/** r, and what it can be at most while the stack is not known: nothing under the head. */
function direct(kind: Kind, under: readonly string[], place: Place) {
  const thick = place.hole?.thick ?? place.piece?.thick ?? null;
  const w = stackOf(under, place.thickness);
  if (kind.length === null || thick === null) return { r: null, rMost: null, noStack: false };
  const rMost = kind.length - thick;
  return w === null
    ? { r: null, rMost, noStack: true }
    : { r: rMost - w, rMost: rMost - w, noStack: false };
}

/** x of the hole's own bolt as counted or seen on it: turns × pitch, and the height of the head. */
function counted(place: Place): number[] {
  const pitch = threadOf(place.takes?.kind.thread ?? null)?.pitch ?? null;
  const { turns = null, proud = null } = place.hole ?? {};
  const byTurns = turns !== null && pitch !== null ? turns * pitch : null;
  return [byTurns, proud].filter((v) => v !== null);
}

/** The reach of a bolt of this kind with this under its head. */
export function reachOf(kind: Kind, under: readonly string[], place: Place): Reach {
  const thread = place.hole?.thread ?? place.piece?.thread ?? null;
  const stacks = place.takes ? stackDifference(under, place.takes.with, place.thickness) : 0;
  const farther = fartherThanOwn(kind, stacks, place);
  const { r, rMost, noStack } = direct(kind, under, place);
  const measured = r !== null && thread !== null ? [r - thread.from] : [];
  const seen = farther === null ? [] : counted(place).map((x0) => x0 + farther);
  const all = [...measured, ...seen].map(clean);
  const x = all[0] ?? null;
  const depth = thread?.to == null ? null : thread.to - thread.from;
  const apart = all.length > 1 && Math.max(...all) - Math.min(...all) > APART;
  const own = x !== null && farther !== null ? x - farther : null;
  const ownBottoms = own !== null && depth !== null && own > depth + SAME_LENGTH;
  return {
    x,
    xMost: x ?? (rMost === null ? null : clean(rMost - (thread?.from ?? 0))),
    depth,
    clear: farther !== null && farther <= SAME_LENGTH,
    farther,
    disputed: apart || ownBottoms,
    ownMisses: own !== null && own <= -SAME_LENGTH,
    needsStack: x === null ? noStack || stacks === null : farther === null && stacks === null,
  };
}

/**
 * Whether the thread in the hole or on the bolt shears off before the bolt has clamped. FED-STD-H28/2B, in the form that
 * ISO 898 and VDI 2230 use too; symbols as there. Always a range: over friction, shear strength and lost threads.
 */
import { limitsOf } from '../thread/limits.ts';
import { type Material, materialOf } from '../thread/materials.ts';
import { strengthOf } from '../thread/strength.ts';
import { type Thread, threadOf } from '../thread/threads.ts';
import { atYield, preloadOf } from './preload.ts';
import { ASSUMED } from './sane.ts';

/** Threads lost at the two ends: the bolt's point and the hole's chamfer (common practice, no source). */
const LOST = { low: 0.5, high: 1.5 };
/** Friction of ordinary steel bolts, from oiled to dry: VDI 2230-1 table A5, classes B and C, from memory. */
export const FRICTION = { low: 0.1, high: 0.18 };
/** Shear strength of a bolt's own thread over its tensile strength: VDI 2230-1, 5.5.5, from memory. */
const BOLT_SHEAR = { low: 0.6, high: 0.65 };
const SOURCE = 'FED-STD-H28/2B, limits of size by ISO 965-1 (6g in 6H) or ASME B1.1 (2A in 2B)';

/**
 * Shear area per mm of engagement, mm²: π D/P (P/2 + 0.57735 Δ). D is where it shears; Δ how far the flanks overlap there:
 * ds − En of the thread in the hole, Es − Kn of the thread on the bolt. π n Le D (1/(2n) + 0.57735 Δ) in FED-STD-H28/2B.
 */
export function shearArea(P: number, D: number, overlap: number): number {
  return ((Math.PI * D) / P) * (P / 2 + 0.57735 * overlap);
}

/** Shear areas per mm of the thread in the hole (ASn) and on the bolt (ASs), both at their worst limits of size. */
export function shearAreas(t: Thread): { internal: number; external: number } {
  const { dMin, d2Min, D2Max, D1Max } = limitsOf(t);
  return {
    internal: shearArea(t.pitch, dMin, dMin - D2Max),
    external: shearArea(t.pitch, D1Max, d2Min - D1Max),
  };
}

/**
 * Shear area per mm of the hole that holds a wire insert of this bolt size: the bolt stands for the insert, whose
 * outside is d + 1.299 P (ASME B18.29.2M).
 */
function insertArea(t: Thread): number {
  return shearArea(t.pitch, t.d + 1.299038 * t.pitch, 0.649519 * t.pitch);
}

export interface Strip {
  /** Engagement in mm from which even the weakest material holds the hardest pull. */
  required: { value: number; unit: 'mm' };
  /** mm² at this engagement, no thread lost. */
  shearArea: { internal: number; external: number };
  /** N at which the weaker of the two threads shears. */
  load: { low: number; high: number };
  /** N with which the bolt pulls when it is tight. */
  pull: { low: number; high: number };
  verdict: 'plenty' | 'tight' | "don't";
  /** The mark reckoned with where none was known; null when it was. */
  assumed: string | null;
  material: Material;
  source: string;
}

export interface StripInput {
  thread: string;
  /** mm of thread that bites. */
  engagement: number;
  /** Material, as `into:` says it. */
  into: string;
  class?: string | null;
  /** Tightening torque in N·m; without it, the pull is that at 90 % of the bolt's yield. */
  torque?: number | null;
}

/** The pull of a tight bolt in N, over friction. */
function pullOf(
  t: Thread,
  mark: string,
  torque: number | null,
): { low: number; high: number } | null {
  if (torque !== null) {
    return { low: preloadOf(torque, t, FRICTION.high), high: preloadOf(torque, t, FRICTION.low) };
  }
  const low = atYield(t, mark, FRICTION.high, 0.9);
  const high = atYield(t, mark, FRICTION.low, 0.9);
  return low && high && { low: low.preload, high: high.preload };
}

/**
 * Plenty: at the worst of everything the thread outlasts the hardest pull. Don't: at its worst it does not even stand the
 * mildest. Tight: between. Null when thread or material has no figures.
 */
export function strip(input: StripInput): Strip | null {
  const t = threadOf(input.thread);
  const material = materialOf(input.into);
  const known = t && strengthOf(input.class ?? null, t.d) ? (input.class ?? ASSUMED) : null;
  const mark = known ?? ASSUMED;
  const bolt = t && strengthOf(mark, t.d);
  const pull = t && pullOf(t, mark, input.torque ?? null);
  if (!t || !material || !bolt || !pull) return null;
  const per = shearAreas(t);
  const area = material.name === 'wire insert' ? insertArea(t) : per.internal;
  const weakest = Math.min(area * material.shear.low, per.external * BOLT_SHEAR.low * bolt.tensile);
  const strongest = Math.min(
    area * material.shear.high,
    per.external * BOLT_SHEAR.high * bolt.tensile,
  );
  const left = (lost: number) => Math.max(0, input.engagement - lost * t.pitch);
  const load = { low: weakest * left(LOST.high), high: strongest * left(LOST.low) };
  const holds = load.low >= pull.high ? 'plenty' : 'tight';
  return {
    required: { value: pull.high / weakest + LOST.high * t.pitch, unit: 'mm' },
    shearArea: { internal: area * input.engagement, external: per.external * input.engagement },
    load,
    pull,
    verdict: load.low < pull.low ? "don't" : holds,
    assumed: known === null ? ASSUMED : null,
    material,
    source: SOURCE,
  };
}

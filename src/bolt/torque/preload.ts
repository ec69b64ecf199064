/** Torque and the pull it makes in the bolt. Symbols as in VDI 2230-1:2015; N, mm, N·mm inside, N·m outside. */

import { strengthOf } from '../thread/strength.ts';
import type { Thread } from '../thread/threads.ts';
import { frictionDiameter } from './bearing.ts';

/**
 * Torque per newton of preload, mm: 0.16 P + 0.58 d2 μG + (DKm/2) μK (VDI 2230-1, R13; ISO 16047 has the same terms
 * as P/2π, 1.154 d2/2 and Db/2).
 */
export function armOf(t: Thread, muG: number, muK: number): number {
  return 0.16 * t.pitch + 0.58 * t.d2 * muG + (frictionDiameter(t) / 2) * muK;
}

/** Preload in N that a torque in N·m makes at one friction for thread and head. */
export function preloadOf(torque: number, t: Thread, mu: number): number {
  return (torque * 1000) / armOf(t, mu, mu);
}

export interface Assembly {
  /** FM, N. */
  preload: number;
  /** MA, N·m. */
  torque: number;
}

/**
 * Preload and torque at which the bolt's thread, pulled and twisted together, comes to the share ν of its yield point:
 * σM = ν Rp0.2 / √(1 + 3 [ (3/2)(d2/d0) (P/(π d2) + 1.155 μG) ]²), FM = σM A0, with A0 = As (VDI 2230-1, 5.4.3).
 * ν and μ are plain numbers (0.9, 0.14). Null when the mark has no figures.
 */
export function atYield(t: Thread, mark: string, mu: number, nu: number): Assembly | null {
  const strength = strengthOf(mark, t.d);
  if (!strength) return null;
  const A0 = t.stressArea;
  const d0 = Math.sqrt((4 * A0) / Math.PI);
  const twist = 1.5 * (t.d2 / d0) * (t.pitch / (Math.PI * t.d2) + 1.155 * mu);
  const sigmaM = (nu * strength.yield) / Math.sqrt(1 + 3 * twist ** 2);
  const preload = sigmaM * A0;
  return { preload, torque: (preload * armOf(t, mu, mu)) / 1000 };
}

/** T = K d F in N·m, F in N: the short formula of the handbooks. K about 0.20 dry, 0.15 oiled. */
export function nutFactorTorque(t: Thread, preload: number, K: number): number {
  return (K * t.d * preload) / 1000;
}

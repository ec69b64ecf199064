/**
 * Limits of size that decide how much thread meets thread: the smallest bolt and the largest hole. Metric: 6g in 6H,
 * ISO 965-1; inch: 2A in 2B, ASME B1.1. The formulas of both standards are from memory; tests/published holds
 * the limits against ISO 965-2 and a worked example. All in mm.
 */
import { INCH } from '../read/length.ts';
import type { Thread } from './threads.ts';

export interface Limits {
  /** Major diameter of the bolt, smallest: d min (ISO), Ds min (FED-STD-H28). */
  dMin: number;
  dMax: number;
  /** Pitch diameter of the bolt: Es. */
  d2Min: number;
  d2Max: number;
  /** Pitch diameter of the hole, largest: D2 max, En max. */
  D2Max: number;
  /** Minor diameter of the hole, largest: D1 max, Kn max. */
  D1Max: number;
}

/** One decade of the R40 series of ISO 3, to which ISO 965-1 rounds its tolerances. */
const R40 = [
  100, 106, 112, 118, 125, 132, 140, 150, 160, 170, 180, 190, 200, 212, 224, 236, 250, 265, 280,
  300, 315, 335, 355, 375, 400, 425, 450, 475, 500, 530, 560, 600, 630, 670, 710, 750, 800, 850,
  900, 950, 1000,
];

/** To the nearest preferred number, of two equally near to the larger. */
function preferred(micrometres: number): number {
  const decade = 10 ** Math.floor(Math.log10(micrometres) - 2);
  const scaled = micrometres / decade;
  const nearest = R40.reduce((best, n) =>
    Math.abs(n - scaled) <= Math.abs(best - scaled) ? n : best,
  );
  return nearest * decade;
}

/** Ranges of diameter in ISO 965-1; within one, its geometric mean stands for d. */
const STEPS = [0.99, 1.4, 2.8, 5.6, 11.2, 22.4, 45];

function meanOfStep(d: number): number {
  const i = STEPS.findIndex((upTo) => d <= upTo);
  const [low, high] = [STEPS[i - 1] ?? d, STEPS[i] ?? d];
  return Math.sqrt(low * high);
}

/** Fundamental deviation es of position g, µm, for the pitches where the table of ISO 965-1 is not 15 + 11 P. */
const ES: ReadonlyMap<number, number> = new Map([
  [0.5, 20],
  [0.6, 21],
  [0.7, 22],
  [0.75, 22],
  [1.25, 28],
  [2, 38],
]);
/** Step and pitch → Td2(6), TD2(6), µm, where the tables of ISO 965-1 are not what its formulas round to. */
const TABLED: ReadonlyMap<string, readonly [number, number]> = new Map([
  ['5.6/0.5', [75, 100]],
  ['11.2/1.5', [132, 180]],
  ['22.4/1.25', [132, 180]],
  ['22.4/1.5', [140, 190]],
]);

/** ISO 965-1, clause 13: es(g), Td(6), Td2(6), TD2(6), TD1(6), all in µm. */
function metric(t: Thread): Limits {
  const P = t.pitch;
  const tabled = TABLED.get(`${STEPS.find((upTo) => t.d <= upTo)}/${P}`);
  const es = ES.get(P) ?? Math.round(15 + 11 * P);
  const Td = preferred(180 * P ** (2 / 3) - 3.15 / Math.sqrt(P));
  const Td2 = tabled?.[0] ?? preferred(90 * P ** 0.4 * meanOfStep(t.d) ** 0.1);
  const TD2 = tabled?.[1] ?? preferred(1.32 * Td2);
  const TD1 = preferred(P >= 1 ? 230 * P ** 0.7 : 433 * P - 190 * P ** 1.22);
  const [dMax, d2Max] = [t.d - es / 1000, t.d2 - es / 1000];
  return {
    dMin: dMax - Td / 1000,
    dMax,
    d2Min: d2Max - Td2 / 1000,
    d2Max,
    D2Max: t.d2 + TD2 / 1000,
    D1Max: t.D1 + TD1 / 1000,
  };
}

/** ASME B1.1, 5.8: 2A and 2B, with the length of engagement equal to the diameter; in inches. */
function inch(t: Thread): Limits {
  const [D, p] = [t.d / INCH, t.pitch / INCH];
  const Td2 = 0.0015 * Math.cbrt(D) + 0.0015 * Math.sqrt(D) + 0.015 * p ** (2 / 3);
  const allowance = 0.3 * Td2;
  const Td = 0.06 * p ** (2 / 3);
  const least = 0.25 * p - 0.4 * p ** 2;
  const small = Math.min(0.394 * p, Math.max(least, 0.05 * p ** (2 / 3) + (0.03 * p) / D - 0.002));
  const TD1 = D < 0.25 ? small : least;
  const [dMax, d2Max] = [t.d - allowance * INCH, t.d2 - allowance * INCH];
  return {
    dMin: dMax - Td * INCH,
    dMax,
    d2Min: d2Max - Td2 * INCH,
    d2Max,
    D2Max: t.d2 + 1.3 * Td2 * INCH,
    D1Max: t.D1 + TD1 * INCH,
  };
}

/** Limits of an ordinary bolt in an ordinary tapped hole. */
export function limitsOf(t: Thread): Limits {
  return t.system === 'metric' ? metric(t) : inch(t);
}

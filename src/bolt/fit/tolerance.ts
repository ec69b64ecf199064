/**
 * How long a bolt is that is sold as so long: ISO 4759-1, with the grades of tolerance of ISO 286-1; inch bolts by ASME
 * B18.2.1. From memory; tests/published holds the lengths of ISO 4014 and 4017 in print against it. mm.
 */
import { INCH } from '../read/length.ts';

export interface Tolerance {
  /** A bolt may be shorter, and longer, by so much. */
  minus: number;
  plus: number;
}

/** Up to this length → IT15 and IT17 (ISO 286-1). */
const GRADES: readonly (readonly [number, number, number])[] = [
  [3, 0.4, 1],
  [6, 0.48, 1.2],
  [10, 0.58, 1.5],
  [18, 0.7, 1.8],
  [30, 0.84, 2.1],
  [50, 1, 2.5],
  [80, 1.2, 3],
  [120, 1.4, 3.5],
  [180, 1.6, 4],
  [250, 1.85, 4.6],
  [315, 2.1, 5.2],
  [400, 2.3, 5.7],
  [Number.POSITIVE_INFINITY, 2.5, 6.3],
];
/** Grade A ends at so many diameters, and at so many mm; beyond is grade B. */
const GRADE_A = { diameters: 10, mm: 150 };
/** Up to this length in inches → how much shorter, in inches; none longer. The widest of the sizes up to 3/4 in. */
const INCHES: readonly (readonly [number, number])[] = [
  [1, 0.03],
  [2.5, 0.08],
  [4, 0.1],
  [6, 0.1],
  [Number.POSITIVE_INFINITY, 0.18],
];

export interface Band extends Tolerance {
  /** Longer than this, and no longer than that. */
  from: number;
  to: number;
}

/**
 * All lengths, band by band, for a thread of diameter d: js15 in grade A, js17 in grade B, both half to either side; inch
 * bolts are never longer.
 */
export function bands(d: number, inch = false): Band[] {
  const gradeA = Math.min(GRADE_A.diameters * d, GRADE_A.mm);
  const ends = inch
    ? INCHES.map(([l]) => l * INCH)
    : [...new Set([...GRADES.map(([l]) => l), gradeA])].sort((a, b) => a - b);
  return ends.map((to, i) => {
    const from = ends[i - 1] ?? 0;
    if (inch) return { from, to, minus: (INCHES[i]?.[1] ?? 0) * INCH, plus: 0 };
    const [, it15 = 0, it17 = 0] = GRADES.find(([upTo]) => to <= upTo) ?? [];
    const half = (to <= gradeA ? it15 : it17) / 2;
    return { from, to, minus: half, plus: half };
  });
}

/** Of one length. */
export function lengthTolerance(length: number, d: number, inch = false): Tolerance {
  const { minus, plus } = bands(d, inch).find(({ to }) => length <= to + 1e-9) ?? {
    minus: 0,
    plus: 0,
  };
  return { minus, plus };
}

/** What bolts stand: property classes of ISO 898-1, grades of SAE J429, stainless steels of ISO 3506-1. Stresses in MPa. */
import { INCH } from '../read/length.ts';
import { FACTORS } from '../read/unit-names.ts';
import type { Thread } from './threads.ts';

export interface Strength {
  /** Stress under proof load; null where the standard gives none (ISO 3506-1). */
  proof: number | null;
  /** Lower yield or 0.2 % proof strength, the minimum. */
  yield: number;
  /** Tensile strength, the minimum. */
  tensile: number;
  source: string;
}

const KSI = FACTORS.get('ksi')?.factor ?? 0;

/** ISO 898-1: Sp, ReL or Rp0.2, Rm. */
const CLASSES: ReadonlyMap<string, readonly [number, number, number]> = new Map([
  ['4.6', [225, 240, 400]],
  ['4.8', [310, 340, 420]],
  ['5.6', [280, 300, 500]],
  ['5.8', [380, 420, 520]],
  ['6.8', [440, 480, 600]],
  ['8.8', [580, 640, 800]],
  ['9.8', [650, 720, 900]],
  ['10.9', [830, 940, 1040]],
  ['12.9', [970, 1100, 1220]],
]);
/** 8.8 above 16 mm. */
const THICK_8_8 = [600, 660, 830] as const;

/** SAE J429, ksi: proof, yield, tensile, up to this diameter in inches. */
const GRADES: ReadonlyMap<string, readonly (readonly [number, number, number, number])[]> = new Map(
  [
    ['1', [[1.5, 33, 36, 60]]],
    [
      '2',
      [
        [0.75, 55, 57, 74],
        [1.5, 33, 36, 60],
      ],
    ],
    [
      '5',
      [
        [1, 85, 92, 120],
        [1.5, 74, 81, 105],
      ],
    ],
    ['5.2', [[1, 85, 92, 120]]],
    ['7', [[1.5, 105, 115, 133]]],
    ['8', [[1.5, 120, 130, 150]]],
    ['8.2', [[1, 120, 130, 150]]],
  ],
);

/** ISO 3506-1, by the number behind the hyphen: Rp0.2, Rm. */
const STAINLESS: ReadonlyMap<string, readonly [number, number]> = new Map([
  ['50', [210, 500]],
  ['70', [450, 700]],
  ['80', [600, 800]],
  ['100', [800, 1000]],
]);

/**
 * What a mark stands for on a bolt of diameter d (mm): `8.8`, `grade 5`, `A2-70`. Null for a mark without figures
 * (`A2` alone), or one that is not made so thick.
 */
export function strengthOf(mark: string | null, d: number): Strength | null {
  const said = (mark ?? '').trim();
  if (said === '') return null;
  const iso = CLASSES.get(said);
  if (iso) {
    const [proof, yields, tensile] = said === '8.8' && d > 16 ? THICK_8_8 : iso;
    return { proof, yield: yields, tensile, source: 'ISO 898-1' };
  }
  const grade = GRADES.get(/^(?:SAE )?(?:grade|gr\.?)\s*([\d.]+)$/i.exec(said)?.[1] ?? '');
  const row = grade?.find(([upTo]) => d <= upTo * INCH + 1e-6);
  if (row) {
    const [, proof, yields, tensile] = row;
    return { proof: proof * KSI, yield: yields * KSI, tensile: tensile * KSI, source: 'SAE J429' };
  }
  const stainless = STAINLESS.get(/^[A-F]\d-(\d+)$/i.exec(said)?.[1] ?? '');
  if (!stainless) return null;
  return { proof: null, yield: stainless[0], tensile: stainless[1], source: 'ISO 3506-1' };
}

export interface Loads {
  /** N; null where the standard gives no proof load. */
  proof: number | null;
  yield: number;
  tensile: number;
}

/** Loads of a bolt in N: stress × stress area. Null when the mark has no figures. */
export function loadsOf(thread: Thread, mark: string | null): Loads | null {
  const s = strengthOf(mark, thread.d);
  if (!s) return null;
  const A = thread.stressArea;
  return {
    proof: s.proof === null ? null : s.proof * A,
    yield: s.yield * A,
    tensile: s.tensile * A,
  };
}

/** Radial lines on the head of an SAE bolt (SAE J429). Grades 1 and 2 have none. */
const LINES: Partial<Record<string, number>> = { 'grade 5': 3, 'grade 7': 5, 'grade 8': 6 };

/** What a mark on the head means, in a sentence; null for one that putback does not know. */
export function sayMark(mark: string, d = 6): string | null {
  const said = mark.trim();
  const s = strengthOf(said, d);
  if (!s) {
    return /^A[1-5]$/i.test(said)
      ? `${said.toUpperCase()}: stainless steel, strength not marked.`
      : null;
  }
  const breaks = `breaks at ${Math.round(s.tensile)} MPa or more, yields at ${Math.round(s.yield)}`;
  if (s.source === 'ISO 898-1') return `${said}: steel, ${breaks} (ISO 898-1).`;
  if (s.source === 'ISO 3506-1') {
    return `${said.toUpperCase()}: stainless steel, ${breaks} (ISO 3506-1). It galls: turn it slowly, lubricated as the manual says.`;
  }
  const lines = LINES[said.toLowerCase()];
  const look = lines === undefined ? '' : `, ${lines} lines on the head`;
  return `${said}${look}: steel, ${breaks} (SAE J429).`;
}

/**
 * Sizes of thread that are met on machines. Metric pitches: ISO 261 and ISO 262, coarse first; inch threads:
 * ASME B1.1, threads per inch. From memory; tests/published/threads.test.ts holds the pitches in print against it.
 */

/** Nominal diameter in mm → pitches in mm, the coarse one first. */
export const METRIC: ReadonlyMap<number, readonly number[]> = new Map([
  [2, [0.4, 0.25]],
  [2.5, [0.45, 0.35]],
  [3, [0.5, 0.35]],
  [3.5, [0.6, 0.35]],
  [4, [0.7, 0.5]],
  [5, [0.8, 0.5]],
  [6, [1, 0.75]],
  [7, [1, 0.75]],
  [8, [1.25, 1, 0.75]],
  [10, [1.5, 1.25, 1, 0.75]],
  [12, [1.75, 1.5, 1.25, 1]],
  [14, [2, 1.5, 1.25, 1]],
  [16, [2, 1.5, 1]],
  [18, [2.5, 2, 1.5, 1]],
  [20, [2.5, 2, 1.5, 1]],
  [22, [2.5, 2, 1.5, 1]],
  [24, [3, 2, 1.5, 1]],
]);

export interface InchSize {
  /** Major diameter, in. */
  D: number;
  /** Threads per inch of the coarse and the fine series; null where that series has no such size. */
  UNC: number | null;
  UNF: number | null;
}

/** Numbered sizes: D = 0.060 + 0.013 × number, in. */
export const INCH_SIZES: ReadonlyMap<string, InchSize> = new Map([
  ['2', { D: 0.086, UNC: 56, UNF: 64 }],
  ['3', { D: 0.099, UNC: 48, UNF: 56 }],
  ['4', { D: 0.112, UNC: 40, UNF: 48 }],
  ['5', { D: 0.125, UNC: 40, UNF: 44 }],
  ['6', { D: 0.138, UNC: 32, UNF: 40 }],
  ['8', { D: 0.164, UNC: 32, UNF: 36 }],
  ['10', { D: 0.19, UNC: 24, UNF: 32 }],
  ['12', { D: 0.216, UNC: 24, UNF: 28 }],
  ['1/4', { D: 0.25, UNC: 20, UNF: 28 }],
  ['5/16', { D: 0.3125, UNC: 18, UNF: 24 }],
  ['3/8', { D: 0.375, UNC: 16, UNF: 24 }],
  ['7/16', { D: 0.4375, UNC: 14, UNF: 20 }],
  ['1/2', { D: 0.5, UNC: 13, UNF: 20 }],
  ['9/16', { D: 0.5625, UNC: 12, UNF: 18 }],
  ['5/8', { D: 0.625, UNC: 11, UNF: 18 }],
  ['3/4', { D: 0.75, UNC: 10, UNF: 16 }],
]);

const INCH_SIZE = /^(?:0?\.\d+|\d+(?:-\d+)?\/\d+|\d{1,2}-\d{1,2})/;
const INCH_SERIES = /\b(?:UN[CFS]?|UNEF|BSW|BSF|BSC|CEI|TPI)\b/;

/** Whether a thread is named in inches, so that a bare length beside it is in inches too. */
export function isInch(thread: string | null): boolean {
  return thread !== null && (INCH_SIZE.test(thread) || INCH_SERIES.test(thread));
}

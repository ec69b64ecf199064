/** Lengths in which bolts are made, mm. */
import { INCH } from '../read/length.ts';

/**
 * ISO 888, in mm; in brackets there, and to be avoided: the second choice. The first choice is held against the tables of
 * ISO 4014 and 4017 in print, the second is from memory.
 */
const FIRST = [
  2, 2.5, 3, 4, 5, 6, 8, 10, 12, 16, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 80, 90, 100, 110,
  120, 130, 140, 150, 160, 180, 200,
];
const SECOND = [14, 18, 22, 28, 75, 85];
/** In inches, as they are stocked: ASME B18.2.1, from memory. */
const INCHES = [
  ...Array.from({ length: 7 }, (_, i) => 0.25 + i * 0.125),
  ...Array.from({ length: 12 }, (_, i) => 1.25 + i * 0.25),
  ...Array.from({ length: 4 }, (_, i) => 4.5 + i * 0.5),
];

export interface StandardLength {
  length: number;
  second: boolean;
}

/** All of them, the shortest first. */
export function standardLengths(system: 'metric' | 'inch'): StandardLength[] {
  if (system === 'inch') return INCHES.map((l) => ({ length: l * INCH, second: false }));
  return [
    ...FIRST.map((length) => ({ length, second: false })),
    ...SECOND.map((length) => ({ length, second: true })),
  ].sort((a, b) => a.length - b.length);
}

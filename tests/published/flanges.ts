/**
 * Bolt circles of published flanges, mm. ASME B16.5, table of class 150 flange dimensions: diameter of bolt circle and
 * number of bolts, there in inches; EN 1092-1, tables for PN 16: K and number of bolts. All from memory.
 */
import type { Job } from '../../src/model/types.ts';
import { jobOf } from '../paper/jobs.ts';

export interface Flange {
  name: string;
  holes: number;
  /** Diameter of the bolt circle. */
  circle: number;
  /** Diameter of the bolt. */
  bolt: number;
  kind: string;
}

const INCH = 25.4;

export const FLANGES: readonly Flange[] = [
  {
    name: 'NPS 2 class 150',
    holes: 4,
    circle: 4.75 * INCH,
    bolt: 0.625 * INCH,
    kind: '5/8-11 x 3',
  },
  { name: 'NPS 4 class 150', holes: 8, circle: 7.5 * INCH, bolt: 0.625 * INCH, kind: '5/8-11 x 3' },
  { name: 'DN 50 PN 16', holes: 4, circle: 125, bolt: 16, kind: 'M16x70 hex' },
  { name: 'DN 100 PN 16', holes: 8, circle: 180, bolt: 16, kind: 'M16x70 hex' },
  { name: 'DN 125 PN 16', holes: 8, circle: 210, bolt: 16, kind: 'M16x75 hex' },
];

export function flangeJob({ holes, kind }: Flange): Job {
  return jobOf(`putback: 1
job: A cover
bolts: {S: "${kind}"}
pieces: {cover: {bolts: ${new Array(holes).fill('S').join(' ')}, joint: gasket}}
`);
}

/** Conversions held against published factors, worked figures of manuals, and the general units library mathjs. */
import { unit } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { convert } from '../../src/bolt/read/units.ts';

const ACCU = 'Accu conversion factors, accu.co.uk/p/6-conversion-factors';
const SP811 = 'NIST SP 811, appendix B.8';

describe('factors in print', () => {
  /** value, from, to, printed, places printed, source */
  it.each<[number, string, string, number, number, string]>([
    [
      1,
      'lbf·in',
      'N·m',
      0.112985,
      6,
      'NAVFAC appendix B, navalfacilities.tpub.com/1004_6/1004_60046.htm',
    ],
    [1, 'lbf·in', 'N·m', 0.1129848, 7, `${SP811} (from memory)`],
    [
      1,
      'lbf·ft',
      'N·m',
      1.3558,
      4,
      'conversion table, scribd.com/document/338645509; mechconcepts',
    ],
    [1, 'lbf·ft', 'N·m', 1.355818, 6, `${SP811} (from memory)`],
    [1, 'N·m', 'lbf·in', 8.8507, 4, ACCU],
    [1, 'N·m', 'lbf·ft', 0.7376, 4, 'mechconcepts'],
    [1, 'kgf·m', 'N·m', 9.80665, 5, `${ACCU}: 1 kgf = 9.80665 N`],
    [1, 'N·cm', 'kgf·cm', 0.102, 3, 'R7 VDI sheet 1, scribd.com/document/223990691'],
    [1, 'ozf·in', 'N·m', 0.00706, 5, ACCU],
    [1, 'N·m', 'ozf·in', 141.612, 3, ACCU],
    [1, 'kgf/cm²', 'kPa', 98.1, 1, 'fordmanuals.org/page-1275.html'],
    [1, 'in', 'mm', 25.4, 9, 'exact since 1959; NAVFAC appendix B; Accu'],
    [1, 'ft', 'mm', 304.8, 9, 'NAVFAC appendix B; thefreelibrary metric chart'],
    [1, 'kgf', 'N', 9.80665, 9, ACCU],
    [300, 'lbf·ft', 'N·m', 407, 0, 'US Army TM 5-3810-305-23, worked figure'],
    [225, 'lbf·ft', 'N·m', 305, 0, 'US Army TM 5-3810-305-23, worked figure'],
    [40, 'N·m', 'lbf·ft', 29.5, 1, 'US Army TM 10-3930-669-20, table E-1'],
  ])('%d %s in %s is printed as %d', (value, from, to, printed, places) => {
    expect(Number(convert(value, from, to)?.toFixed(places))).toBe(printed);
  });
});

describe('a general units library agrees', () => {
  /** Our spelling, and the library's for the same unit. */
  const TORQUE: [string, string][] = [
    ['N·m', 'N m'],
    ['N·cm', 'N cm'],
    ['cN·m', 'cN m'],
    ['daN·m', 'daN m'],
    ['kgf·m', 'kgf m'],
    ['kgf·cm', 'kgf cm'],
    ['lbf·ft', 'lbf ft'],
    ['lbf·in', 'lbf in'],
  ];
  const OTHERS: [string, string][] = [
    ['MPa', 'MPa'],
    ['N/mm²', 'N/mm^2'],
    ['kPa', 'kPa'],
    ['bar', 'bar'],
    ['psi', 'lbf/in^2'],
    ['kgf/cm²', 'kgf/cm^2'],
  ];
  const pairs = [TORQUE, OTHERS].flatMap((table) =>
    table.flatMap(([a, theirsA]) => table.map(([b, theirsB]) => [a, b, theirsA, theirsB] as const)),
  );

  it.each(pairs)('%s in %s', (a, b, theirsA, theirsB) => {
    const theirs = unit(7.3, theirsA).toNumber(theirsB);
    expect(convert(7.3, a, b)! / theirs).toBeCloseTo(1, 12);
  });

  it('an ounce is a sixteenth of a pound, and a ksi a thousand psi', () => {
    expect(convert(16, 'ozf·in', 'N·m')! / unit(1, 'lbf in').toNumber('N m')).toBeCloseTo(1, 12);
    expect(convert(1, 'ksi', 'MPa')! / unit(1000, 'lbf/in^2').toNumber('MPa')).toBeCloseTo(1, 12);
  });
});

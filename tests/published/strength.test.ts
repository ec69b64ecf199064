/** Strengths and loads held against the standards' tables as printed: ISO 898-1, SAE J429, ISO 3506-1. */
import { describe, expect, it } from 'vitest';
import { convert } from '../../src/bolt/read/units.ts';
import { loadsOf, sayMark, strengthOf } from '../../src/bolt/thread/strength.ts';
import { threadOf } from '../../src/bolt/thread/threads.ts';
import { STRENGTHS } from './strength-rows.ts';

/** Diameters that stand for the ranges of the tables, mm. */
const SIZES: Record<string, number> = {
  M6: 6,
  M20: 20,
  '1/2in': 12.7,
  '7/8in': 22.225,
  '1-1/4in': 31.75,
};

describe('a strength in print', () => {
  it.each(STRENGTHS.filter((r) => r.kind === 'stress'))(
    '$mark, $size: $what is $value $unit ($confidence: $source)',
    (row) => {
      const s = strengthOf(row.mark, SIZES[row.size]!)!;
      expect(s[row.what]).toBeCloseTo(convert(row.value, row.unit, 'MPa')!, 6);
    },
  );

  it.each(STRENGTHS.filter((r) => r.kind === 'load'))(
    '$size $mark: $what load is $value $unit ($confidence: $source)',
    (row) => {
      const load = loadsOf(threadOf(row.size)!, row.mark)![row.what]!;
      expect(Math.abs(load - row.value)).toBeLessThanOrEqual(row.tolerance);
    },
  );
});

describe('the mark on the head', () => {
  // SAE J429, table 1, from memory: three radial lines grade 5, five grade 7, six grade 8.
  it('is said in a sentence, and not guessed where it says nothing', () => {
    expect(sayMark('8.8')).toBe(
      '8.8: steel, breaks at 800 MPa or more, yields at 640 (ISO 898-1).',
    );
    // SAE J429, table 1, from memory: three radial lines grade 5, five grade 7, six grade 8.
    expect(sayMark('grade 5')).toContain('3 lines on the head');
    expect(sayMark('A2')).toBe('A2: stainless steel, strength not marked.');
    expect(sayMark('XYZ')).toBeNull();
  });
});

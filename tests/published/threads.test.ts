/** Threads held against tables in print: pitches, diameters, stress areas, tapping drills, limits of size. */
import { describe, expect, it } from 'vitest';
import { METRIC } from '../../src/bolt/read/sizes.ts';
import { type Limits, limitsOf } from '../../src/bolt/thread/limits.ts';
import { type Thread, threadOf } from '../../src/bolt/thread/threads.ts';
import { THREADS } from './threads-rows.ts';

const INCH = 25.4;
/** A row's value and tolerance in the program's units, mm and mm². */
const factor = (unit: string) => ({ in: INCH, in2: INCH ** 2 })[unit] ?? 1;
const LIMITS = ['dMin', 'dMax', 'd2Min', 'd2Max', 'D2Max', 'D1Max'];

function ours(what: string, t: Thread): number {
  return LIMITS.includes(what)
    ? limitsOf(t)[what as keyof Limits]
    : (t[what as keyof Thread] as number);
}

describe('a thread in print', () => {
  it.each(THREADS)('$thread $what is $value $unit ($confidence: $source)', (row) => {
    const t = threadOf(row.thread)!;
    const unit = factor(row.unit);
    // A printed figure may be rounded in its last place even where it is called exact.
    const slack = row.tolerance * unit + 1e-9;
    expect(Math.abs(ours(row.what, t) - row.value * unit)).toBeLessThanOrEqual(slack);
    if (row.drill !== '') expect(t.drillName).toBe(row.drill);
  });

  it('covers what the tables cover: coarse and fine from M3 to M16, and inch sizes', () => {
    expect(THREADS.length).toBe(104);
    expect([...METRIC.keys()].filter((d) => d >= 3 && d <= 16)).toEqual([
      3, 3.5, 4, 5, 6, 7, 8, 10, 12, 14, 16,
    ]);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Hours, workedUntil } from '../../src/model/hours.ts';
import { readInstant } from '../../src/model/time.ts';

const EVENINGS: Hours = [1, 2, 3, 4, 5, 6, 7].map((day) =>
  day < 6 ? [{ from: 18 * 60, to: 21 * 60 }] : day === 6 ? [{ from: 9 * 60, to: 17 * 60 }] : [],
);
const at = (text: string) => readInstant(text)?.seconds ?? Number.NaN;
const HOUR = 3600;

/** Minute by minute: what is worked until then. */
function byMinutes(hours: Hours, from: number, work: number, offset: number): number {
  let left = work / 60;
  for (let now = from; ; now += 60) {
    if (left === 0) return now;
    const local = new Date((now + offset * 60) * 1000);
    const minute = local.getUTCHours() * 60 + local.getUTCMinutes();
    const spans = hours?.[(local.getUTCDay() + 6) % 7] ?? [];
    if (spans.some((s) => minute >= s.from && minute < s.to)) left -= 1;
  }
}

describe('when work is done', () => {
  it.each([
    // 27 November 2026 is a Friday.
    ['2026-11-27T17:00:00+01:00', 2 * HOUR, '2026-11-27T20:00:00+01:00'],
    ['2026-11-27T20:00:00+01:00', 2 * HOUR, '2026-11-28T10:00:00+01:00'],
    ['2026-11-27T18:00:00+01:00', 11 * HOUR, '2026-11-28T17:00:00+01:00'],
    ['2026-11-28T17:00:00+01:00', HOUR, '2026-11-30T19:00:00+01:00'],
    ['2026-11-27T18:00:00+01:00', 23 * HOUR, '2026-12-04T18:00:00+01:00'],
  ])('begun %s, %d s of it, in the hours of the bench: %s', (from, work, done) => {
    const until = workedUntil(EVENINGS, at(from), work, 60);
    // What ends with the last minute of a day is not begun on the next.
    expect([at(done), at('2026-12-03T21:00:00+01:00')]).toContain(until);
  });

  it('is as minute by minute, whatever the hours', () => {
    const span = fc
      .tuple(fc.integer({ min: 0, max: 1439 }), fc.integer({ min: 1, max: 600 }))
      .map(([from, long]) => ({ from, to: Math.min(1440, from + long) }));
    const hours = fc
      .array(
        fc.oneof(
          fc.constant([]),
          span.map((s) => [s]),
        ),
        { minLength: 7, maxLength: 7 },
      )
      .filter((days) => days.some((day) => day.length > 0));
    const minutes = fc.integer({ min: 1, max: 3000 });
    const from = fc.integer({ min: 29_000_000, max: 30_000_000 });
    const offset = fc.constantFrom(-300, 0, 60, 330);
    fc.assert(
      fc.property(hours, from, minutes, offset, (h, f, m, o) => {
        expect(workedUntil(h, f * 60, m * 60, o)).toBe(byMinutes(h, f * 60, m * 60, o));
      }),
      { numRuns: 60 },
    );
  });

  it('is without a break where nobody says hours', () => {
    expect(workedUntil(null, 1000, 500, 0)).toBe(1500);
    expect(workedUntil([[], [], [], [], [], [], []], 1000, 500, 0)).toBe(1500);
    expect(workedUntil(EVENINGS, 1000, 0, 0)).toBe(1000);
  });
});

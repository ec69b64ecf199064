import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { daysBetween, sayDate, sayDays } from '../../src/plan/days.ts';

const DAY = 24 * 60 * 60 * 1000;

describe('days since a mark', () => {
  it('are days of the calendar, whatever the hour', () => {
    expect(daysBetween('2026-04-11T23:59:00+02:00', '2026-04-12T00:01:00+02:00')).toBe(1);
    expect(daysBetween('2026-04-11T00:01:00+02:00', '2026-04-11T23:59:00+02:00')).toBe(0);
    expect(daysBetween('2026-04-11T18:52:31+02:00', '2026-05-02T09:00:00+02:00')).toBe(21);
  });

  it('are none when the clock was set back, or the time cannot be read', () => {
    expect(daysBetween('2026-04-11T10:00:00Z', '2026-04-01T10:00:00Z')).toBe(0);
    expect(daysBetween('yesterday', '2026-04-01T10:00:00Z')).toBe(0);
  });

  it('agree with the platform’s calendar over four centuries', () => {
    const day = fc.date({
      min: new Date('1900-01-01'),
      max: new Date('2300-01-01'),
      noInvalidDate: true,
    });
    fc.assert(
      fc.property(day, day, (a, b) => {
        const [from, to] = a < b ? [a, b] : [b, a];
        const days = Math.floor(to.getTime() / DAY) - Math.floor(from.getTime() / DAY);
        expect(daysBetween(from.toISOString(), to.toISOString())).toBe(days);
      }),
    );
  });

  it('are said as one says them', () => {
    expect([0, 1, 21].map(sayDays)).toEqual(['today', '1 day', '21 days']);
    expect(sayDate('2026-04-11T18:25:40+02:00', '2026-05-02T10:00:00+02:00')).toBe('11 April');
    expect(sayDate('2025-12-01T18:25:40+01:00', '2026-05-02T10:00:00+02:00')).toBe(
      '1 December 2025',
    );
    expect(sayDate('soon', '2026-05-02T10:00:00+02:00')).toBe('soon');
  });
});

import { describe, expect, it } from 'vitest';
import { sayDate, sayDays } from '../../../src/plan/time/days.ts';

describe('days and dates', () => {
  it('are said as one says them', () => {
    expect([0, 1, 21].map(sayDays)).toEqual(['today', '1 day', '21 days']);
    expect(sayDate('2026-04-11T18:25:40+02:00', '2026-05-02T10:00:00+02:00')).toBe('11 April');
    expect(sayDate('2025-12-01T18:25:40+01:00', '2026-05-02T10:00:00+02:00')).toBe(
      '1 December 2025',
    );
    expect(sayDate('soon', '2026-05-02T10:00:00+02:00')).toBe('soon');
  });
});

import { describe, expect, it } from 'vitest';
import { readInstant } from '../../../src/model/time.ts';
import { dueWhen } from '../../../src/plan/time/due.ts';
import { readWhen } from '../../../src/plan/time/when.ts';

describe('when something is due', () => {
  it.each([
    ['next day', { days: 1 }],
    ['after 3 days', { days: 3 }],
    ['in 2 weeks', { days: 14 }],
    ['after 4-5 days', { days: 5 }],
    ['after 4 to 5 days', { days: 5 }],
    ['after two days', { days: 2 }],
    ['after a week', { days: 7 }],
    ['next season', { months: 6 }],
    ['in 6 months', { months: 6 }],
    ['after one year', { months: 12 }],
    ['after 1 1/2 years', { months: 18 }],
    ['1½ years', { months: 18 }],
    ['half a year', { months: 6 }],
    ['a 2-year belt', { months: 24 }],
    ['after the first heat - 2 days', { days: 2 }],
  ])('%s', (text, span) => {
    expect(readWhen(text)).toEqual({ km: null, hours: null, span });
  });

  it.each([
    ['after 50 km', 50, null],
    ['after 1.500 km', 1500, null],
    ['after 1,500 km', 1500, null],
    ['after 1.5 km', 1.5, null],
    ['after 50 to 100 km', 100, null],
    // Exact: international mile.
    ['after 10 miles', 16.09344, null],
    ['after 10 h of running', null, 10],
    ['after 90 min of running', null, 1.5],
    ['every 250 operating hours', null, null],
  ])('%s', (text, km, hours) => {
    const read = readWhen(text);
    if (km === null && hours === null) expect(read).toBeNull();
    else expect(read).toEqual({ km, hours, span: null });
  });

  it.each([
    ['-5 days', '-5 days'],
    ['after -5 days', '-5 days'],
    ['after −50 km', '−50 km'],
    ['after 99999999999999 years', '99999999999999 years'],
    ['after 1e300 km', '1e300 km'],
    ['after 1e999 days', '1e999 days'],
    ['after 200 years', '200 years'],
    ['after 99999999 h', '99999999 h'],
  ])('%s is told as odd, and makes no date', (text, odd) => {
    expect(readWhen(text)).toEqual({ odd });
    const now = readInstant('2026-05-02T10:00:00+02:00') ?? { seconds: 0, offset: 0 };
    const told = dueWhen(text, '2026-05-01T10:00:00+02:00', [], null, now);
    expect(told).toEqual({ by: 'use', due: null, at: null, left: null, state: 'due' });
  });

  it.each(['hot', 'cold', 'before winter', 'at the next service', 'after 24 h', 'page B-5'])(
    '%s names no day, distance or hours of running',
    (text) => {
      expect(readWhen(text)).toBeNull();
    },
  );

  it('a month that has no such day ends before it; of a distance and a time, what comes first counts', () => {
    const at = (text: string) => readInstant(text) ?? { seconds: 0, offset: 0 };
    const due = (when: string, back: string, now: string) => dueWhen(when, back, [], null, at(now));
    const back = '2026-08-31T23:30:00+02:00';
    expect(due('after 6 months', back, '2027-02-27T10:00:00+01:00')).toMatchObject({
      due: '2027-02-28',
      state: 'later',
    });
    const told = [{ value: 1000, unit: 'km' as const, at: '2026-08-01T10:00:00+02:00' }];
    const read = (km: number) => ({
      value: km,
      unit: 'km' as const,
      at: '2026-09-01T10:00:00+02:00',
    });
    const both = (km: number, now: string) =>
      dueWhen('after 500 km or 6 months', back, told, read(km), at(now)).state;
    expect(both(1200, '2026-10-01T10:00:00+02:00')).toBe('later');
    expect(both(1500, '2026-10-01T10:00:00+02:00')).toBe('due');
    expect(both(1200, '2027-02-28T10:00:00+01:00')).toBe('due');
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { daysBetween, printInstant, readDay, readInstant } from '../../src/model/time.ts';

describe('a time of the diary', () => {
  it('is the same moment to the engine’s own calendar, and prints as it was written', () => {
    const seconds = fc.integer({ min: -62_135_596_800, max: 253_402_300_799 });
    fc.assert(
      fc.property(seconds, fc.integer({ min: -14 * 60, max: 14 * 60 }), (s, offset) => {
        const text = printInstant({ seconds: s, offset });
        fc.pre(/^\d{4}-/.test(text) && !text.startsWith('0000'));
        expect(Date.parse(text)).toBe(s * 1000);
        expect(readInstant(text)).toEqual({ seconds: s, offset });
      }),
    );
  });

  it.each([
    '2026-02-29T10:00:00Z',
    '2026-13-01T10:00:00Z',
    '2026-04-31T10:00:00Z',
    '2100-02-29T10:00:00Z',
    '2026-04-11 10:00',
    '11 April',
    '',
  ])('%s is no time', (text) => {
    expect(readInstant(text)).toBeNull();
  });

  it('is read with a leap second and parts of one, and told without', () => {
    expect(readInstant('2016-12-31T23:59:60Z')).toEqual(readInstant('2017-01-01T00:00:00Z'));
    expect(readInstant('2026-04-11T10:00:00.75Z')).toEqual(readInstant('2026-04-11T10:00:00Z'));
  });

  it('that nobody knows is not printed, and one far away does not break anything', () => {
    expect(printInstant({ seconds: Number.NaN, offset: 0 })).toBe('');
    expect(printInstant({ seconds: 253_402_300_800, offset: 0 })).toBe(
      '10000-01-01T00:00:00+00:00',
    );
    expect(printInstant({ seconds: 1e300, offset: 60 })).toMatch(/^275760-/);
  });

  it('a date is its first second where the person is', () => {
    const day = readDay('2026-04-25', 120);
    expect(day && printInstant(day)).toBe('2026-04-25T00:00:00+02:00');
    expect(readDay('25 April', 120)).toBeNull();
  });
});

const DAY = 24 * 60 * 60 * 1000;

describe('days since a mark', () => {
  it.each([
    ['2026-04-11T23:50:00+02:00', '2026-04-12T00:10:00+02:00', 1],
    ['2026-04-11T18:25:40+02:00', '2026-05-02T10:00:00+02:00', 21],
    ['2024-02-28T10:00:00Z', '2024-03-01T10:00:00Z', 2],
    ['2026-05-02T10:00:00Z', '2026-05-01T10:00:00Z', 0],
    ['yesterday', '2026-05-01T10:00:00Z', 0],
  ])('from %s to %s are %d days', (from, to, days) => {
    expect(daysBetween(from, to)).toBe(days);
  });

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
});

describe('a time with its zone', () => {
  const evening = '2026-10-24T20:00:00+02:00[Europe/Berlin]';

  it('is printed on the clock of that zone at that moment', () => {
    const at = readInstant(evening);
    expect(at?.zone).toBe('Europe/Berlin');
    expect(at && printInstant(at)).toBe('2026-10-24T20:00:00+02:00');
    expect(at && printInstant({ ...at, seconds: at.seconds + 12 * 3600 })).toBe(
      '2026-10-25T07:00:00+01:00',
    );
  });

  it.each([
    ['2026-10-24T20:00:00+03:00[Europe/Berlin]', 'another offset'],
    ['2026-10-24T20:00:00+02:00[Nowhere/Nothing]', 'no such zone'],
  ])('%s: %s, so its offset counts', (text) => {
    const at = readInstant(text);
    expect(at).toMatchObject({ offset: text.includes('+03') ? 180 : 120 });
    expect(at && 'zone' in at).toBe(false);
  });

  it('of half an hour, and of none', () => {
    const at = readInstant('2026-04-11T18:00:00+05:30[Asia/Kolkata]');
    expect(at && printInstant(at)).toBe('2026-04-11T18:00:00+05:30');
    const utc = readInstant('2026-04-11T18:00:00Z[UTC]');
    expect(utc && printInstant(utc)).toBe('2026-04-11T18:00:00+00:00');
  });
});

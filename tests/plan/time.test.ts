import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readDuration, sayDuration } from '../../src/plan/duration.ts';
import { daysApart, printInstant, readDay, readInstant } from '../../src/plan/time.ts';

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
    '2026-04-11 10:00',
    '11 April',
    '',
  ])('%s is no time', (text) => {
    expect(readInstant(text)).toBeNull();
  });

  it('a date is its first second where the person is', () => {
    const day = readDay('2026-04-25', 120);
    expect(day && printInstant(day)).toBe('2026-04-25T00:00:00+02:00');
    expect(readDay('25 April', 120)).toBeNull();
  });

  it.each([
    ['2026-04-11T23:50:00+02:00', '2026-04-12T00:10:00+02:00', 1],
    ['2026-04-11T18:25:40+02:00', '2026-05-02T10:00:00+02:00', 21],
    ['2024-02-28T10:00:00Z', '2024-03-01T10:00:00Z', 2],
    ['2026-05-02T10:00:00Z', '2026-05-01T10:00:00Z', 0],
    ['yesterday', '2026-05-01T10:00:00Z', 0],
  ])('from %s to %s are %d days', (from, to, days) => {
    expect(daysApart(from, to)).toBe(days);
  });
});

describe('how long a wait takes', () => {
  it.each([
    ['24 h, sealant cures', 24 * 3600, 'sealant cures'],
    ['24h', 24 * 3600, ''],
    ['2 days', 48 * 3600, ''],
    ['1 day', 24 * 3600, ''],
    ['1 week, courier', 7 * 86_400, 'courier'],
    ['20 min', 1200, ''],
    ['45 s', 45, ''],
    ['1.5 h', 5400, ''],
    ['1,5 h', 5400, ''],
    ['1 h 30 min', 5400, ''],
    ['2 days and 4 hours', 52 * 3600, ''],
    ['24-48 h, paint hardens', 48 * 3600, 'paint hardens'],
    ['24 to 48 hours', 48 * 3600, ''],
    ['the paint hardens, 24-hour cure', 24 * 3600, 'the paint hardens cure'],
    ['Penetrating oil soaks 12 h', 12 * 3600, 'Penetrating oil soaks'],
  ])('%s', (text, seconds, rest) => {
    expect(readDuration(text)).toEqual({ seconds, rest });
  });

  it.each([
    'until the paint is dry',
    'M6x25',
    '10 N·m',
    '2 S',
    '20..30 mm',
    '3 dowels',
    '5 hoses',
    '',
  ])('nothing is read out of %j', (text) => {
    expect(readDuration(text)).toBeNull();
  });

  it.each([
    [45, '45 s'],
    [1200, '20 min'],
    [5400, '1 h 30 min'],
    [86_400, '24 h'],
    [172_800, '2 days'],
    [180_000, '50 h'],
  ])('%d seconds are said as %s', (seconds, said) => {
    expect(sayDuration(seconds)).toBe(said);
  });
});

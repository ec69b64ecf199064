import { describe, expect, it } from 'vitest';
import { readDuration, sayDuration } from '../../src/plan/duration.ts';

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

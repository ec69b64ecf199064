import { describe, expect, it } from 'vitest';
import { readDuration, sayDuration, sayWithin } from '../../../src/plan/time/duration.ts';

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
    expect(readDuration(text)).toMatchObject({ seconds, rest });
  });

  it.each([
    ['1/2 h', 1800],
    ['1:30 h', 5400],
    ['1h30', 5400],
    ['1 h 15m', 4500],
    ['24 h 20 °C', 86_400],
    ['1 1/2 hours', 5400],
    ['1½ h', 5400],
    ['½ hour', 1800],
    ['1 ½ h', 5400],
    ['2 3/4 hours', 9900],
    ['1-1/2 h', 5400],
    ['half an hour', 1800],
    ['a quarter of an hour', 900],
    ['three quarters of an hour', 2700],
    ['an hour and a half', 5400],
    ['two hours and a half', 9000],
    ['a day and a half', 129_600],
    ['an hour', 3600],
    ['two days', 172_800],
    ['wait one hour, then close', 3600],
    ['1 h and 1/2 min', 3630],
    ['twenty minutes', 1200],
    ['forty-eight hours', 172_800],
    ['24 Stunden', 86_400],
    ['24 Std.', 86_400],
    ['24 heures', 86_400],
    ['24 horas', 86_400],
    ['10 Minuten', 600],
    ['2 Tage', 172_800],
    ['2 jours', 172_800],
  ])('%s', (text, seconds) => {
    expect(readDuration(text)).toMatchObject({ seconds, least: seconds });
  });

  it.each([
    ['5-10 min', 300, 600],
    ['5 bis 10 min', 300, 600],
    ['5 à 10 min', 300, 600],
    // No half of an hour.
    ['24/48 h', 86_400, 172_800],
    ['5–10 min', 300, 600],
    ['5 to 10 minutes', 300, 600],
    ['5 or 10 min', 300, 600],
    ['1/2-1 h', 1800, 3600],
    ['½ – 1½ h', 1800, 5400],
    ['30 min to 1 h', 1800, 3600],
    ['12 h - 1 day', 43_200, 86_400],
    ['24-48 h', 86_400, 172_800],
    ['48-24 h', 86_400, 172_800],
  ])('%s is both ends', (text, least, seconds) => {
    expect(readDuration(text)).toMatchObject({ least, seconds });
  });

  it.each([
    'until the paint is dry',
    'M6x25',
    '10 N·m',
    '2 S',
    '20..30 mm',
    '3 dowels',
    '5 hoses',
    '1/2 hose',
    'M6x1/2 in',
    'a hose',
    'an hourglass',
    '1/0 h',
    '48/24 h',
    // Less than all of it would be read.
    'twenty two hours',
    'forty-seven hours',
    'a hundred hours',
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

  it('what has to be done within it is not rounded up', () => {
    expect([sayDuration(90), sayWithin(90)]).toEqual(['2 min', '1 min 30 s']);
    expect([60, 45, 300, 605].map(sayWithin)).toEqual(['1 min', '45 s', '5 min', '10 min']);
  });
});

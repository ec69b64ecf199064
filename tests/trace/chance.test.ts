import { describe, expect, test } from 'vitest';
import { readChance, sayChance } from '../../src/trace/weigh/chance.ts';

describe('chances in a person’s words', () => {
  test.each([
    ['1 in 6', 1 / 6],
    ['1 time in 6', 1 / 6],
    ['once in 6 times', 1 / 6],
    ['2 times in 10', 0.2],
    ['twice in 10', 0.2],
    ['3 out of 4', 0.75],
    ['1/6', 1 / 6],
    [' 1 / 6 ', 1 / 6],
    ['50 %', 0.5],
    ['12.5%', 0.125],
    ['12,5 per cent', 0.125],
    ['0.2', 0.2],
    ['.2', 0.2],
    ['0 in 5', 0],
    ['one in six', 1 / 6],
    ['1 in six', 1 / 6],
    ['50/50', 1 / 2],
    ['50:50', 1 / 2],
  ])('%j is read', (text, p) => {
    expect(readChance(text)).toEqual({ p, rough: false });
  });

  test.each([
    ['often', 1 / 2],
    ['now and then', 1 / 4],
    ['Rarely', 1 / 8],
    ['about 1 in 6', 1 / 6],
    ['~ 10 %', 0.1],
  ])('%j is read as rough', (text, p) => {
    expect(readChance(text)).toEqual({ p, rough: true });
  });

  test.each([
    '',
    '1',
    '6',
    '7 in 6',
    '120 %',
    '1 in 0',
    '1 in 4 or 5',
    '1-2 in 6',
    'less than 1 in 6',
    'not often',
    'rarely, 1 in 20',
    '-1 in 6',
    '1 in 6 years',
    '1,500 in 2,000',
    'constructor',
  ])('%j is not read, rather than in part', (text) => {
    expect(readChance(text)).toBeNull();
  });
});

test('a chance is said as once in so many, or as all but once', () => {
  expect([1 / 9, 0.04, 0.286, 0.32, 0.5, 0.58, 2 / 3, 0.9, 0.999].map(sayChance)).toEqual([
    '1 in 9',
    '1 in 25',
    '2 in 7',
    '1 in 3',
    '1 in 2',
    '3 in 5',
    '2 in 3',
    '9 in 10',
    'nearly always',
  ]);
  // Never further off than one part in eight of it, or of its contrary.
  for (let p = 0.01; p < 0.99; p += 0.001) {
    const [n = 0, of = 0] = sayChance(p)?.split(' in ').map(Number) ?? [];
    expect(Math.abs(n / of - p)).toBeLessThan(0.125 * Math.min(p, 1 - p));
  }
  expect([0, 1.2, Number.NaN].map(sayChance)).toEqual([null, null, null]);
});

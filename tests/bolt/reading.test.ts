import { unit } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { holdAgainst, readLimit, sayLimit } from '../../src/bolt/reading.ts';

const held = (reading: string, limit: string) => {
  const read = readLimit(limit);
  if (!read) throw new Error(`not read: ${limit}`);
  return holdAgainst(reading, read).is;
};

describe('a limit', () => {
  it.each([
    ['0.8..1.2 ohm', '0.8..1.2 ohm'],
    ['7..9', '7..9'],
    ['0.9–1.0 mm', '0.9..1 mm'],
    ['8 ± 0.5 bar', '7.5..8.5 bar'],
    ['8 +/- 0.5', '7.5..8.5'],
    ['at least 3 bar', 'at least 3 bar'],
    ['min. 3', 'at least 3'],
    ['3 bar or more', 'at least 3 bar'],
    ['< 5', 'under 5'],
    ['≤ 5 mm', 'at most 5 mm'],
    ['> 12.4 V', 'over 12.4 V'],
    ['0,4..0,6 mm', '0.4..0.6 mm'],
    ['1/16..1/8 in', '0.0625..0.125 in'],
    ['20..30 mm, cold', '20..30 mm'],
    ['-5..5 °C', '-5..5 °C'],
  ])('%s is %s', (text, said) => {
    const limit = readLimit(text);
    expect(limit && sayLimit(limit)).toBe(said);
  });

  it.each([
    ...['no oil at the bottom edge', 'firm', '', 'dry', '9..7 bar', '3 florps', '5', '25 mm'],
    ...['0.8..1.2 ohm with the plug off', '1,500..2,000 rpm'],
  ])('%s is not judged by a program', (text) => {
    expect(readLimit(text)).toBe(null);
  });
});

describe('a reading against its limit', () => {
  it.each([
    ['0.4 ohm', '0.8..1.2 ohm', 'beyond'],
    ['0.94 ohm', '0.8..1.2 ohm', 'within'],
    ['940 milliohm', '0.8..1.2 ohm', 'within'],
    ['3.1 bar', '7..9', 'beyond'],
    ['8 bar', '7..9', 'within'],
    ['3.1', '7..9', 'beyond'],
    ['3.1 bar', '7..9 bar', 'beyond'],
    ['110 psi', '7..9 bar', 'within'],
    ['1.4 mm', '0.9..1.0 mm', 'beyond'],
    ['1.4', '0.9..1.0 mm', 'beyond'],
    ['0,95', '0.9..1.0 mm', 'within'],
    ['1/16 in', '1..2 mm', 'within'],
    ['0.9', '0.9..1.0 mm', 'within'],
    ['1.0', '0.9..1.0 mm', 'within'],
    ['3', 'at least 3', 'within'],
    ['2.9', 'at least 3', 'beyond'],
    ['5', '< 5', 'beyond'],
    ['4.99', '< 5', 'within'],
    ['25 mm left, 26 mm right', '20..30 mm', 'within'],
    ['25 mm left, 31 mm right', '20..30 mm', 'beyond'],
    ['about right', '20..30 mm', 'unread'],
    ['passed', '20..30 mm', 'unread'],
    ['25 mm or so', '20..30 mm', 'unread'],
    ['12.6 ohm', '12..13 V', 'unread'],
    ['32 °F', '-1..1 °C', 'within'],
    ['80 °C', '170..180 °F', 'within'],
    ['4k7', '4.5..5 kohm', 'unread'],
  ])('%s against %s: %s', (reading, limit, is) => {
    expect(held(reading, limit)).toBe(is);
  });

  it('units turn into one another as mathjs turns them', () => {
    const pairs = [
      ['psi', 'bar', 'psi', 'bar'],
      ['kPa', 'bar', 'kPa', 'bar'],
      ['in', 'mm', 'in', 'mm'],
      ['°F', '°C', 'degF', 'degC'],
      ['mV', 'V', 'mV', 'V'],
      ['ml', 'l', 'ml', 'l'],
      ['kohm', 'ohm', 'kohm', 'ohm'],
    ] as const;
    for (const [from, to, a, b] of pairs) {
      for (const value of [1, 7, 33]) {
        const turned = unit(value, a).toNumber(b);
        const limit = `${turned - Math.abs(turned) * 1e-6}..${turned + Math.abs(turned) * 1e-6} ${to}`;
        expect(held(`${value} ${from}`, limit), `${value} ${from} in ${to}`).toBe('within');
      }
    }
  });
});

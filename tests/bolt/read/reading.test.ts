import { unit } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { holdAgainst } from '../../../src/bolt/read/reading.ts';
import { type Limit, readLimit } from '../../../src/bolt/read/reading-limit.ts';

function print(value: number): string {
  return String(Number(value.toPrecision(6)));
}

/** `0.8..1.2 ohm`, `at least 3 bar`, `under 5 mm`. */
function sayLimit({ from, to, unit }: Limit): string {
  const behind = unit === null ? '' : ` ${unit}`;
  if (from && to) return `${print(from.value)}..${print(to.value)}${behind}`;
  if (from) return `${from.with ? 'at least' : 'over'} ${print(from.value)}${behind}`;
  return to ? `${to.with ? 'at most' : 'under'} ${print(to.value)}${behind}` : 'no limit';
}

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
    ['0.8 ohm to 1.2 ohm', '0.8..1.2 ohm'],
    ['500 mV to 1.2 V', '0.5..1.2 V'],
    ['8 bar ± 0.5', '7.5..8.5 bar'],
    ['8 +0.5/-0.2 bar', '7.8..8.5 bar'],
    ['±2 mm', '-2..2 mm'],
    ['between 3 and 5 mm', '3..5 mm'],
    ['from 3 to 5 mm', '3..5 mm'],
    ['min. 7, max. 9 bar', '7..9 bar'],
    ['7 bar min and 9 bar max', '7..9 bar'],
    ['12.6 V or higher', 'at least 12.6 V'],
    ['above 12.6 V', 'over 12.6 V'],
    ['1 1/2..2½ turns', '1.5..2.5 turns'],
    ['20–30 mm (0.8–1.2 in)', '20..30 mm'],
    ['20 to 30 mm, at its tightest', '20..30 mm'],
    ['2 to 3 mm in the middle of the lower run', '2..3 mm'],
    ['max ⅜ in', 'at most 0.375 in'],
    ['200 ohm ± 10 %', '180..220 ohm'],
    ['8 ± 10 % bar', '7.2..8.8 bar'],
    ['4.7k..5.3k', '4.7..5.3 k'],
    ['90..110 deg C', '90..110 deg C'],
  ])('%s is %s', (text, said) => {
    const limit = readLimit(text);
    expect(limit && sayLimit(limit)).toBe(said);
  });

  it.each([
    ...['no oil at the bottom edge', 'firm', '', 'dry', '9..7 bar', '3 florps', '5', '25 mm'],
    ...['0.8..1.2 ohm with the plug off', '1,500..2,000 rpm', '1/16 in', '0,4', '5 min'],
    // The second unit is another figure.
    ...['20–30 mm (1.8–2.2 in)', '8 bar ± 5 psi', 'max 7, min 9 bar', 'over 5, over 6 mm'],
    ...['std 0.10, limit 0.30 mm', '5 mm below the edge', 'about 25 mm', '20..30 mm or more'],
    // A tenth of it, or ten points of a hundred.
    ...['50 ± 10 %', 'no continuity'],
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
    ['1.2.3', '1..2', 'unread'],
    ['1e3', '1..2000', 'unread'],
    ['20+', '10..30', 'unread'],
    ['8 florps', '7..9', 'unread'],
    ['1,200 rpm', '1100..1300 rpm', 'unread'],
    ['8, 8.2, 3.1 bar', '7..9 bar', 'beyond'],
    // The unit behind the last holds for all.
    ['100, 120 psi', '7..9 bar', 'beyond'],
    ['110, 120 psi', '7..9 bar', 'within'],
    ['L 25, R 31 mm', '20..30 mm', 'beyond'],
    ['8 bar warm', '7..9 bar', 'within'],
    ['1½ turns', '1..2 turns', 'within'],
    // A letter's height between milli and mega, however the word is written.
    ['5 ohm', 'at least 1 MOhm', 'beyond'],
    ['5 MOHM', 'at least 1 Mohm', 'within'],
    ['2 megohm', '> 1 M', 'within'],
    ['900 mOhm', '0.8..1.2 ohm', 'within'],
    ['0.9k', '800..1000 ohm', 'within'],
    // Two readings side by side, and no fraction of one.
    ['16/2', '7..9 bar', 'unread'],
    ['79/9', '7..9 bar', 'unread'],
    ['7½31', '7..9 bar', 'unread'],
    // What a meter shows where nothing goes through.
    ['OL', '0.8..1.2 ohm', 'beyond'],
    ['0.L', '0.8..1.2 ohm', 'beyond'],
    ['0L', 'max 5 ohm', 'beyond'],
    ['0L', 'max 5', 'unread'],
    ['OL', 'max 5 V', 'unread'],
    ['OL', 'at least 1 MΩ', 'within'],
    ['OL', 'infinite', 'within'],
    ['12 kohm', 'infinite', 'beyond'],
    ['2.0 kp/cm2', '1.9..2.1 bar', 'within'],
    ['30 lb/in2', '2.0..2.2 bar', 'within'],
    ['1500 U/min', '1450..1550 rpm', 'within'],
  ])('%s against %s: %s', (reading, limit, is) => {
    expect(held(reading, limit)).toBe(is);
  });

  // A meter that chose its own range, a gauge with the other scale.
  it.each([
    ['5000', '4..6 kohm'],
    ['5000000', '4..6 Mohm'],
    ['0.005', '4..6 ohm'],
    ['5000, 5100', '4..6 kohm'],
    ['5, 5100', '4..6 kohm'],
    ['0.0126', 'over 12.4 V'],
    ['6000', 'at most 5 kohm'],
    ['0.4', 'at least 400 mV'],
    ['30', '2.0..2.2 bar'],
    ['1', '20..30 mm'],
    ['0.004', '0.08..0.12 mm'],
  ])(
    '%s against %s may have another unit: nothing is judged, it is asked for',
    (reading, limit) => {
      const read = readLimit(limit);
      if (!read) throw new Error(`not read: ${limit}`);
      expect(holdAgainst(reading, read)).toMatchObject({ is: 'unread', noUnit: true });
    },
  );

  it.each([
    ['5000 kohm', '4..6 kohm', 'beyond'],
    ['5000 ohm', '4..6 kohm', 'within'],
    ['30 psi', '2.0..2.2 bar', 'within'],
    ['0', '4..6 kohm', 'beyond'],
    ['0', 'at most 5 kohm', 'within'],
    ['7', '4..6 kohm', 'beyond'],
    ['0.4', '4..6 kohm', 'beyond'],
    ['15', '20..30 mm', 'beyond'],
    ['5000', '4..6', 'beyond'],
    ['OL', '4..6 kohm', 'beyond'],
    ['180', '80..90 °C', 'beyond'],
    ['-200', '1..2 mm', 'beyond'],
  ])('%s against %s is judged: %s', (reading, limit, is) => {
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

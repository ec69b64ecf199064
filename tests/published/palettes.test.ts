/** Colours that all can tell apart, and read on white and on black. */
import { describe, expect, it } from 'vitest';
import { paint } from '../../src/screens/kit/paint.ts';
import { PALETTES, SAFE } from '../../src/screens/kit/palettes.ts';
import { line, span } from '../../src/screens/kit/text.ts';

type Rgb = readonly [number, number, number];

/** xterm's 256 colours: from 16 on a cube of six steps each (xterm, 256colres.pl; from memory). */
function rgbOf(index: number): Rgb {
  const step = (n: number) => (n === 0 ? 0 : 55 + 40 * n);
  const cube = index - 16;
  return [step(Math.floor(cube / 36)), step(Math.floor(cube / 6) % 6), step(cube % 6)];
}

/** IEC 61966-2-1 (sRGB). */
function linear(value: number): number {
  const v = value / 255;
  return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
}
const light = (rgb: Rgb): Rgb => [linear(rgb[0]), linear(rgb[1]), linear(rgb[2])];

/** WCAG 2.2, relative luminance and contrast ratio; text that is large or bold needs 3 : 1 (success criterion 1.4.3). */
const luminance = ([r, g, b]: Rgb) => 0.2126 * r + 0.7152 * g + 0.0722 * b;
const contrast = (a: number, b: number) => (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);

/** Machado, Oliveira and Fernandes, A physiologically-based model for simulation of color vision deficiency, 2009, severity 1 (from memory). */
const SEEN: Readonly<Record<string, readonly Rgb[]>> = {
  all: [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  protan: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deutan: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritan: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
};

function seen(rows: readonly Rgb[], rgb: Rgb): Rgb {
  const by = (row: Rgb) =>
    Math.min(1, Math.max(0, row[0] * rgb[0] + row[1] * rgb[1] + row[2] * rgb[2]));
  return [by(rows[0]!), by(rows[1]!), by(rows[2]!)];
}

/** CIE 1976 L*a*b* under D65, and the distance of two colours in it (ISO/CIE 11664-4). */
function lab([r, g, b]: Rgb): Rgb {
  const f = (t: number) => (t > (6 / 29) ** 3 ? Math.cbrt(t) : t / (3 * (6 / 29) ** 2) + 4 / 29);
  const x = f((0.4124564 * r + 0.3575761 * g + 0.1804375 * b) / 0.95047);
  const y = f(0.2126729 * r + 0.7151522 * g + 0.072175 * b);
  const z = f((0.0193339 * r + 0.119192 * g + 0.9503041 * b) / 1.08883);
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}
const apart = (a: Rgb, b: Rgb) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

const COLOURS = Object.entries(SAFE).map(([name, index]) => [name, light(rgbOf(index))] as const);

describe('the colours that are told apart by everybody', () => {
  it.each(COLOURS)('%s can be read on white and on black', (_, rgb) => {
    expect(contrast(luminance(rgb), 1)).toBeGreaterThan(3);
    expect(contrast(luminance(rgb), 0)).toBeGreaterThan(3);
  });

  it.each(Object.entries(SEEN))('are apart as %s see them', (_, rows) => {
    for (const [a, first] of COLOURS) {
      for (const [b, second] of COLOURS) {
        if (a >= b) continue;
        const distance = apart(lab(seen(rows, first)), lab(seen(rows, second)));
        // Two patches side by side are told apart from about 2.3 on (Mahy 1994, from memory); letters need several times that.
        expect(distance, `${a} and ${b}`).toBeGreaterThan(15);
      }
    }
  });

  it('are the only difference between the palettes', () => {
    const text = line(span('STOP', { colour: 'red', bold: true }), ' and on');
    const drawn = PALETTES.map((palette) => paint(text, { colour: true, ascii: false, palette }));
    expect(drawn).toEqual([
      '\x1b[1;31mSTOP\x1b[0m and on',
      '\x1b[1;38;5;166mSTOP\x1b[0m and on',
      '\x1b[1mSTOP\x1b[0m and on',
    ]);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FACTORS, unitOf } from '../../../src/bolt/read/unit-names.ts';
import { convert, printQuantity, readQuantity } from '../../../src/bolt/read/units.ts';
import { readTorque } from '../../../src/bolt/torque/stages.ts';

const TORQUES = [...FACTORS].filter(([, f]) => f.of === 'torque').map(([unit]) => unit);

describe('units as the trade writes them', () => {
  it.each([
    [
      'N·m',
      [
        'N·m',
        'N⋅m',
        'N*m',
        'N.m',
        'N-m',
        'N m',
        'Nm',
        'NM',
        'nm',
        'newton metres',
        'Newton-meters',
      ],
    ],
    [
      'lbf·ft',
      [
        'lbf·ft',
        'ft-lb',
        'ft-lbs',
        'ft lbs',
        'FT-LB',
        'lb.-ft.',
        'lb ft',
        'lbs-ft',
        'ft·lbf',
        'foot-pounds',
        'ft/lbs',
      ],
    ],
    ['lbf·in', ['lbf·in', 'in lbs', 'in-lb', 'in. lbs.', 'inch pounds', 'lb-in', 'lbf in', 'INLB']],
    ['kgf·m', ['kgf-m', 'kgf·m', 'kg-m', 'kg·m', 'mkg', 'kgm', 'm·kgf', 'kp m']],
    ['kgf·cm', ['kgf·cm', 'kg-cm', 'cm kg', 'kgcm']],
    ['ozf·in', ['ozf·in', 'oz-in', 'oz in', 'in-oz']],
  ])('%s', (unit, spellings) => {
    expect(spellings.map(unitOf)).toEqual(spellings.map(() => unit));
  });

  it.each(['mN', 'N/m', 'm', 'furlong', 'Nmm', 'lbf·m', ''])('%s is none that it knows', (text) => {
    expect(unitOf(text)).toBeNull();
  });
});

describe('a quantity', () => {
  it('a unit as it is printed is read as any spelling of it is', () => {
    const printed = [...FACTORS.keys()];
    // A blank in front sends it the long way.
    expect(printed.map((unit) => unitOf(` ${unit}`))).toEqual(printed.map(unitOf));
  });

  it.each([
    ['10 N·m', { value: 10, to: null, unit: 'N·m' }],
    ['8..12 N·m', { value: 8, to: 12, unit: 'N·m' }],
    ['8-12 Nm', { value: 8, to: 12, unit: 'N·m' }],
    ['8 to 12 ft-lb', { value: 8, to: 12, unit: 'lbf·ft' }],
    ['10 ± 2 Nm', { value: 8, to: 12, unit: 'N·m' }],
    ['1,2 kgf-m', { value: 1.2, to: null, unit: 'kgf·m' }],
    ['20..30 mm', { value: 20, to: 30, unit: 'mm' }],
    ['90°', { value: 90, to: null, unit: '°' }],
    ['12..8 Nm', null],
    ['10', null],
    ['1,500 Nm', null],
    ['10 N·m please', null],
    ['tight', null],
  ])('%s', (text, quantity) => {
    expect(readQuantity(text)).toEqual(quantity);
  });

  it('is read back as it was printed', () => {
    const value = fc.integer({ min: 1, max: 99999 }).map((n) => n / 100);
    fc.assert(
      fc.property(value, fc.option(value), fc.constantFrom(...FACTORS.keys()), (a, more, unit) => {
        const q = { value: a, to: more === null ? null : Math.round((a + more) * 100) / 100, unit };
        expect(readQuantity(printQuantity(q))).toEqual(q);
      }),
    );
  });
});

describe('a torque as the manual prints it', () => {
  const ten = { value: 10, to: null, unit: 'N·m' };
  it.each([
    ['10 N·m, manual 2-17', ten, 'manual 2-17'],
    ['10 Nm', ten, null],
    ['8,5 Nm, p. 3', { ...ten, value: 8.5 }, 'p. 3'],
    ['10 N·m (7.4 lbf·ft), page 3', ten, 'page 3'],
    ['10 N·m (7.4 lbf·ft)', ten, null],
    ['10 N·m (manual 2-17)', ten, 'manual 2-17'],
    ['20 N·m + 90°, page 4', { ...ten, value: 20 }, 'page 4'],
    ['see manual', null, null],
    ['hand tight, manual 2-3', null, 'manual 2-3'],
    ['12 mm', null, null],
  ])('%s', (text, quantity, where) => {
    expect(readTorque(text)).toEqual({ text, printed: null, quantity, where });
  });

  it('keeps the whole text whatever it is', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        expect(readTorque(text).text).toBe(text);
      }),
    );
  });
});

describe('conversion', () => {
  it('there and back gives the figure again, and through a third unit the same as straight', () => {
    const unit = fc.constantFrom(...TORQUES);
    fc.assert(
      fc.property(
        fc.double({ min: 1e-3, max: 1e6, noNaN: true }),
        unit,
        unit,
        unit,
        (v, a, b, c) => {
          const there = convert(v, a, b)!;
          expect(convert(there, b, a)! / v).toBeCloseTo(1, 12);
          expect(convert(convert(v, a, c)!, c, b)! / there).toBeCloseTo(1, 12);
        },
      ),
    );
  });

  it('refuses what does not measure the same thing, and units it does not know', () => {
    expect(convert(1, 'N·m', 'mm')).toBeNull();
    expect(convert(1, 'N·m', 'furlong')).toBeNull();
    expect(convert(1, '', '')).toBeNull();
  });
});

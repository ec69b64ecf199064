import { describe, expect, it } from 'vitest';
import { readReading } from '../../src/bolt/read/counter.ts';
import { type Machine, machineKey, sameMachine } from '../../src/memory/machine.ts';

const of = (
  machine: string | null,
  machineId: string | null = null,
  ...like: string[]
): Machine => ({
  machine,
  machineId,
  like,
});

describe('machines', () => {
  it.each([
    ['Hollin 400 Twin, 1998, 41230 km', 'hollin 400twin'],
    ['Hollin 400 Twin 1998', 'HOLLIN 400 TWIN, 2001, 12.500 mi'],
    ['Brandau Mäher 46, 120 h', 'brandau maher 46'],
    ['Tarn 125, 2003, 18 900 km', 'Tarn 125'],
  ])('%s and %s are one model', (a, b) => {
    expect(sameMachine(of(a), of(b))).toBe('name');
  });

  it.each([
    ['Hollin 400 Twin', 'Hollin 500 Twin'],
    ['Tarn 125', 'Tarn 1250'],
    ['', ''],
  ])('%s and %s are not', (a, b) => {
    expect(sameMachine(of(a), of(b))).toBeNull();
  });

  it('a name that is a year alone is kept', () => {
    expect(machineKey('1998')).toBe('1998');
  });

  it('a number of its own, or like:, says it for sure', () => {
    expect(sameMachine(of('Hollin', 'HL4-20117'), of('The old one', 'hl4-20117'))).toBe('id');
    expect(sameMachine(of('Hollin 500', null, 'Hollin 400, 1998'), of('hollin 400'))).toBe('like');
    expect(sameMachine(of('Hollin 500', null, 'HL4-1'), of('x', 'HL4-1'))).toBe('like');
    expect(sameMachine(of(null), of(null))).toBeNull();
  });
});

describe('a counter', () => {
  it.each([
    ['Hollin, 41230 km', 41230, 'km'],
    ['41.230 km', 41230, 'km'],
    ['1,204.5 h', 1204.5, 'h'],
    ['41 230 km', 41230, 'km'],
    ['10 miles', 16.09344, 'km'],
    ['120 operating hours', 120, 'h'],
  ])('%s', (text, value, unit) => {
    expect(readReading(text)).toEqual({ value, unit });
  });
  it.each(['Hollin 400 Twin, 1998', '90 km/h', 'none'])('%s is none', (text) => {
    expect(readReading(text)).toBeNull();
  });
});

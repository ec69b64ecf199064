import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readDepth, readLength } from '../../../src/bolt/read/length.ts';

describe('a length as people write it', () => {
  it.each([
    ['25', 25],
    ['25 mm', 25],
    ['12,5', 12.5],
    ['.5', 0.5],
    ['2.5 cm', 25],
    ['1 in', 25.4],
    ['1-1/2', 38.1],
    ['1 1/2 in', 38.1],
    ['3/8"', 9.525],
    ['1″', 25.4],
    ['1,500', null],
    ['0,125', 0.125],
    ['1/0', null],
    ['-3', null],
    ['about 20', null],
    ['', null],
    ['25 m', null],
  ])('%s', (text, mm) => {
    expect(readLength(text)).toBe(mm);
  });
});

describe('usable thread below the joint face', () => {
  it.each([
    ['3..19', { from: 3, to: 19 }],
    ['19', { from: 0, to: 19 }],
    ['3..', { from: 3, to: null }],
    ['..19', { from: 0, to: 19 }],
    ['3-19', { from: 3, to: 19 }],
    ['3 to 19 mm', { from: 3, to: 19 }],
    ['2,5..19', { from: 2.5, to: 19 }],
    ['1/4..3/4 in', { from: 6.35, to: 19.05 }],
    ['1-1/2..2 in', { from: 38.1, to: 50.8 }],
    ['19..3', null],
    ['0', null],
    ['..', null],
    ['deep', null],
    ['', null],
  ])('%s', (text, depth) => {
    expect(readDepth(text)).toEqual(depth);
  });

  it('never throws', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        const mm = readLength(text);
        expect(mm === null || mm >= 0).toBe(true);
        const depth = readDepth(text);
        expect(depth === null || depth.to === null || depth.to > depth.from).toBe(true);
      }),
    );
  });
});

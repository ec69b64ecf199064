import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { limitsOf } from '../../../src/bolt/thread/limits.ts';
import { allThreads, sameThread, threadOf, turning } from '../../../src/bolt/thread/threads.ts';

const threads = fc.constantFrom(...allThreads());

describe('a thread by its name', () => {
  it.each([
    ['M6', 'M6x1'],
    ['M6x1', 'M6x1'],
    ['M10x1.25', 'M10x1.25'],
    ['M10 x 1.25 x 40 hex', 'M10x1.25'],
    ['1/4-20', '1/4-20 UNC'],
    ['1/4 UNF', '1/4-28 UNF'],
    ['10-32 UNF x 1/2', '10-32 UNF'],
    ['#10-24', '10-24 UNC'],
  ])('%s is %s', (text, name) => {
    expect(threadOf(text)?.name).toBe(name);
  });

  it.each(['M6x1.3', 'M9', '1/4', '1/4-28 UNC', '1/4-24', '2BA', '1/8 NPT', '', 'lots'])(
    '%s is one without figures',
    (text) => {
      expect(threadOf(text)).toBeNull();
    },
  );

  it('M6 is M6x1, and of two unknown threads only the same words are the same', () => {
    expect(sameThread('M6', 'M6x1')).toBe(true);
    expect(sameThread('M6', 'M6x0.75')).toBe(false);
    expect(sameThread('2BA', '2 ba')).toBe(true);
    expect(sameThread('2BA', '4BA')).toBe(false);
    expect(sameThread('9 odd', 'X4')).toBeNull();
    expect(sameThread('M6', null)).toBeNull();
  });

  it('a left-hand thread turns the other way, and only that is said', () => {
    expect(turning(true)).toMatchObject({
      off: 'clockwise',
      say: expect.stringContaining('clockwise undoes it'),
    });
    expect(turning(false)).toEqual({ off: 'to the left', on: 'clockwise', say: null });
  });
});

describe('every thread', () => {
  it('has its diameters in order, root to crest, and is found by its own name', () => {
    fc.assert(
      fc.property(threads, (t) => {
        expect(t.d3).toBeLessThan(t.D1);
        expect(t.D1).toBeLessThan(t.d2);
        expect(t.d2).toBeLessThan(t.d);
        expect(t.tapDrill).toBeGreaterThan(t.D1 - 0.1);
        expect(t.tapDrill).toBeLessThan(t.d2);
        expect(threadOf(t.name)).toEqual(t);
      }),
    );
  });

  it('leaves play between the largest bolt and the basic hole, and still meets it', () => {
    fc.assert(
      fc.property(threads, (t) => {
        const l = limitsOf(t);
        expect(l.dMin).toBeLessThan(l.dMax);
        expect(l.dMax).toBeLessThanOrEqual(t.d);
        expect(l.d2Min).toBeLessThan(l.d2Max);
        expect(l.d2Max).toBeLessThanOrEqual(t.d2);
        expect(l.D2Max).toBeGreaterThan(t.d2);
        expect(l.D1Max).toBeGreaterThan(t.D1);
        // The thinnest bolt still overlaps the widest hole.
        expect(l.dMin).toBeGreaterThan(l.D1Max);
      }),
    );
  });
});

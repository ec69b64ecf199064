/** British threads held against tables in print. */
import { describe, expect, it } from 'vitest';
import { fit } from '../../src/bolt/fit/fit.ts';
import { readKind } from '../../src/bolt/read/kind.ts';
import { britishOf } from '../../src/bolt/thread/british.ts';
import { allThreads, sameThread } from '../../src/bolt/thread/threads.ts';

describe('BSW and BSF', () => {
  // Threads to the inch: www.unikgaugesindia.com/bsw-bsf-whits-thread-gauges.html, after BS 84:2007; one source, and for BSW
  // trfastenings.com/knowledge-base/thread-geometries/british-standard-whitworth as well.
  it.each<[string, number, number | null]>([
    ['3/16', 24, 32],
    ['1/4', 20, 26],
    ['5/16', 18, 22],
    ['3/8', 16, 20],
    ['7/16', 14, 18],
    ['1/2', 12, 16],
    ['9/16', 12, 16],
    ['5/8', 11, 14],
    ['11/16', 11, 14],
    ['3/4', 10, 12],
    ['7/8', 9, 11],
    ['1', 8, 10],
  ])('%s: %d and %d', (size, coarse, fine) => {
    expect(25.4 / (britishOf(`${size} BSW`)?.pitch ?? 0)).toBeCloseTo(coarse, 9);
    expect(25.4 / (britishOf(`${size} BSF`)?.pitch ?? 0)).toBeCloseTo(fine ?? 0, 9);
    expect(britishOf(`Whitworth ${size}`)?.name).toBe(`${size} BSW`);
  });
});

describe('BA', () => {
  // Outside diameter in inches and threads to the inch (the other source has 65.1 for 9 BA): articles.gourt.com/en/British Association screw threads; the first
  // figures also at britishfasteners.com/threads-ba; two sources agree.
  it.each([
    [0, 0.2362, 25.38],
    [1, 0.2087, 28.25],
    [2, 0.185, 31.35],
    [3, 0.1614, 34.84],
    [4, 0.1417, 38.46],
    [5, 0.126, 43.1],
    [6, 0.1102, 47.85],
    [7, 0.0984, 52.91],
    [8, 0.0866, 59.17],
    [9, 0.0748, 64.94],
    [10, 0.0669, 72.46],
  ])('%d BA is %d in, %d to the inch', (number, inches, n) => {
    const { d, pitch } = britishOf(`${number}BA`)!;
    expect((d ?? 0) / 25.4).toBeCloseTo(inches, 3);
    expect(Math.abs(25.4 / (pitch ?? 0) - n)).toBeLessThan(0.2);
  });
});

describe('none of them is an inch or metric neighbour', () => {
  const british = [
    '1/4 BSW',
    '1/4 BSF',
    '3/8 BSW',
    '5/16 BSF',
    '0BA',
    '2BA',
    '4 BA',
    '1/4 CEI',
    '1/4-26 BSB',
  ];

  it.each(british)('%s is no metric thread and none of UNC and UNF', (thread) => {
    for (const { name } of allThreads()) {
      expect(sameThread(thread, name), name).toBe(false);
      expect(sameThread(name, thread), name).toBe(false);
    }
    for (const other of british) {
      expect(sameThread(thread, other), other).toBe(thread === other);
    }
  });

  it('is said of a bolt in a hole, whatever else is alike', () => {
    const place = (kind: string) => ({
      takes: { kind: readKind('S', kind), with: [] },
      hole: null,
      piece: null,
    });
    for (const [mine, its] of [
      ['0BA x 1 hex', 'M6x25.4 hex'],
      ['1/4 BSW x 1 hex', '1/4-20 x 1 hex'],
      ['1/4 BSF x 1 hex', 'M6x25.4 hex'],
      ['2BA x 1 hex', '10-32 UNF x 1 hex'],
      ['M6x25.4 hex', '1/4-26 x 1 hex'],
    ] as const) {
      const found = fit(readKind('X', mine), null, place(its));
      expect(found, mine).toMatchObject({ verdict: 'wrong-thread', sure: true });
      expect(found.why).toContain(' in a hole for ');
    }
    // Threads of which only the figures are written may be either.
    expect(sameThread('1/4-26', '1/4 BSF')).toBeNull();
    expect(sameThread('9odd', 'M6')).toBeNull();
  });

  it.each([
    ['2BA', '2 BA'],
    ['No. 2 BA', 'BA 2'],
    ['1/4 BSW', '1/4" Whitworth'],
    ['1/4-20 BSW', '1/4 BSW'],
    ['5/16 BSC', '5/16 CEI'],
  ])('%s is %s', (a, b) => {
    expect(sameThread(a, b)).toBe(true);
  });

  it.each<[string, string, number | null]>([
    ['2BA x 1/2 cheese head', '2BA', 12.7],
    ['4 BA hex', '4BA', null],
    ['1/4 Whitworth x 1 hex', '1/4 BSW', 25.4],
    ['BA 6 x 10', '6BA', 10],
  ])('%s: %s', (text, thread, length) => {
    expect(readKind('B', text)).toMatchObject({ thread, length });
  });
});

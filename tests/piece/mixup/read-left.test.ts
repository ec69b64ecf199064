import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readLeft, readProud } from '../../../src/piece/mixup/read-left.ts';

const left = (text: string, kinds?: string[]) => {
  const read = readLeft(text, kinds ?? null);
  return read.ok ? Object.fromEntries(read.value) : read.faults.map((f) => [f.code, f.at, f.word]);
};
const proud = (text: string, holes?: string[]) => {
  const read = readProud(text, holes ?? null);
  return read.ok ? Object.fromEntries(read.value) : read.faults.map((f) => [f.code, f.at, f.word]);
};

describe('what is left in the tray, as typed', () => {
  test.each([
    ['2 S, M', { S: 2, M: 1 }],
    ['2S M', { S: 2, M: 1 }],
    ['2 x S and 1 M', { S: 2, M: 1 }],
    ['2xS; 3×M', { S: 2, M: 3 }],
    ['S S M+clip', { S: 2, M: 1 }],
    ['1 S, 1 S', { S: 2 }],
    ['0 S, M', { M: 1 }],
    ['12 M2', { M2: 12 }],
    ['', {}],
    ['  none ', {}],
    ['-', {}],
    ['nothing', {}],
  ])('%s', (text, counts) => {
    expect(left(text)).toEqual(counts);
  });

  test('a letter that is typed small is the one there is', () => {
    expect(left('2 s, m', ['S', 'M'])).toEqual({ S: 2, M: 1 });
    expect(left('s', ['S', 's'])).toEqual({ s: 1 });
    expect(left('2 x', ['x', 'S'])).toEqual({ x: 2 });
  });

  test('a number without a kind, and a kind that there is not, are said with their place', () => {
    expect(left('2, 3 S')).toEqual([['no-kind', 0, '2']]);
    expect(left('S 2')).toEqual([['no-kind', 2, '2']]);
    expect(left('2 Q, 1 Z', ['S', 'M'])).toEqual([
      ['unknown-kind', 2, 'Q'],
      ['unknown-kind', 7, 'Z'],
    ]);
    expect(left('2 ?')).toEqual([['unknown-kind', 2, '?']]);
    expect(left('-3 S')).toEqual([['unknown-kind', 0, '-3']]);
    const read = readLeft('2 Q', ['S', 'M']);
    expect(read.ok ? null : read.faults[0]?.say).toBe(
      'No kind of bolt is called Q. Kinds here: S and M.',
    );
  });
});

describe('heights by hole, as typed', () => {
  test.each([
    ['4=12.5,7=3', { 4: 12.5, 7: 3 }],
    ['4=12,5, 7=3', { 4: 12.5, 7: 3 }],
    ['4=12,5=3', { 4: 12, 5: 3 }],
    ['4=12,57=3', { 4: 12, 57: 3 }],
    ['4: 12.5 mm; 4a: 0', { 4: 12.5, '4a': 0 }],
    ['4 = 12.5  7 = -', { 4: 12.5 }],
    ['4=1/2 in', { 4: 12.7 }],
    ['', {}],
  ])('%s', (text, heights) => {
    expect(proud(text)).toEqual(heights);
  });

  test('no height, no such hole, a hole twice, no hole at all', () => {
    expect(proud('4=high,7=3')).toEqual([['no-figure', 2, 'high']]);
    expect(proud('4=,7=3')).toEqual([['no-figure', 2, '']]);
    expect(proud('4=-2')).toEqual([['no-figure', 2, '-2']]);
    expect(proud('99=3', ['1', '2'])).toEqual([['unknown-hole', 0, '99']]);
    expect(proud('S=3')).toEqual([['unknown-hole', 0, 'S']]);
    expect(proud('4=3, 4=5')).toEqual([['twice', 5, '4']]);
    expect(proud('12.5')).toEqual([['no-figure', 0, '12.5']]);
    expect(proud('4=1,500')).toEqual([['no-figure', 2, '1,500']]);
  });
});

test('whatever is typed is read or said to be unreadable, and never throws', () => {
  const text = fc.oneof(
    fc.string({ unit: 'grapheme' }),
    fc.string({ unit: fc.constantFrom(...'12 ,.=-;xSM+:?/') }),
  );
  fc.assert(
    fc.property(text, (typed) => {
      for (const read of [readLeft(typed), readLeft(typed, ['S']), readProud(typed, ['1'])]) {
        if (read.ok) for (const n of read.value.values()) expect(n).toBeGreaterThanOrEqual(0);
        else for (const f of read.faults) expect(f.at).toBeLessThanOrEqual(typed.length);
      }
    }),
  );
});

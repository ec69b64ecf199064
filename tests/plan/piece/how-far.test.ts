import { describe, expect, it } from 'vitest';
import { barePiece } from '../../../src/job/form/bare.ts';
import { layout } from '../../../src/piece/map.ts';
import { howFar } from '../../../src/plan/piece/how-far.ts';
import { dotted } from '../../../src/screens/kit/dotted.ts';

const ring = (n: number) =>
  layout(
    barePiece('lid'),
    Array.from({ length: n }, (_, i) => `${i + 1}`),
  );
const drawn = (map: string) => {
  const names = map.split(/\s+/).filter((w) => /\d/.test(w));
  return layout({ ...barePiece('cover'), map }, names);
};

describe('how far it is to the next hole', () => {
  it('is right across, or so many on, clockwise, or back anticlockwise', () => {
    const eight = ring(8);
    expect(howFar(eight, '1', '5')).toBe('right across');
    expect(howFar(eight, '1', '2')).toBe('next to it, clockwise');
    expect(howFar(eight, '1', '3')).toBe('two on, clockwise');
    expect(howFar(eight, '1', '7')).toBe('two back, anticlockwise');
    expect(howFar(eight, '8', '1')).toBe('next to it, clockwise');
    expect(howFar(eight, '4', '1')).toBe('three back, anticlockwise');
    expect(howFar(ring(40), '1', '12')).toBe('11 on, clockwise');
  });

  it('counts on a ring of odd number, where nothing lies right across', () => {
    expect(howFar(ring(5), '1', '3')).toBe('two on, clockwise');
    expect(howFar(ring(5), '1', '4')).toBe('two back, anticlockwise');
    expect(howFar(ring(3), '1', '2')).toBe('next to it, clockwise');
  });

  it('is a direction where the holes do not stand in a ring', () => {
    const rows = drawn('1 2 3\n4 5 6\n7 8 9');
    expect(howFar(rows, '5', '6')).toBe('to the right');
    expect(howFar(rows, '5', '4')).toBe('to the left');
    expect(howFar(rows, '5', '1')).toBe('up to the left');
    expect(howFar(rows, '1', '7')).toBe('down');
    expect(howFar(rows, '3', '7')).toBe('down to the left');
    expect(howFar(rows, '7', '3')).toBe('up to the right');
    expect(howFar(drawn('1 2'), '1', '2')).toBe('to the right');
  });

  it('is nothing between a hole and itself, or one that is not there', () => {
    expect(howFar(ring(4), '1', '1')).toBeNull();
    expect(howFar(ring(4), '1', '9')).toBeNull();
  });
});

describe('the line to the next hole', () => {
  it('runs from one to the other, ends left out', () => {
    expect([...dotted({ row: 0, column: 0 }, { row: 0, column: 8 })]).toEqual([[0, [2, 4, 6]]]);
    expect([...dotted({ row: 4, column: 3 }, { row: 1, column: 3 })]).toEqual([
      [3, [3]],
      [2, [3]],
    ]);
  });

  it('is nothing without both ends', () => {
    expect(dotted(null, { row: 1, column: 1 }).size).toBe(0);
    expect(dotted({ row: 1, column: 1 }, null).size).toBe(0);
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { HoleSpec, RowItem } from '../../src/model/types.ts';
import { compareHoles } from '../../src/piece/names.ts';
import { holeNames } from '../../src/piece/order.ts';

const row = (n: number): RowItem[] => Array.from({ length: n }, () => ({ kind: 'S', with: [] }));
const hole = (name: string): HoleSpec => ({
  ...{ name, note: null, thick: null, thread: null, turns: null, proud: null, at: null },
  ...{ torque: null, into: null, wet: false, group: null },
});
const holes = (...names: string[]) => new Map(names.map((n) => [n, hole(n)]));
const none = { row: null, map: null, holes: holes() };

describe('names of the holes of a piece', () => {
  test('a row of n: 1 to n', () => {
    expect(holeNames({ ...none, row: row(3) })).toEqual(['1', '2', '3']);
    expect(holeNames({ ...none, row: [] })).toEqual([]);
    expect(holeNames(none)).toEqual([]);
  });

  test('the map’s own numbers where it draws just as many', () => {
    expect(holeNames({ ...none, row: row(3), map: '5 7\n6 .' })).toEqual(['5', '6', '7']);
    expect(holeNames({ ...none, map: '10 2\n1 .' })).toEqual(['1', '2', '10']);
  });

  test('a map with too few or too many holes leaves the row its numbers', () => {
    expect(holeNames({ ...none, row: row(3), map: '1 2' })).toEqual(['1', '2', '3']);
    expect(holeNames({ ...none, row: row(2), map: '1 2 3' })).toEqual(['1', '2']);
  });

  test('4a stands between 4 and 5 and counts as one of the row', () => {
    const spec = { ...none, row: row(6), holes: holes('4a') };
    expect(holeNames(spec)).toEqual(['1', '2', '3', '4', '4a', '5']);
    expect(holeNames({ ...none, row: row(6), map: '1 2 3\n4 4a 5' })).toEqual(holeNames(spec));
  });

  test('a special hole beyond the row adds none', () => {
    expect(holeNames({ ...none, row: row(2), holes: holes('7') })).toEqual(['1', '2']);
  });

  test('without a row, what the map and the special holes name', () => {
    expect(holeNames({ ...none, map: '2 1', holes: holes('12', '1a') })).toEqual([
      '1',
      '1a',
      '2',
      '12',
    ]);
  });

  test('as many names as the row has words, each once, in counting order', () => {
    const name = fc
      .tuple(fc.integer({ min: 1, max: 20 }), fc.constantFrom('', '', 'a', 'b'))
      .map(([n, letter]) => `${n}${letter}`);
    fc.assert(
      fc.property(fc.nat(12), fc.array(name), fc.array(name), (n, drawn, special) => {
        const names = holeNames({ row: row(n), map: drawn.join(' '), holes: holes(...special) });
        expect(names).toHaveLength(n);
        expect(new Set(names).size).toBe(n);
        expect([...names].sort(compareHoles)).toEqual(names);
      }),
    );
  });
});

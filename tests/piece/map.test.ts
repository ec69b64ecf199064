import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { layout, readMap } from '../../src/piece/map.ts';

const COVER = `.  1  .  2  .
11 .  .  .  3
10 .  .  .  4
.  9  8  7  5
.  .  .  6  .
`;
const names = (n: number) => Array.from({ length: n }, (_, i) => `${i + 1}`);
const none = { map: null, pitch: null, holes: new Map() };
const at = (...places: [string, [number, number]][]) =>
  new Map(places.map(([name, p]) => [name, { at: p }]));

describe('the picture of a piece', () => {
  test('each hole sits where its word stands', () => {
    const { cells, faults } = readMap(COVER);
    expect(faults).toEqual([]);
    expect(cells).toHaveLength(11);
    expect(cells).toContainEqual({ name: '1', column: 1, row: 0 });
    expect(cells).toContainEqual({ name: '11', column: 0, row: 1 });
    expect(cells).toContainEqual({ name: '6', column: 3, row: 4 });
  });

  test('blanks, tabs, empty lines and line ends of any kind do not move a hole', () => {
    const other = `\n${COVER.replaceAll('  ', ' \t   ').replaceAll('\n', '\r\n\r\n')}`;
    expect(readMap(other)).toEqual(readMap(COVER));
  });

  test('what is neither a hole nor a dot is named with its place', () => {
    expect(readMap('1 .  x7\n. 0 2').faults).toEqual([
      expect.objectContaining({
        code: 'map-cell',
        line: 1,
        column: 6,
        say: expect.stringMatching(/^x7 /),
      }),
      expect.objectContaining({ code: 'map-cell', line: 2, column: 3 }),
    ]);
  });

  test('places are counted in characters, not in bytes or halves of them', () => {
    expect(readMap('𝟙 𝟙').faults.map((f) => f.column)).toEqual([1, 3]);
  });

  test('a hole drawn twice keeps its first place and is a fault', () => {
    const { cells, faults } = readMap('1 2\n2 3');
    expect(cells.find((c) => c.name === '2')).toEqual({ name: '2', column: 1, row: 0 });
    expect(faults).toEqual([
      { code: 'map-twice', line: 2, column: 1, say: 'hole 2 is drawn twice' },
    ]);
  });

  test('a line of another length is a fault, and its holes keep their places', () => {
    const { cells, faults } = readMap('. 1 .\n2 . 3\n 4');
    expect(cells).toContainEqual({ name: '4', column: 0, row: 2 });
    expect(faults).toEqual([
      {
        code: 'map-ragged',
        line: 3,
        column: 2,
        say: 'this line of the map has 1 cells, the first has 3',
      },
    ]);
  });

  test('a map without holes is a fault', () => {
    expect(readMap('. .').faults.map((f) => f.code)).toEqual(['map-empty']);
    expect(readMap('').faults.map((f) => f.code)).toEqual(['map-empty']);
  });

  test('names run to 999 and may carry one letter', () => {
    expect(readMap('1 4a 999').faults).toEqual([]);
    expect(readMap('1000 4ab 04 4A').faults).toHaveLength(4);
  });
});

describe('where the holes are', () => {
  test('without a map: a ring, the first at 12 o’clock and on clockwise', () => {
    const { from, unit, places } = layout(none, names(4));
    expect([from, unit]).toEqual(['ring', 'radius']);
    const rounded = places.map((p) =>
      [p.name, Math.round(p.x * 1e9), Math.round(p.y * 1e9)].join(' '),
    );
    expect(rounded).toEqual([`1 0 ${-1e9}`, `2 ${1e9} 0`, `3 0 ${1e9}`, `4 ${-1e9} 0`]);
  });

  test('with a map: its cells, and with a pitch mm', () => {
    const cells = layout({ ...none, map: COVER }, names(11));
    expect([cells.from, cells.unit, cells.missing]).toEqual(['map', 'cell', []]);
    expect(cells.places[2]).toEqual({ name: '3', x: 4, y: 1 });
    const mm = layout({ ...none, map: COVER, pitch: [30, 25] }, names(11));
    expect(mm.unit).toBe('mm');
    expect(mm.places[2]).toEqual({ name: '3', x: 120, y: 25 });
  });

  test('measured places win over the map where every hole has one', () => {
    const holes = at(['1', [0, 0]], ['2', [84, 31]]);
    const both = layout({ map: '1 2', pitch: null, holes }, ['1', '2']);
    expect(both).toEqual({
      from: 'at',
      unit: 'mm',
      places: [
        { name: '1', x: 0, y: 0 },
        { name: '2', x: 84, y: 31 },
      ],
      missing: [],
    });
    expect(layout({ map: '1 2 3', pitch: null, holes }, names(3)).from).toBe('map');
  });

  test('a hole the map forgot stands below it and is reported', () => {
    const { places, missing } = layout({ ...none, map: '1 2\n. 3' }, names(6));
    expect(missing).toEqual(['4', '5', '6']);
    expect(places.slice(3)).toEqual([
      { name: '4', x: 0, y: 2 },
      { name: '5', x: 1, y: 2 },
      { name: '6', x: 0, y: 3 },
    ]);
  });

  test('a few measured holes and no map: a ring, and the others are reported', () => {
    const some = layout({ ...none, holes: at(['2', [10, 10]]) }, names(3));
    expect([some.from, some.missing]).toEqual(['ring', ['1', '3']]);
  });

  test('every name gets one place of its own, whatever the file says', () => {
    const word = fc.oneof(
      fc.integer({ min: 0, max: 12 }).map(String),
      fc.constantFrom('.', 'x', '4a', '·'),
    );
    const text = fc.array(fc.array(word, { maxLength: 6 }), { maxLength: 6 });
    fc.assert(
      fc.property(
        text,
        fc.integer({ min: 0, max: 14 }),
        fc.constantFrom<[number, number] | null>(null, [30, 25], [0, 1], [Number.NaN, -1]),
        (lines, n, pitch) => {
          const map = lines.map((l) => l.join(' ')).join('\n');
          const { places } = layout({ map, pitch, holes: new Map() }, names(n));
          expect(places.map((p) => p.name)).toEqual(names(n));
          expect(new Set(places.map((p) => `${p.x} ${p.y}`)).size).toBe(n);
        },
      ),
    );
  });
});

/** Believable covers of invented machines, drawn as one would draw them, and why the order looks right. */
import { describe, expect, test } from 'vitest';
import { layout } from '../../../src/piece/map.ts';
import { sequenceFrom } from '../../../src/piece/sequence/sequence.ts';
import { upTo } from '../pieces.ts';

interface Cover {
  what: string;
  map: string;
  pattern: string;
  /** The map again, with the turn of each hole in its place. */
  turns: string;
  why: string;
}

const COVERS: Cover[] = [
  {
    what: 'alternator cover of a Hollin 400, eleven bolts, nearly round',
    map: `
      .  1  .  2  .
      11 .  .  .  3
      10 .  .  .  4
      .  9  8  7  5
      .  .  .  6  .`,
    pattern: 'star',
    turns: `
      .  10 .  5  .
      3  .  .  .  2
      8  .  .  .  7
      .  6  1  11 9
      .  .  .  4  .`,
    why: 'begins near the middle of the heavy lower edge, then right and left, bottom and top in turn',
  },
  {
    what: 'chain case of a Tarn 125, a kidney of eleven',
    map: `
      .  1  2  3  .
      11 .  .  .  4
      10 .  8  .  5
      .  9  .  7  6`,
    pattern: 'star',
    turns: `
      .  8  11 2  .
      4  .  .  .  5
      6  .  1  .  9
      .  10 .  3  7`,
    why: 'the bolt in the notch first, as it pulls nothing askew, then across: upper right, lower right, far left',
  },
  {
    what: 'gear cover of an Ostrell lathe, a pear of nine',
    map: `
      .  .  1  .  .
      .  9  .  2  .
      .  8  .  3  .
      7  .  .  .  4
      .  6  .  5  .`,
    pattern: 'star',
    turns: `
      .  .  5  .  .
      .  2  .  7  .
      .  9  .  1  .
      6  .  .  .  4
      .  3  .  8  .`,
    why: 'the waist first, the far tip only in the middle of the order, when both lower corners hold',
  },
  {
    what: 'rocker cover of a Hollin 400, two rows of three',
    map: `
      1 2 3
      6 5 4`,
    pattern: 'centre-out',
    turns: `
      3 1 6
      5 2 4`,
    why: 'the middle pair first, then corner to corner, so that the gasket is spread outward',
  },
  {
    what: 'oil pan of a Tarn 125, fourteen round a long rim',
    map: `
      1  2  3  4  5  6  7
      14 .  .  .  .  .  8
      .  13 12 11 10 9  .`,
    pattern: 'centre-out',
    turns: `
      12 8  3  1  5  7  11
      14 .  .  .  .  .  13
      .  10 6  2  4  9  .`,
    why: 'top and bottom middle first, from there to both ends, never back inward',
  },
  {
    what: 'bearing ladder of an Ostrell compressor, inner row between two outer ones',
    map: `
      1  2  3  4  5  6
      .  7  8  9  10 .
      11 12 13 14 15 16`,
    pattern: 'centre-out',
    turns: `
      14 12 5  7  9  15
      .  3  1  2  4  .
      16 10 8  6  11 13`,
    why: 'the inner row first, as it carries the bearings, then the rim, both from the middle outward',
  },
  {
    what: 'intake elbow of a Hollin 400, four bolts on a square',
    map: `
      1 2
      4 3`,
    pattern: 'cross',
    turns: `
      1 3
      4 2`,
    why: 'corner to corner',
  },
];

const lines = (map: string) =>
  map
    .trim()
    .split('\n')
    .map((line) => line.trim().split(/\s+/));

describe('covers as one would draw them', () => {
  test.each(COVERS)('$what: $why', ({ map, pattern, turns }) => {
    const names = upTo(map.match(/\d+/g)?.length ?? 0);
    const found = sequenceFrom({
      ...{ list: null, care: null, first: [], groups: new Map(), done: [], names },
      layout: layout({ map, pitch: null, holes: new Map() }, names),
    });
    const turn = (word: string) => (word === '.' ? '.' : `${found.tighten.indexOf(word) + 1}`);
    expect(found.pattern).toBe(pattern);
    expect(lines(map).map((line) => line.map(turn))).toEqual(lines(turns));
    expect(found.balance.over).toBe(false);
  });

  test.each(COVERS.filter((c) => c.pattern === 'star'))(
    '$what: no step to a neighbour, and no tilt beyond three quarters of one bolt at the rim',
    ({ map }) => {
      const names = upTo(map.match(/\d+/g)?.length ?? 0);
      const { balance } = sequenceFrom({
        ...{ list: null, care: null, first: [], groups: new Map(), done: [], names },
        layout: layout({ map, pitch: null, holes: new Map() }, names),
      });
      expect(balance.neighbours).toBe(0);
      expect(balance.peak).toBeLessThan(0.75);
    },
  );
});

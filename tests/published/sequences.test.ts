/**
 * Orders of tightening against what is in print. The rows are facts, each with its source and how sure it is;
 * where a row is not seen in print it says so.
 */
import { describe, expect, test } from 'vitest';
import { layout } from '../../src/piece/map.ts';
import { sequenceFrom } from '../../src/piece/sequence/sequence.ts';

const PCC = 'ASME PCC-1 (2010 to 2019), cross pattern, one tool';
const CROSSES: [n: number, order: string, source: string][] = [
  [4, '1-3-2-4', `${PCC}; two public copies agree`],
  [5, '1-3-5-2-4', 'common practice, no source: the five-pointed star'],
  [6, '1-4-2-5-3-6', 'two public workshop sheets agree'],
  [8, '1-5-3-7-2-6-4-8', `${PCC}; two public copies agree`],
  [10, '1-6-3-8-5-10-2-7-4-9', 'ten studs of a truck wheel, from memory'],
  [12, '1-7-4-10-2-8-5-11-3-9-6-12', `${PCC}; three public copies agree`],
  [16, '1-9-5-13-3-11-7-15-2-10-6-14-4-12-8-16', `${PCC}; two public copies agree`],
  [20, '1-11-6-16-3-13-8-18-5-15-10-20-2-12-7-17-4-14-9-19', `${PCC}; from memory`],
  [
    24,
    '1-13-7-19-4-16-10-22-2-14-8-20-5-17-11-23-3-15-9-21-6-18-12-24',
    `${PCC}; two public copies agree`,
  ],
  [
    28,
    '1-15-8-22-4-18-11-25-6-20-13-27-2-16-9-23-5-19-12-26-7-21-14-28-3-17-10-24',
    `${PCC}; from memory`,
  ],
  [
    32,
    '1-17-9-25-5-21-13-29-3-19-11-27-7-23-15-31-2-18-10-26-6-22-14-30-4-20-12-28-8-24-16-32',
    `${PCC}; from memory`,
  ],
];

const upTo = (n: number) => Array.from({ length: n }, (_, i) => `${i + 1}`);
const rest = { list: null, care: null, first: [], groups: new Map(), done: [] };

function ring(names: readonly string[]) {
  return sequenceFrom({
    ...rest,
    names,
    layout: layout({ map: null, pitch: null, holes: new Map() }, names),
  });
}

describe('an evenly spaced circle is tightened as published', () => {
  test.each(CROSSES)('%i bolts: %s (%s)', (n, order) => {
    const found = ring(upTo(n));
    expect(found.pattern).toBe('cross');
    expect(found.tighten.join('-')).toBe(order);
    expect(found.loosen).toEqual([...found.tighten].reverse());
  });

  test.each(CROSSES.filter(([n]) => n <= 12))(
    '%i bolts: no order beats the published cross (%s)',
    (n, order) => {
      const { balance } = ring(upTo(n));
      expect(balance.exact).toBe(true);
      expect(balance.peak).toBeLessThanOrEqual(balance.best + 1e-9);
      expect(balance.best).toBeCloseTo(1, 9);
      const cost = (o: readonly string[]) => costOnRing(o.map(Number), n);
      expect(cost(order.split('-'))).toBeCloseTo(cost(balance.computed?.order ?? []), 9);
    },
  );
});

describe('the layout of published flanges', () => {
  /**
   * ASME B16.5, class 150: nominal size, holes, diameter of the bolt circle in mm, as printed in a public table of
   * class 150 flange dimensions (123docz.net 6634371) and a public data file of the same standard. That the holes
   * straddle the centre lines: from memory.
   */
  test.each([
    ['1/2', 4, 60.5],
    ['4', 8, 190.5],
    ['10', 12, 362],
    ['16', 16, 539.5],
    ['20', 20, 635],
    ['24', 20, 749.5],
  ])('NPS %s, %i holes on %d mm, drawn to a tenth of a mm: crosswise', (_, n, diameter) => {
    const names = upTo(n);
    const at = (i: number): [number, number] => {
      const turn = (2 * Math.PI * (i + 0.5)) / n;
      const r = diameter / 2;
      return [Math.round(r * Math.sin(turn) * 10) / 10, Math.round(-r * Math.cos(turn) * 10) / 10];
    };
    const holes = new Map(names.map((name, i) => [name, { at: at(i) }]));
    const found = sequenceFrom({
      ...{ ...rest, names },
      layout: layout({ map: null, pitch: null, holes }, names),
    });
    expect(found.pattern).toBe('cross');
    expect(found.tighten.join('-')).toBe(CROSSES.find(([bolts]) => bolts === n)?.[1]);
    expect(found.balance.peak).toBeCloseTo(1, 2);
  });
});

describe('cylinder heads in two rows', () => {
  /**
   * Orders of service sheets for four cylinders in line (from memory, no two printed alike): the turn of each
   * hole. What they have in common is tested, not one of them.
   */
  const SHEETS: [bolts: number, turns: number[][]][] = [
    [
      10,
      [
        [8, 4, 1, 5, 9],
        [10, 6, 2, 3, 7],
      ],
    ],
    [
      10,
      [
        [9, 5, 1, 3, 7],
        [10, 6, 2, 4, 8],
      ],
    ],
    [
      8,
      [
        [7, 3, 1, 5],
        [8, 4, 2, 6],
      ],
    ],
  ];

  /** Columns from the middle, in the order of tightening. */
  const outward = (turns: readonly (readonly number[])[]) => {
    const columns = turns[0]?.length ?? 0;
    return turns
      .flatMap((row) => row.map((turn, c) => ({ turn, out: Math.abs(c - (columns - 1) / 2) })))
      .sort((a, b) => a.turn - b.turn)
      .map((hole) => hole.out);
  };
  const rising = (steps: readonly number[]) => steps.every((s, k) => s >= (steps[k - 1] ?? 0));

  const ours = (columns: number) => {
    const names = upTo(2 * columns);
    const map = [0, columns]
      .map((start) => names.slice(start, start + columns).join(' '))
      .join('\n');
    const found = sequenceFrom({
      ...rest,
      names,
      layout: layout({ map, pitch: null, holes: new Map() }, names),
    });
    const turn = (name: string) => found.tighten.indexOf(name) + 1;
    return { found, turns: [names.slice(0, columns).map(turn), names.slice(columns).map(turn)] };
  };

  test.each(SHEETS)(
    '%i bolts: service sheets begin in the middle and never go inward',
    (_, turns) => {
      expect(Math.min(...outward(turns))).toBe(outward(turns)[0]);
      expect(rising(outward(turns))).toBe(true);
    },
  );

  test.each([3, 4, 5, 6, 7, 9])('two rows of %i: ours does the same, crosswise', (columns) => {
    const { found, turns } = ours(columns);
    expect(found.pattern).toBe('centre-out');
    expect(rising(outward(turns))).toBe(true);
    // Crosswise: after the odd steps the two halves of the head differ by at most the bolt in hand.
    const sides = found.tighten.map((name) =>
      Math.sign(((Number(name) - 1) % columns) - (columns - 1) / 2),
    );
    const tilt = sides.map((_, k) => Math.abs(sides.slice(0, k + 1).reduce((a, b) => a + b, 0)));
    expect(Math.max(...tilt)).toBe(1);
    expect(found.balance.peak).toBeLessThanOrEqual(1 + 1e-9);
  });
});

/** Σ over even k of 4 b² + s², written out for n unit pulls on a ring, apart from the program. */
function costOnRing(order: readonly number[], n: number): number {
  let total = 0;
  for (let k = 2; k <= n; k += 2) {
    const turns = order.slice(0, k).map((bolt) => (2 * Math.PI * (bolt - 1)) / n);
    const sum = (of: (turn: number) => number) => turns.reduce((s, turn) => s + of(turn), 0);
    const b2 = sum(Math.cos) ** 2 + sum(Math.sin) ** 2;
    const s2 = sum((t) => Math.cos(2 * t)) ** 2 + sum((t) => Math.sin(2 * t)) ** 2;
    total += 4 * b2 + s2;
  }
  return total;
}

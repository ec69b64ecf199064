/**
 * Joints with several sizes of bolt, as manuals print them: who goes before whom, stage by stage or group by group. Each
 * row is a fact from the tightening pages of a published manual, named by its machine; the figures are as printed there.
 * Where the small ones stand on the map is drawn for this test.
 */
import { describe, expect, test } from 'vitest';
import { readKind } from '../../src/bolt/read/kind.ts';
import { printQuantity } from '../../src/bolt/read/units.ts';
import { readTorque } from '../../src/bolt/torque/stages.ts';
import type { HoleSpec } from '../../src/model/types.ts';
import { rounds } from '../../src/piece/sequence/rounds.ts';
import { sequence } from '../../src/piece/sequence/sequence.ts';
import { hole, type OfPiece, piece, upTo } from '../piece/pieces.ts';

interface Lot {
  /** First and last number of the bolts, as printed. */
  from: number;
  to: number;
  bolt: string;
  torque: string;
  /** As somebody would write it who wants one lot done before the next. */
  group?: string;
}

interface Row {
  joint: string;
  source: string;
  lots: Lot[];
  /** What is printed, step by step: `1-10 30 N·m`. */
  printed: string[];
  given?: OfPiece;
}

const V8_42 = 'fastener tightening pages of a published repair manual, V8 4.2 l, 2009';

const ROWS: Row[] = [
  {
    joint: 'bed plate: main bolts 1-10, side bolts 11-20',
    source: V8_42,
    lots: [
      { from: 1, to: 10, bolt: 'M10x90', torque: '30 N·m, then 50 N·m, then 90°' },
      { from: 11, to: 20, bolt: 'M8x60', torque: '20 N·m, then 30 N·m, then 90°' },
    ],
    printed: [
      '1-10 30 N·m',
      '11-20 20 N·m',
      '1-10 50 N·m',
      '11-20 30 N·m',
      '1-10 90°',
      '11-20 90°',
    ],
  },
  {
    joint: 'main caps: cap bolts M12, sub bolts M9, side bolts M10 last',
    source: 'tightening specification pages of a published repair manual, V8 5.6 l, 2011',
    lots: [
      { from: 1, to: 10, bolt: 'M12x90', torque: '39.2 N·m + 40°', group: '1' },
      { from: 11, to: 20, bolt: 'M9x70', torque: '29.4 N·m + 30°', group: '1' },
      { from: 21, to: 30, bolt: 'M10x50', torque: '49 N·m', group: '2' },
    ],
    printed: ['1-10 39.2 N·m', '11-20 29.4 N·m', '1-10 40°', '11-20 30°', '21-30 49 N·m'],
  },
  {
    joint: 'main caps: inboard 1-8, outboard 9-16, short side 17-20, long side 21-24',
    source: 'tightening pages of a published repair manual, V6 3.6 l, 2012',
    lots: [
      { from: 1, to: 8, bolt: 'M11x90', torque: '20 N·m + 80°', group: '1' },
      { from: 9, to: 16, bolt: 'M11x90', torque: '15 N·m + 110°', group: '2' },
      { from: 17, to: 20, bolt: 'M10x40', torque: '30 N·m + 60°', group: '3' },
      { from: 21, to: 24, bolt: 'M10x60', torque: '30 N·m + 60°', group: '4' },
    ],
    printed: [
      ...['1-8 20 N·m', '1-8 80°', '9-16 15 N·m', '9-16 110°'],
      ...['17-20 30 N·m', '17-20 60°', '21-24 30 N·m', '21-24 60°'],
    ],
  },
  {
    joint: 'main caps: inner M12, outer M12, outer M10',
    source: 'engine block specification pages of a published repair manual, V8 6.5 l diesel, 2001',
    lots: [
      { from: 1, to: 10, bolt: 'M12x100', torque: '75 N·m + 90°', group: 'inner' },
      { from: 11, to: 16, bolt: 'M12x80', torque: '20 N·m + 90°', group: 'outer' },
      { from: 17, to: 20, bolt: 'M10x80', torque: '40 N·m', group: 'outer, small' },
    ],
    printed: ['1-10 75 N·m', '1-10 90°', '11-16 20 N·m', '11-16 90°', '17-20 40 N·m'],
  },
  {
    joint: 'connecting-rod cap: two bolts, 30 ± 3 N·m then 180°',
    source: 'specification page of a published engine manual, one diesel',
    lots: [{ from: 1, to: 2, bolt: 'M9x1x50', torque: '30 N·m, then 180°' }],
    printed: ['1-2 30 N·m', '1-2 180°'],
  },
];

function pieceOf({ lots, given }: Pick<Row, 'lots' | 'given'>) {
  const kinds = new Map(lots.map((lot, i) => [`K${i}`, readKind(`K${i}`, lot.bolt)]));
  const of = (n: number) => lots.findIndex((lot) => n >= lot.from && n <= lot.to);
  const count = Math.max(...lots.map((lot) => lot.to));
  const own = upTo(count).map((name, i): [string, HoleSpec] => {
    const lot = lots[of(i + 1)];
    return hole(name, { torque: readTorque(lot?.torque ?? ''), group: lot?.group ?? null });
  });
  const spec = piece(count, {
    row: upTo(count).map((_, i) => ({ kind: `K${of(i + 1)}`, with: [] })),
    ...{ name: 'Bed plate', care: ['cap' as const], holes: new Map(own), ...given },
  });
  return { spec, kinds };
}

/** Step by step as one would print it; snug is what every manual takes for granted. */
function steps(row: Row, { spec, kinds }: ReturnType<typeof pieceOf>): string[] {
  const { tighten } = sequence(spec, kinds);
  const said = rounds(spec, kinds, tighten).rounds.flatMap(({ name, torque, angle, order }) => {
    const what = torque ? printQuantity(torque) : `${angle}°`;
    return name === 'snug' ? [] : order.map((hole) => ({ lot: lotOf(row, Number(hole)), what }));
  });
  const parts: { lot: Lot | undefined; what: string; count: number }[] = [];
  for (const { lot, what } of said) {
    const last = parts.at(-1);
    if (last?.lot === lot && last?.what === what) last.count += 1;
    else parts.push({ lot, what, count: 1 });
  }
  // Each lot by itself and whole, before another begins.
  for (const { lot, count } of parts) expect(count).toBe((lot?.to ?? 0) - (lot?.from ?? 0) + 1);
  return parts.map(({ lot, what }) => `${lot?.from}-${lot?.to} ${what}`);
}

describe('as printed, from the torques alone', () => {
  test.each(ROWS)('$joint ($source)', (row) => {
    const made = pieceOf(row);
    // The two side lots of one size and torque are told apart by their group alone, as the manual does.
    expect(steps(row, made)).toEqual(row.printed);
    expect(rounds(made.spec, made.kinds, sequence(made.spec, made.kinds).tighten).why).toBe(
      'the stages as they are printed',
    );
  });

  test.each(ROWS)('$joint: snug first, all of them, and no round after an angle', (row) => {
    const { spec, kinds } = pieceOf(row);
    const all = rounds(spec, kinds, sequence(spec, kinds).tighten).rounds;
    expect(all[0]?.name).toBe('snug');
    expect(all[0]?.order).toHaveLength(spec.row?.length ?? 0);
    expect(all.map((r) => r.name)).not.toContain('final');
  });

  test.each(ROWS)('$joint: never the small ones first', (row) => {
    const { spec, kinds } = pieceOf({ lots: row.lots.map(({ group, ...lot }) => lot) });
    const order = sequence(spec, kinds).tighten.map(Number);
    const d = (n: number) => Number(/M(\d+)/.exec(lotOf(row, n)?.bolt ?? '')?.[1]);
    const diameters = order.map(d);
    expect(diameters).toEqual([...diameters].sort((a, b) => b - a));
  });
});

function lotOf(row: Row, n: number): Lot | undefined {
  return row.lots.find((lot) => n >= lot.from && n <= lot.to);
}

describe('bolts round a sealed face', () => {
  /** Each step to the opposite half, as a diagonal sequence has it. */
  const across = (order: readonly string[], n: number) =>
    order.slice(1).filter((name, k) => {
      const apart = Math.abs(Number(name) - Number(order[k]));
      return Math.min(apart, n - apart) > n / 4;
    }).length;

  test(`small bolts round a joint with sealant: diagonally, 9 N·m (${V8_42})`, () => {
    const n = 10;
    const map = '10 1 2 3\n9 . . 4\n8 7 6 5';
    const spec = piece(n, { torque: readTorque('9 N·m'), joint: ['sealant'], map });
    const { tighten } = sequence(spec, new Map());
    expect(across(tighten, n)).toBeGreaterThanOrEqual(6);
  });

  test(`a timing cover of 13 bolts: diagonally, stage by stage, a second kind afterwards (${V8_42})`, () => {
    const kinds = new Map([['K', readKind('K', 'M8x40')]]);
    const locked = ['3', '6', '9', '11', '13'];
    const own = upTo(13).map((name) =>
      hole(name, {
        torque: readTorque(locked.includes(name) ? '8 N·m, then 22 N·m' : '8 N·m, then 90°'),
      }),
    );
    const map = '1 2 3 4 5\n13 . . . 6\n12 11 10 9 8\n. . 7 . .';
    const spec = piece(13, {
      row: upTo(13).map(() => ({ kind: 'K', with: [] })),
      map,
      holes: new Map(own),
    });
    const { rounds: all } = rounds(spec, kinds, sequence(spec, kinds).tighten);
    const said = all.map((r) => [r.torque?.value ?? r.angle, r.order.length]);
    expect(said).toEqual([
      ...[
        [null, 13],
        [8, 5],
        [22, 5],
        [8, 8],
        [90, 8],
      ],
    ]);
  });
});

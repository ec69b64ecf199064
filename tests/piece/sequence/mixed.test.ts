/** Bolts of several sizes or torques in one piece: who goes first, how hard each pulls, and against trying all orders. */
import { describe, expect, test } from 'vitest';
import { readKind } from '../../../src/bolt/read/kind.ts';
import { readTorque } from '../../../src/bolt/torque/stages.ts';
import type { PieceSpec } from '../../../src/model/types.ts';
import { computedOrder } from '../../../src/piece/sequence/computed.ts';
import { pullsOf } from '../../../src/piece/sequence/pull.ts';
import { ranks } from '../../../src/piece/sequence/ranks.ts';
import { sequence } from '../../../src/piece/sequence/sequence.ts';
import { type Point, vectors } from '../../../src/piece/sequence/vectors.ts';
import type { Given } from '../../bolt/holes.ts';
import { hole, type OfPiece, piece, upTo } from '../pieces.ts';
import { brute, leastPeak } from './brute.ts';
import { FAMILIES, seeded, times } from './layouts.ts';

const KINDS = new Map(
  Object.entries({
    S: 'M6x25',
    M: 'M8x30',
    L: 'M10x40',
    I: '5/16-18 x 1',
    Q: '1/4-20 x 1',
    T: '10-32 UNF x 1',
    F: 'M5x16',
    U: 'stud',
  }).map(([letter, text]) => [letter, readKind(letter, text)]),
);
const row = (letters: string) => [...letters].map((kind) => ({ kind, with: [] }));
const holes = (own: Record<string, Given>) =>
  new Map(Object.entries(own).map(([name, given]) => hole(name, given)));
const torque = (text: string) => ({ torque: readTorque(text) });
const made = (letters: string, given: OfPiece = {}) =>
  piece(letters.length, { row: row(letters), ...given });
const pulls = (spec: PieceSpec) => pullsOf(spec, KINDS, upTo(spec.row?.length ?? 0));
const order = (spec: PieceSpec) => sequence(spec, KINDS).tighten;

describe('how hard a bolt pulls', () => {
  test('as torque through diameter, where both are known', () => {
    const spec = made('LS', { ...torque('40 N·m'), holes: holes({ 2: torque('10 N·m') }) });
    const [large, small] = pulls(spec);
    expect([large?.force, large?.size, small?.size]).toEqual([1, 0, 1]);
    expect(small?.force).toBeCloseTo(10 / 6 / (40 / 10), 9);
  });

  test('in whatever unit each is printed', () => {
    const spec = made('SS', { ...torque('10 N·m'), holes: holes({ 2: torque('88.5 lbf·in') }) });
    expect(pulls(spec)[1]?.force).toBeCloseTo(1, 2);
  });

  test('as the stress area where a torque is missing or the bolt is turned by an angle', () => {
    for (const text of ['see 4-12', '20 N·m + 90°']) {
      const [large, small] = pulls(made('LS', torque(text)));
      // As of M6 and M10, ISO 898-1: 20.1 and 58.0 mm².
      expect((small?.force ?? 0) / (large?.force ?? 1), text).toBeCloseTo(20.1 / 58, 2);
    }
  });

  test('as torque to the power of two thirds where no thread is known', () => {
    const spec = made('UU', { ...torque('80 N·m'), holes: holes({ 2: torque('10 N·m') }) });
    expect(pulls(spec)[1]?.force).toBeCloseTo(1 / 4, 9);
  });

  test('alike where nothing is known, and where all are alike', () => {
    expect(pulls(made('UUU')).map((p) => [p.force, p.size])).toEqual(times(3, () => [1, 0]));
    expect(pulls(made('SSS', torque('10 N·m'))).map((p) => p.force)).toEqual([1, 1, 1]);
  });

  test('a bolt of which nothing is known is taken as one of the many', () => {
    expect(pulls(made('SSU')).map((p) => [p.force, p.size])).toEqual(times(3, () => [1, 0]));
  });

  test.each(['MI', 'QS', 'TF'])(
    'an inch thread is one size with its metric neighbour: %s',
    (two) => {
      expect(pulls(made(two)).map((p) => p.size)).toEqual([0, 0]);
    },
  );
});

describe('in each stage', () => {
  test('four M10 do not wait for two M6', () => {
    const spec = made('LSLLSL', {
      ...torque('40 N·m'),
      map: '1 2 3\n6 5 4',
      holes: holes({ 2: torque('10 N·m'), 5: torque('10 N·m') }),
    });
    expect(order(spec).slice(0, 4).sort()).toEqual(['1', '3', '4', '6']);
    expect(sequence(spec, KINDS).why).toMatch(/the larger before the smaller$/);
  });

  test('of one size the higher torque goes first', () => {
    const own = { 2: torque('22 N·m'), 4: torque('22 N·m') };
    const spec = made('MMMM', { ...torque('12 N·m'), map: '1 2\n4 3', holes: holes(own) });
    expect(order(spec)).toEqual(['2', '4', '1', '3']);
  });

  test('the larger goes before the inner, and of one size the inner before the rim', () => {
    const map = '1 . 2 . 3\n. 9 . 10 .\n8 . . . 4\n. 12 . 11 .\n7 . 6 . 5';
    const inner = order(made('MMMMMMMMMMMM', { map }));
    expect(inner.slice(0, 4).sort()).toEqual(['10', '11', '12', '9']);
    const large = order(made('LLLLLLLLSSSS', { map }));
    expect(large.slice(8).sort()).toEqual(['10', '11', '12', '9']);
  });

  test('a ring with a bolt in its middle begins there', () => {
    const map = '. 1 .\n4 5 2\n. 3 .';
    const found = sequence(made('SSSSS', { map }), KINDS);
    expect([found.pattern, found.tighten.join('-')]).toEqual(['cross', '5-1-3-2-4']);
    expect(found.why).toBe(
      '1 by itself and a circle of 4: crosswise, one after the other, the inner before the rim',
    );
  });

  test('a square case half begins inside, crosswise', () => {
    const map = '1 2 3 4\n12 13 14 5\n11 16 15 6\n10 9 8 7';
    expect(order(made('S'.repeat(16), { map })).slice(0, 4)).toEqual(['13', '15', '14', '16']);
  });

  test('on one circle large and small are crossed each by themselves', () => {
    const found = sequence(made('MSMSMSMS', torque('10 N·m')), KINDS);
    expect(found.tighten.join('-')).toBe('1-5-3-7-2-6-4-8');
    expect(found.why).toMatch(/ring of 8 is assumed: crosswise, the larger before the smaller$/);
    const two = sequence(made('MSSSMSSS'), KINDS);
    expect(two.tighten.slice(0, 2)).toEqual(['1', '5']);
  });

  test('groups come one after the other, and within one the larger first', () => {
    const own = Object.fromEntries(['3', '4', '5', '6'].map((n) => [n, { group: '1' }]));
    const spec = made('MMSMSM', { map: '1 2 3\n6 5 4', holes: holes(own) });
    expect(order(spec).slice(0, 2).sort()).toEqual(['4', '6']);
    expect(order(spec).slice(4).sort()).toEqual(['1', '2']);
  });

  test('a group with a name does not go before larger bolts that have none', () => {
    const own = { 5: { group: 'side' }, 6: { group: 'side' } };
    expect(order(made('LLLLSS', { holes: holes(own) })).slice(4)).toEqual(['5', '6']);
    expect(order(made('SSSSLL', { holes: holes(own) })).slice(0, 2)).toEqual(['5', '6']);
  });

  test('what has no number goes first where the numbers begin behind 1', () => {
    const own = { 1: { group: '2' }, 2: { group: '2' } };
    expect(
      order(made('LLSSSS', { holes: holes(own) }))
        .slice(4)
        .sort(),
    ).toEqual(['1', '2']);
  });
});

/** A piece of bolts at these points, of mixed sizes and torques, as a file would have it. */
function mixedPiece(points: readonly Point[], random: () => number): PieceSpec {
  const letters = points.map(() => ['S', 'M', 'L'][Math.floor(random() * 3)] ?? 'S').join('');
  const own = points.map((p, i): [string, Given] => {
    const of = { S: 10, M: 24, L: 48 }[letters[i] ?? 'S'] ?? 10;
    return [`${i + 1}`, { at: [p.x, p.y], ...torque(`${random() < 0.3 ? of / 2 : of} N·m`) }];
  });
  return made(letters, { holes: holes(Object.fromEntries(own)) });
}

/** Apart from the program: the force of each, and its turn by size, torque and nothing else. */
function given(spec: PieceSpec): { force: number[]; rank: number[] } {
  const bolts = (spec.row ?? []).map(({ kind }, i) => ({
    d: { S: 6, M: 8, L: 10 }[kind] ?? 0,
    T: spec.holes.get(`${i + 1}`)?.torque?.quantity?.value ?? 0,
  }));
  const turn = (b: { d: number; T: number }) => -b.d * 1000 - b.T;
  return { force: bolts.map((b) => b.T / b.d), rank: bolts.map(turn) };
}

describe('of all orders of mixed bolts the computed one tilts the piece least', () => {
  const ask = (spec: PieceSpec, points: readonly Point[]) => {
    const names = upTo(points.length);
    const own = pullsOf(spec, KINDS, names);
    const sizes = own.map((pull) => pull.size);
    const rank = ranks(names, { first: [], groups: new Map(), sizes, inside: [] });
    const v = vectors(
      points,
      own.map((pull) => pull.force),
    );
    return computedOrder({ v, rank, done: [], left: names.map((_, i) => i) });
  };

  test.each(Object.keys(FAMILIES))('%s, up to nine holes', (family) => {
    const random = seeded(family.length);
    for (let n = 3; n <= 9; n += 1) {
      for (let round = 0; round < (n < 9 ? 12 : 5); round += 1) {
        const points = FAMILIES[family]?.(n, random) ?? [];
        const spec = mixedPiece(points, random);
        const found = ask(spec, points);
        expect(found.exact).toBe(true);
        expect(found.best).toBeCloseTo(leastPeak(points, given(spec)), 8);
      }
    }
  });

  test('and it is the first of the best, to nine holes', () => {
    const random = seeded(21);
    for (let round = 0; round < 210; round += 1) {
      const points = times(3 + (round % 7), () => ({ x: random() * 90, y: random() * 90 }));
      const spec = mixedPiece(points, random);
      expect(ask(spec, points).order).toEqual(brute(points, given(spec)).order);
    }
  });

  test('and a piece of the file gets it', () => {
    const random = seeded(22);
    let tried = 0;
    for (let round = 0; round < 120; round += 1) {
      const points = times(6, () => ({ x: random() * 90, y: random() * 90 }));
      const spec = mixedPiece(points, random);
      const found = sequence(spec, KINDS, upTo(6));
      if (/inner/.test(found.why) || found.pattern !== 'star') continue;
      tried += 1;
      const all = brute(points, given(spec));
      expect(found.tighten.map((name) => Number(name) - 1)).toEqual(all.order);
      expect(found.balance.best).toBeCloseTo(all.best, 8);
    }
    expect(tried).toBeGreaterThan(20);
  });
});

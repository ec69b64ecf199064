/** Which order a piece gets, and what is said beside it. */
import { describe, expect, test } from 'vitest';
import { readTorque } from '../../../src/bolt/torque/stages.ts';
import { layout } from '../../../src/piece/map.ts';
import {
  type Sequence,
  type SequenceInput,
  sequence,
  sequenceFrom,
} from '../../../src/piece/sequence/sequence.ts';
import { hole, piece, upTo } from '../pieces.ts';
import { seeded, times } from './layouts.ts';

interface Given extends Partial<Omit<SequenceInput, 'layout' | 'names'>> {
  map?: string;
  names?: readonly string[];
  at?: Record<string, [number, number]>;
}

function ask({ map, at, ...given }: Given): Sequence {
  const drawn = map?.match(/\d+/g)?.length ?? 0;
  const names = given.names ?? upTo(drawn);
  const holes = new Map(Object.entries(at ?? {}).map(([name, p]) => [name, { at: p }]));
  return sequenceFrom({
    ...{ list: null, care: null, first: [], groups: new Map(), done: [], ...given, names },
    layout: layout({ map: map ?? null, pitch: null, holes }, names),
  });
}

const COVER = `.  1  .  2  .
11 .  .  .  3
10 .  .  .  4
.  9  8  7  5
.  .  .  6  .`;
/** n holes on a circle, measured. */
function ring(n: number): Record<string, [number, number]> {
  const turn = (i: number) => (2 * Math.PI * i) / n;
  const at = (i: number): [number, number] => [60 * Math.sin(turn(i)), -60 * Math.cos(turn(i))];
  return Object.fromEntries(upTo(n).map((name, i) => [name, at(i)]));
}

const HEAD = `1 2 3 4 5
6 7 8 9 10`;

describe('the maker’s list', () => {
  const list = ['4', '1', '2', '3'];

  test('is obeyed as written, and the computed order stands beside it', () => {
    const found = ask({ names: upTo(4), list });
    expect([found.pattern, found.tighten]).toEqual(['list', list]);
    expect(found.loosen).toEqual(['3', '2', '1', '4']);
    expect(found.balance.peak).toBeCloseTo(Math.SQRT2, 9);
    expect(found.balance.over).toBe(true);
    expect(found.balance.computed).toEqual({ order: ['1', '3', '2', '4'], peak: 1 });
  });

  test('goes on where it stands, whatever was done out of turn', () => {
    expect(ask({ names: upTo(4), list, done: ['4'] }).tighten).toEqual(['1', '2', '3']);
    expect(ask({ names: upTo(4), list, done: ['2'] }).tighten).toEqual(['4', '1', '3']);
  });

  test('wins over groups and over holes that come first', () => {
    const groups = new Map([['3', 'inner']]);
    expect(ask({ names: upTo(4), list, first: ['2'], groups }).tighten).toEqual(list);
  });

  test('with a hole doubled, unknown or forgotten still names each hole once', () => {
    const faulty = ask({ names: upTo(4), list: ['3', '3', '9', '1'] });
    expect(faulty.tighten).toEqual(['3', '1', '2', '4']);
  });
});

describe('what the maker alone can order', () => {
  test('is asked for, and the computed order is marked as such', () => {
    const found = ask({ map: HEAD, care: 'head' });
    expect(found.asks).toBe('head');
    expect(found.why).toMatch(/^not the maker's order, which is wanted here: /);
    expect(found.tighten).toHaveLength(10);
  });

  test('is not asked for once the list is there', () => {
    const found = ask({ map: HEAD, care: 'head', list: upTo(10) });
    expect([found.asks, found.pattern]).toEqual([null, 'list']);
  });

  test('a spring is let go and taken up half a turn each, all round', () => {
    const found = ask({ names: upTo(6), care: 'spring' });
    expect(found.tips.loosen.join()).toMatch(/half a turn each, all round/i);
    expect(found.tips.tighten.join()).toMatch(/half a turn each, all round/i);
  });
});

describe('a circle', () => {
  test('numbered anticlockwise is crossed in its own direction', () => {
    const at: Record<string, [number, number]> = {
      ...{ 1: [0, -9], 2: [-9, 0], 3: [0, 9], 4: [9, 0] },
    };
    const found = ask({ names: upTo(4), at });
    expect([found.pattern, found.tighten.join('-')]).toEqual(['cross', '1-3-2-4']);
  });

  test('measured a little out of round is one still', () => {
    const off = [0, 8, -7, 5, 0, -6];
    const at: Record<string, [number, number]> = {};
    for (const [i, name] of upTo(6).entries()) {
      const turn = ((60 * i + (off[i] ?? 0)) * Math.PI) / 180;
      at[name] = [(50 - (i % 3)) * Math.sin(turn), -(50 - (i % 3)) * Math.cos(turn)];
    }
    const found = ask({ names: upTo(6), at });
    expect([found.pattern, found.tighten.join('-')]).toEqual(['cross', '1-4-2-5-3-6']);
  });

  test.each([
    [0.95, 'cross'],
    [0.93, 'star'],
  ])('with two holes across from each other at %d of its radius: %s', (share, pattern) => {
    const at: Record<string, [number, number]> = {};
    for (const [i, name] of upTo(6).entries()) {
      const r = i % 3 === 2 ? 50 * share : 50;
      at[name] = [r * Math.sin((i * Math.PI) / 3), -r * Math.cos((i * Math.PI) / 3)];
    }
    expect(ask({ names: upTo(6), at }).pattern).toBe(pattern);
  });

  test.each([
    [0.15, 'cross'],
    [0.2, 'star'],
  ])('with every other hole %d of a step ahead and the others behind: %s', (off, pattern) => {
    const at: Record<string, [number, number]> = {};
    for (const [i, name] of upTo(8).entries()) {
      const turn = ((i + (i % 2 === 0 ? off : -off)) * Math.PI) / 4;
      at[name] = [50 * Math.sin(turn), -50 * Math.cos(turn)];
    }
    expect(ask({ names: upTo(8), at }).pattern).toBe(pattern);
  });

  test('of three needs no star', () => {
    expect(ask({ names: upTo(3) }).tighten).toEqual(['1', '2', '3']);
  });

  test.each([9, 11, 13, 15, 17, 21])(
    'of %i, for which none is published, is computed and says so',
    (n) => {
      const found = ask({ names: upTo(n), at: ring(n) });
      expect(found.pattern).toBe('cross');
      expect(found.why).toMatch(/no table at hand has/);
      expect(found.tighten[0]).toBe('1');
      expect(found.balance.neighbours).toBe(0);
      expect(found.balance.peak).toBeLessThanOrEqual(1.05 + 1e-9);
    },
  );

  test('begins at the hole that comes first', () => {
    const found = ask({ names: upTo(8), first: ['3'] });
    expect([found.pattern, found.tighten.join('-')]).toEqual(['cross', '3-7-5-1-4-8-6-2']);
  });

  test('goes on crosswise when its beginning is done, and is ordered anew after any other hole', () => {
    expect(ask({ names: upTo(8), done: ['5', '1'] }).tighten.join('-')).toBe('3-7-2-6-4-8');
    const other = ask({ names: upTo(8), done: ['2'] });
    expect(other.pattern).toBe('star');
    expect(other.tighten[0]).toBe('6');
    expect(other.why).toMatch(/done first/);
  });
});

describe('"as published"', () => {
  const says = (n: number) => ask({ names: upTo(n), at: ring(n) }).why.split(': ')[1];

  test.each([4, 8, 12, 16, 20, 24, 28, 32])('is said of %i: the table has it', (n) => {
    expect(says(n)).toBe('crosswise, as published');
  });

  test.each([7, 10, 14])('is not said of %i', (n) => {
    expect(says(n)).toBe(`crosswise; no table at hand has ${n}`);
  });

  test.each([9, 18, 22, 26, 30])('is not said of %i, half of which is computed', (n) => {
    expect(says(n)).toBe(`crosswise, as it tilts the piece least; no table at hand has ${n}`);
  });

  test('is not said of five and six, which are common practice', () => {
    expect([5, 6].map(says)).toEqual(['crosswise, as is common', 'crosswise, as is common']);
  });

  test.each([36, 40, 48, 64])('is not said of %i: so many go in groups', (n) => {
    expect(says(n)).toMatch(
      /^crosswise.*; no table at hand has \d+; so many are published in groups only$/,
    );
  });
});

describe('a piece that nobody has drawn', () => {
  test('is taken as a ring, and says that this is assumed', () => {
    const found = sequence(piece(8));
    expect([found.assumed, found.picture]).toEqual([true, null]);
    expect(found.why).toBe('not drawn, so a ring of 8 is assumed: crosswise');
    expect(ask({ names: upTo(8), at: ring(8) }).assumed).toBe(false);
    expect(sequence(piece(2)).assumed).toBe(false);
  });

  test('the maker’s list needs no picture', () => {
    const list = sequence(piece(8, { care: ['head'], sequence: upTo(8) }));
    expect([list.assumed, list.picture]).toEqual([false, null]);
  });

  test.each([
    ['Cover', 6, ['fuel'], 'care: fuel'],
    ['Cover', 5, ['fuel'], null],
    ['Cover', 8, ['none'], null],
    ['Cylinder head', 8, null, 'such pieces are long'],
    ['Oil pan', 14, null, 'such pieces are long'],
    ['Rocker cover', 6, null, 'such pieces are long'],
    ['Flywheel', 8, null, null],
  ] as const)('%s, %i bolts, care: %j: the picture is asked for: %s', (name, n, care, why) => {
    expect(sequence(piece(n, { name, care })).picture).toBe(why);
  });
});

describe('a cover with a gasket', () => {
  const gasket = { joint: ['new gasket, dry'] };

  test('goes across where it is not long, from the middle out where it is, and says why', () => {
    const round = sequence(piece(11, { ...gasket, map: COVER }));
    expect([round.pattern, ...round.tips.tighten]).toEqual([
      'star',
      'Across, gasket or not: manuals print it so for covers that are not long.',
    ]);
    const long = sequence(piece(7, { ...gasket, map: '1 2 3 4 5 6 7' }));
    expect([long.pattern, ...long.tips.tighten]).toEqual([
      'centre-out',
      'From the middle out: on a long cover that spreads the gasket and leaves no wave in it.',
    ]);
  });

  test.each([
    ['no gasket', { joint: ['sealant; no gasket'] }],
    ['the maker’s list', { ...gasket, sequence: upTo(11) }],
    ['a head', { ...gasket, care: ['head' as const] }],
  ])('%s: nothing of the kind is said', (_, given) => {
    expect(sequence(piece(11, { ...given, map: COVER })).tips.tighten).toEqual([]);
  });
});

describe('two rows, and long pieces', () => {
  test.each([
    ['a head of ten', HEAD],
    ['a head of eight', '1 2 3 4\n5 6 7 8'],
    ['a sump', '1 2 3 4 5 6 7\n14 . . . . . 8\n. 13 12 11 10 9 .'],
    ['in one line', '1 2 3 4 5 6 7'],
  ])('%s goes from the middle outward', (_, map) => {
    expect(ask({ map }).pattern).toBe('centre-out');
  });

  test('a hole only a little inside the rim belongs to the rim', () => {
    const at: Record<string, [number, number]> = {
      ...{ 1: [0, 0], 2: [50, 4], 3: [100, 0], 4: [150, 0], 5: [200, 0] },
      ...{ 6: [0, 60], 7: [50, 60], 8: [100, 60], 9: [150, 60], 10: [200, 60], 11: [50, 30] },
    };
    const found = ask({ names: upTo(11), at });
    expect(found.why).toMatch(/inside before the rim/);
    expect(found.tighten[0]).toBe('11');
    expect(found.tighten.slice(1, 3).sort()).toEqual(['3', '8']);
  });

  test('a row that is drawn a little askew has no inside: outward all the way', () => {
    for (const seed of times(50, (i) => i)) {
      const random = seeded(seed);
      const names = upTo(5 + (seed % 5));
      const n = names.length;
      const shaken = (x: number) => x + 4 * (random() - 0.5);
      const place = (i: number): [number, number] => [shaken(25 * i), shaken(0) / 2];
      const found = ask({
        names,
        at: Object.fromEntries(names.map((name, i) => [name, place(i)])),
      });
      const out = found.tighten.map((name) => Math.abs(Number(name) - (n + 1) / 2));
      expect(out, found.tighten.join(' ')).toEqual([...out].sort((a, b) => a - b));
      expect(found.why).toBe('long: from the middle outward, crosswise');
    }
  });

  test('a cover nearly as wide as long does not', () => {
    expect(ask({ map: COVER }).pattern).toBe('star');
  });

  test('goes on outward after any hole that was done out of turn', () => {
    const found = ask({ map: HEAD, done: ['1'] });
    expect(found.pattern).toBe('centre-out');
    expect(found.tighten.slice(0, 2).sort()).toEqual(['3', '8']);
    expect(found.tighten).not.toContain('1');
  });
});

describe('what comes first, groups, and what is done', () => {
  test('dowels lead in the order given', () => {
    const found = ask({ map: COVER, first: ['8', '2'] });
    expect(found.tighten.slice(0, 2)).toEqual(['8', '2']);
    expect(found.why).toBe('what comes first, then the rest as it tilts the piece least');
    expect(found.balance.bound).toBeNull();
    expect(found.balance.over).toBe(false);
  });

  test('one group after the other: numbers first, the rest last', () => {
    const groups = new Map([...['2', '4'].map((n) => [n, '2'] as const), ['6', '1'], ['9', '1']]);
    const found = ask({ map: COVER, groups });
    expect(found.tighten.slice(0, 2).sort()).toEqual(['6', '9']);
    expect(found.tighten.slice(2, 4).sort()).toEqual(['2', '4']);
    expect(found.why).toBe('one group after the other, each as it tilts the piece least');
    expect(found.balance.bound).toBeNull();
  });

  test('two circles of bolts are crossed one after the other', () => {
    const at: Record<string, [number, number]> = {};
    for (const [i, name] of upTo(12).entries()) {
      const [r, n] = i < 4 ? [30, 4] : [90, 8];
      at[name] = [r * Math.sin((2 * Math.PI * i) / n), -r * Math.cos((2 * Math.PI * i) / n)];
    }
    const groups = new Map(upTo(4).map((n) => [n, 'inner']));
    const found = ask({ names: upTo(12), at, groups });
    expect(found.pattern).toBe('cross');
    expect(found.tighten.join('-')).toBe('1-3-2-4-5-9-7-11-6-10-8-12');
  });

  test('what is done is left out, and the rest balances it', () => {
    const found = ask({ map: COVER, done: ['3', '4'] });
    expect(found.tighten).toHaveLength(9);
    const left = new Set(['9', '10', '11']);
    expect(left.has(found.tighten[0] ?? '')).toBe(true);
    expect(found.balance.bound).toBeNull();
  });

  test('a hole that cannot be tightened now is neither done nor in the order', () => {
    const found = ask({ map: COVER, skip: ['9'] });
    expect(found.tighten).toHaveLength(10);
    expect(found.tighten).not.toContain('9');
  });
});

describe('loosening', () => {
  test('is the reverse', () => {
    const { tighten, loosen } = ask({ map: '1 2 3 4 5 6 7' });
    expect(loosen).toEqual([...tighten].reverse());
  });

  test('keeps the top bolt for last, as it says', () => {
    const { tighten, loosen, tips } = ask({ map: COVER });
    expect(loosen.at(-1)).toBe('2');
    expect(tips.loosen.at(-1)).toMatch(/leave 2 until last/);
    const others = (order: readonly string[]) => order.filter((name) => name !== '2');
    expect(others(loosen)).toEqual(others(tighten).reverse());
  });

  test('where the maker orders it is not changed, and no other bolt is said to be last', () => {
    const list = ['2', ...upTo(11).filter((name) => name !== '2')];
    const names = upTo(11);
    for (const given of [{ list: upTo(11) }, { care: 'head' as const }]) {
      const { tighten, loosen, tips } = ask({ map: COVER, names, ...given });
      expect(loosen).toEqual([...tighten].reverse());
      expect(tips.loosen.join()).not.toMatch(/until last/);
    }
    const kept = ask({ map: COVER, names, list });
    expect([kept.loosen.at(-1), kept.tips.loosen.join()]).toEqual([
      ...['2', expect.stringMatching(/leave 2 until last/)],
    ]);
  });

  test('of a large piece begins with a quarter turn all round', () => {
    expect(ask({ map: COVER }).tips.loosen[0]).toMatch(/quarter turn/i);
    expect(ask({ names: upTo(4) }).tips.loosen.join()).not.toMatch(/quarter turn/i);
  });

  test('leaves the top bolt for last, as a suggestion', () => {
    expect(ask({ map: '. 2 .\n3 . 1\n. 4 .' }).tips.loosen.join()).toMatch(/leave 2 until last/);
    expect(ask({ map: '1 2' }).tips.loosen.join()).not.toMatch(/until last/);
  });
});

describe('from a piece of the file', () => {
  test('groups, dowels, list and map are taken as they stand', () => {
    const spec = piece(11, { map: COVER, first: ['2', '8'] });
    expect(sequence(spec).tighten.slice(0, 2)).toEqual(['2', '8']);
    expect(sequence({ ...spec, sequence: upTo(11) }).pattern).toBe('list');
    const torque = readTorque('22 N·m');
    const own = piece(11, {
      map: COVER,
      holes: new Map([hole('5', { torque }), hole('9', { torque })]),
    });
    expect(sequence(own).tighten.slice(0, 2).sort()).toEqual(['5', '9']);
  });

  test('without a map the holes are taken as a ring', () => {
    expect(sequence(piece(8)).tighten.join('-')).toBe('1-5-3-7-2-6-4-8');
  });

  test('a piece without bolts has no order', () => {
    const none = sequence(piece(0));
    expect([none.tighten, none.loosen, none.balance.peak]).toEqual([[], [], 0]);
  });

  test('an order is worked out once for the same piece', () => {
    const spec = piece(11, { map: COVER });
    expect(sequence(spec)).toBe(sequence({ ...spec }));
    expect(sequence(spec)).not.toBe(sequence({ ...spec, first: ['3'] }));
  });
});

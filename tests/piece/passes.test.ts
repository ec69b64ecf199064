/** Passes: how they are written, which are usual, at what torque and in which order. */
import { describe, expect, test } from 'vitest';
import { readKind } from '../../src/bolt/read/kind.ts';
import { printQuantity } from '../../src/bolt/read/units.ts';
import { readTorque } from '../../src/bolt/torque/stages.ts';
import type { Kind, PassSpec, PieceSpec } from '../../src/model/types.ts';
import {
  lastPass,
  lastPassAt,
  passAt,
  passesAt,
  passesOf,
  passPlan,
  readPass,
} from '../../src/piece/passes.ts';
import { rounds as passes } from '../../src/piece/sequence/rounds.ts';
import { sequence } from '../../src/piece/sequence/sequence.ts';
import { hole, piece, upTo } from './pieces.ts';

const kinds = (text: string): Map<string, Kind> => new Map([['S', readKind('S', text)]]);
const M6 = kinds('M6x25 flange, 8 mm');
const M8 = kinds('M8x30 flange, 12 mm');
const read = (...texts: string[]): PassSpec[] =>
  texts.map((text) => {
    const pass = readPass(text);
    if (pass === null) throw new Error(text);
    return pass;
  });
const BARE = { torque: null, angle: null, after: null, printed: null };
const figure = (p: PassSpec | undefined) => p?.torque?.quantity ?? null;

describe('a pass as written', () => {
  test.each([
    ['snug', 'snug', null, null, null],
    ['full', 'full', null, null, null],
    ['Full 10 N·m', 'full', '10 N·m', null, null],
    ['part 5 Nm', 'part', '5 N·m', null, null],
    ['part 50 %', 'part', '50 %', null, null],
    ['angle 90°', 'angle', null, 90, null],
    ['angle +45 deg', 'angle', null, 45, null],
    ['angle 30', 'angle', null, 30, null],
    ['final', 'final', null, null, null],
    ['again after 50 km', 'again', null, null, '50 km'],
    ['again 12 N·m after the first run', 'again', '12 N·m', null, 'the first run'],
  ])('%s', (text, name, torque, angle, after) => {
    const pass = readPass(text);
    const q = pass?.torque?.quantity;
    expect([pass?.name, q ? `${q.value} ${q.unit}` : null, pass?.angle, pass?.after]).toEqual([
      ...[name, torque, angle, after],
    ]);
  });

  test.each(
    [
      ['', 'tighten', 'fullest', 'angle', 'angle 0°', 'angle 10 N·m', 'again', 'snug after 5 km'],
      ['part 0 %', 'part 120 %', 'full soon', 'angle 10..20°', '10 N·m'],
    ].flat(),
  )('%j is none', (text) => {
    expect(readPass(text)).toBeNull();
  });
});

describe('the usual passes', () => {
  const spec = piece(4, { torque: readTorque('10 N·m, manual 2-17') });

  test('up to M7: snug and full', () => {
    const plan = passPlan(spec, M6);
    expect(plan.passes.map((p) => p.name)).toEqual(['snug', 'full']);
    expect(plan.why).toBe('M6: snug and full will do');
    expect(figure(plan.passes[1])).toEqual({ value: 10, to: null, unit: 'N·m' });
    expect(plan.passes[1]?.torque?.where).toBe('manual 2-17');
    expect(figure(plan.passes[0])).toBeNull();
  });

  test.each([
    ['M8x30', true],
    ['M10x1.25x40', true],
    ['5/16-18 x 1', true],
    ['1/4-20 x 1', false],
    ['M7x20', false],
    ['10-32 UNF x 1/2', false],
  ])('%s: a part pass between? %s', (text, part) => {
    const names = passesOf(spec, kinds(text)).map((p) => p.name);
    expect(names).toEqual(part ? ['snug', 'part', 'full'] : ['snug', 'full']);
  });

  test('part is half of the torque, also of a range', () => {
    expect(figure(passesOf(spec, M8)[1])).toEqual({ value: 5, to: null, unit: 'N·m' });
    const range = piece(4, { torque: readTorque('22..26 N·m') });
    expect(figure(passesOf(range, M8)[1])).toEqual({ value: 11, to: 13, unit: 'N·m' });
    expect(figure(passesOf(piece(4), M8)[1])).toBeNull();
  });

  test('nothing known of the bolts: snug and full', () => {
    expect(passPlan(spec, new Map()).passes.map((p) => p.name)).toEqual(['snug', 'full']);
    expect(passPlan(piece(0), M8).passes.map((p) => p.name)).toEqual(['snug', 'full']);
  });
});

describe('a final round at full torque', () => {
  const names = (spec: PieceSpec, of = M6) => passesOf(spec, of).map((p) => p.name);
  const ten = { torque: readTorque('10 N·m') };
  const gasket = { joint: ['new gasket, dry'] };

  test.each([
    ['five bolts', piece(5, ten), true],
    ['four bolts', piece(4, ten), false],
    ['two bolts and a gasket', piece(2, { ...ten, ...gasket }), true],
    ['four bolts, no gasket', piece(4, { ...ten, joint: ['sealant; no gasket'] }), false],
    ['a single bolt with a gasket', piece(1, { ...ten, ...gasket }), false],
    ['six bolts without a figure', piece(6), false],
    ['six bolts that are not read', piece(6, { torque: readTorque('see 4-12') }), false],
    ['six bolts in two stages', piece(6, { torque: readTorque('5 N·m, then 10 N·m') }), true],
    [
      'six bolts with a range of an angle',
      piece(6, { torque: readTorque('5 N·m + 90° ± 5°') }),
      false,
    ],
    ['six bolts with an angle', piece(6, { torque: readTorque('5 N·m + 90°') }), false],
    ['six drain plugs', piece(6, { ...ten, name: 'Drain plugs' }), false],
  ])('%s: %s', (_, spec, final) => {
    expect(names(spec).includes('final')).toBe(final);
  });

  test('is the last pass, at the figure of the full one, and a bolt is tight behind it', () => {
    const plan = passPlan(piece(6, ten), M8);
    expect(plan.passes.map((p) => p.name)).toEqual(['snug', 'part', 'full', 'final']);
    expect(figure(plan.passes[3])).toEqual({ value: 10, to: null, unit: 'N·m' });
    expect(plan.why).toMatch(/; then once round at full torque$/);
    expect(lastPass(plan.passes)).toBe('final');
  });

  test('no other bolt of a piece has it where one is turned by an angle', () => {
    const own = new Map([hole('2', { torque: readTorque('20 N·m + 90°') })]);
    expect(names(piece(6, { ...ten, holes: own }))).toEqual(['snug', 'full', 'angle']);
  });

  test('goes once round, the larger first', () => {
    const own = new Map([hole('2', { torque: readTorque('22 N·m') })]);
    const spec = piece(6, { ...ten, holes: own });
    const last = passes(spec, M6, sequence(spec, M6).tighten).rounds.filter(
      (p) => p.name === 'final',
    );
    expect(last.map((p) => [p.torque?.value, p.order.join('-')])).toEqual([
      ...[
        [22, '2'],
        [10, '1-3-4-5-6'],
      ],
    ]);
  });
});

describe('what is turned by itself', () => {
  test.each([
    ['Drain plug', 'M14x16 hex, 17 mm', 1],
    ['Spark plugs', 'M14x1.25x19, 21 mm', 4],
    ['Plugs', 'M10x1x15 spark plug, 16 mm', 2],
    ['Front axle', 'M16x200 hex, 24 mm', 1],
    ['Axle nut', 'M20x1.5x20 nut, 30 mm', 2],
    ['Bracket', 'M10x30 hex, 17 mm', 1],
  ])('%s (%s, %i): no part pass, no final round', (name, bolt, count) => {
    const spec = piece(count, { name, torque: readTorque('45 N·m'), joint: ['new gasket'] });
    expect(passesOf(spec, kinds(bolt)).map((p) => p.name)).toEqual(['snug', 'full']);
    expect(passPlan(spec, kinds(bolt)).why).toBe('by itself: snug and full');
  });

  test.each(['Plug cover', 'Axle clamp', 'Spindle housing'])('%s is no such thing', (name) => {
    const spec = piece(4, { name, torque: readTorque('24 N·m') });
    expect(passesOf(spec, M8).map((p) => p.name)).toEqual(['snug', 'part', 'full']);
  });
});

describe('passes of the file', () => {
  const torque = readTorque('40 N·m');

  test('go first, shares and bare passes at the piece’s torque', () => {
    const spec = piece(4, {
      torque,
      passes: read('snug', 'part 25 %', 'part 30 N·m', 'full', 'final'),
    });
    const plan = passPlan(spec, M6);
    expect(plan.why).toBe('as the file says');
    expect(plan.passes.map((p) => [p.name, figure(p)?.value])).toEqual([
      ...[
        ['snug', undefined],
        ['part', 10],
        ['part 2', 30],
        ['full', 40],
        ['final', 40],
      ],
    ]);
  });

  test('several angles have names of their own', () => {
    const spec = piece(4, {
      torque,
      passes: read('full 40 N·m', 'angle 45°', 'angle 45°', 'angle 30°'),
    });
    const { rounds } = passes(spec, M8, upTo(4));
    expect(rounds.map((p) => [p.name, p.angle])).toEqual([
      ...[
        ['full', null],
        ['angle', 45],
        ['angle 2', 45],
        ['angle 3', 30],
      ],
    ]);
    expect(rounds[1]?.say).toMatch(/never click them again/i);
  });

  test('a bolt is tight after the last one that does not wait for later', () => {
    expect(lastPass(read('snug', 'full', 'again after 50 km'))).toBe('full');
    expect(lastPass(read('full 40 N·m', 'angle 90°'))).toBe('angle');
    expect(lastPass(passesOf(piece(4), M6))).toBe('full');
  });
});

describe('each pass with its order', () => {
  const cover = piece(8, { torque: readTorque('10 N·m') });
  const of = (spec: typeof cover, bolts = M6) => passes(spec, bolts, sequence(spec).tighten);

  test('is the order of the piece; the final pass goes once round', () => {
    const spec = { ...cover, passes: read('snug', 'full', 'final') };
    expect(of(spec).rounds.map((p) => [p.name, p.torque?.value, p.order.join('-')])).toEqual([
      ['snug', undefined, '1-5-3-7-2-6-4-8'],
      ['full', 10, '1-5-3-7-2-6-4-8'],
      ['final', 10, '1-2-3-4-5-6-7-8'],
    ]);
  });

  test('with the maker’s list is the list in every pass', () => {
    const spec = { ...cover, sequence: upTo(8).reverse(), passes: read('full', 'final') };
    expect(new Set(of(spec).rounds.map((p) => p.order.join('-')))).toEqual(
      new Set(['8-7-6-5-4-3-2-1']),
    );
  });

  test('holes with a torque of their own are a round of their own', () => {
    const torque = readTorque('22 N·m');
    const spec = { ...cover, holes: new Map([hole('3', { torque }), hole('7', { torque })]) };
    const { rounds } = of(spec, M8);
    expect(rounds.map((p) => [p.name, p.torque?.value, p.order.length])).toEqual([
      ...[
        ['snug', undefined, 8],
        ['part', 11, 2],
        ['part', 5, 6],
        ['full', 22, 2],
        ['full', 10, 6],
        ['final', 22, 2],
        ['final', 10, 6],
      ],
    ]);
    expect(rounds[3]?.order).toEqual(['3', '7']);
  });

  test('a printed list that goes to and fro between two torques is kept to', () => {
    const torque = readTorque('22 N·m');
    const spec = piece(4, {
      ...{ torque: readTorque('10 N·m'), sequence: ['1', '3', '2', '4'] },
      holes: new Map([hole('3', { torque })]),
    });
    const full = of(spec).rounds.filter((p) => p.name === 'full');
    expect(full.map((p) => [p.torque?.value, p.order.join('-')])).toEqual([
      ...[
        [10, '1'],
        [22, '3'],
        [10, '2-4'],
      ],
    ]);
  });

  test('leaves out what is done', () => {
    const { tighten } = sequence(cover, M6, upTo(8), ['1', '5']);
    expect(passes(cover, M6, tighten).rounds.map((p) => p.order.length)).toEqual([6, 6, 6]);
  });

  test('says what to watch for', () => {
    const spec = { ...cover, passes: read('snug', 'full', 'final', 'again after 50 km') };
    const say = of(spec).rounds.map((p) => p.say);
    expect(say[0]).toMatch(/dowels/);
    expect(say[2]).toMatch(/keeps turning is a fault/);
    expect(say[3]).toMatch(/stone cold/i);
  });
});

describe('a torque that is printed in stages', () => {
  const printed = (torque: string, own: Record<string, string> = {}) =>
    piece(3, {
      torque: readTorque(torque),
      holes: new Map(
        Object.entries(own).map(([name, text]) => hole(name, { torque: readTorque(text) })),
      ),
    });
  const said = (passes: readonly PassSpec[]) =>
    passes.map(({ name, torque, angle }) =>
      [name, torque?.quantity ? printQuantity(torque.quantity) : torque?.text, angle && `${angle}°`]
        .filter((t) => t)
        .join(' '),
    );

  test.each([
    ['20 N·m + 90°', ['snug', 'full 20 N·m', 'angle 90°']],
    [
      '20, then 40 N·m, then 90° and 90°',
      ['snug', 'part 20 N·m', 'full 40 N·m', 'angle 90°', 'angle 2 90°'],
    ],
    [
      '25 N·m, back off 1/2 turn, then 15 N·m',
      ['snug', 'part 25 N·m', 'loosen 180°', 'full 15 N·m'],
    ],
    ['tight by hand, then 3/4 turn', ['snug', 'angle 270°']],
    ['20 N·m and then 90 more', ['snug', 'printed 20 N·m and then 90 more']],
  ])('%s is these passes', (torque, passes) => {
    const spec = printed(torque);
    expect(said(passesOf(spec, M6))).toEqual(passes);
  });

  test('is never full where an angle follows', () => {
    const spec = printed('20 N·m + 90°');
    expect(lastPass(passesOf(spec, M6))).toBe('angle');
  });

  test('passes: wins where it is given', () => {
    const spec = { ...printed('20 N·m and then 90 more'), passes: [...read('full 20 N·m')] };
    expect(said(passesOf(spec, M6))).toEqual(['full 20 N·m']);
  });

  test('a hole with a torque of its own has the stages of that, and is tight behind its own last', () => {
    const at = (spec: PieceSpec, hole: string) => said(passesAt(spec, M6, hole));
    const turned = printed('10 N·m', { 2: '20 N·m + 90°' });
    expect(said(passesOf(turned, M6))).toEqual(['snug', 'full 10 N·m', 'angle 90°']);
    expect(at(turned, '1')).toEqual(['snug', 'full 10 N·m']);
    expect(at(turned, '2')).toEqual(['snug', 'full 20 N·m', 'angle 90°']);
    expect(['1', '2'].map((n) => lastPassAt(turned, M6, n))).toEqual(['full', 'angle']);
    const plain = printed('20 N·m, then 40 N·m, then 60°', { 2: '30 N·m' });
    expect(at(plain, '2')).toEqual(['snug', 'full 30 N·m']);
    expect(passAt(plain, M6, { name: 'angle', ...BARE, angle: 60 }, '1').angle).toBe(60);
  });

  test('stages that run the other way round stand as printed, in the last pass', () => {
    const spec = printed('20 N·m + 90°', {
      2: 'tight by hand, 90°, back off 1/4 turn, then 15 N·m',
    });
    const own = passesAt(spec, M6, '2');
    expect(own.map((p) => [p.name, p.torque?.quantity ?? null])).toEqual([
      ...[
        ['snug', null],
        ['angle', null],
      ],
    ]);
    expect(own.at(-1)?.torque?.text).toMatch(/^tight by hand/);
  });
});

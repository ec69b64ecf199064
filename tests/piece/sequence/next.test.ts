/** The next hole of a piece, from where it stands. */
import { describe, expect, test } from 'vitest';
import { readTorque } from '../../../src/bolt/torque/stages.ts';
import type { HoleNow, PieceNow, PieceSpec } from '../../../src/model/types.ts';
import { loosenNext, nextHole } from '../../../src/piece/sequence/next.ts';
import { piece, upTo } from '../pieces.ts';

const KINDS = new Map();

function standing(
  spec: PieceSpec,
  n: number,
  holes: Record<string, Partial<HoleNow>> = {},
): PieceNow {
  const bare = (name: string): HoleNow => ({
    ...{ name, claim: null, found: null, belongs: null, unsettled: false, state: 'in' },
    ...{ holds: null, passes: [], trouble: null, conflict: null, by: null },
  });
  return {
    ...{ spec, where: 'on', round: 1, away: 'no', fitted: true, tray: null, last: null },
    holes: upTo(n).map((name) => ({ ...bare(name), ...holes[name] })),
  };
}

const snug = { passes: ['snug'] };
const rest = (now: PieceNow, pass = 'snug') => nextHole(now, KINDS, pass)?.rest.join('-');

describe('the next hole', () => {
  test('is the first of the order, and the rest follows', () => {
    expect(nextHole(standing(piece(8), 8), KINDS, 'snug')).toEqual({
      next: '1',
      rest: ['1', '5', '3', '7', '2', '6', '4', '8'],
      printed: false,
    });
  });

  test('goes on in the order shown as long as it is kept to', () => {
    expect(rest(standing(piece(8), 8, { 1: snug, 5: snug, 3: snug }))).toBe('7-2-6-4-8');
    const star = piece(11, { map: '. 1 . 2 .\n11 . . . 3\n10 . . . 4\n. 9 8 7 5\n. . . 6 .' });
    const order = nextHole(standing(star, 11), KINDS, 'snug')?.rest ?? [];
    for (const k of [1, 4, 9]) {
      const done = Object.fromEntries(order.slice(0, k).map((name) => [name, snug]));
      expect(rest(standing(star, 11, done))).toBe(order.slice(k).join('-'));
    }
  });

  test('after another hole is the one across from it', () => {
    expect(nextHole(standing(piece(8), 8, { 2: snug }), KINDS, 'snug')?.next).toBe('6');
  });

  test('starts over in the next pass', () => {
    const all = Object.fromEntries(upTo(8).map((name) => [name, snug]));
    expect(rest(standing(piece(8), 8, all))).toBeUndefined();
    expect(rest(standing(piece(8), 8, all), 'full')).toBe('1-5-3-7-2-6-4-8');
  });

  test('passes over an empty hole and one in trouble', () => {
    const now = standing(piece(8), 8, { 5: { state: 'out' }, 3: { trouble: 'pulled' } });
    expect(rest(now)).toBe('1-7-2-6-4-8');
  });

  test('takes bolts that never came out as tight', () => {
    const home = { state: 'home' } as const;
    expect(rest(standing(piece(8), 8, { 1: home, 5: home }))).toBe('3-7-2-6-4-8');
    expect(nextHole(standing(piece(8), 8, { 2: home }), KINDS, 'snug')?.next).toBe('6');
    const all = Object.fromEntries(upTo(8).map((name) => [name, home]));
    expect(nextHole(standing(piece(8), 8, all), KINDS, 'full')).toBeNull();
  });

  test('keeps to the maker’s list and says that it is printed', () => {
    const listed = piece(4, { sequence: ['4', '1', '2', '3'] });
    expect(nextHole(standing(listed, 4, { 2: snug }), KINDS, 'snug')).toEqual({
      next: '4',
      rest: ['4', '1', '3'],
      printed: true,
    });
  });

  test('in the final pass goes once round', () => {
    const torque = readTorque('10 N·m');
    expect(rest(standing(piece(8, { torque }), 8), 'final')).toBe('1-2-3-4-5-6-7-8');
    const drawn = piece(4, { torque, joint: ['gasket'], map: '1 2\n3 4' });
    expect(rest(standing(drawn, 4), 'final')).toBe('1-2-4-3');
  });

  test('of a piece without bolts is none', () => {
    expect(nextHole(standing(piece(0), 0), KINDS, 'snug')).toBeNull();
  });
});

describe('the next to loosen', () => {
  test('is the last that was tightened, of those that are asked about', () => {
    const now = standing(piece(8), 8);
    expect(loosenNext(now, new Map(), upTo(8))).toBe('8');
    expect(loosenNext(now, new Map(), ['1', '3', '5'])).toBe('3');
    expect(loosenNext(now, new Map(), [])).toBeNull();
  });
});

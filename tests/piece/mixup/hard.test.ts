import { describe, expect, test } from 'vitest';
import { fit } from '../../../src/bolt/fit/fit.ts';
import type { HoleSpec } from '../../../src/model/types.ts';
import { hardToMiss } from '../../../src/piece/hard.ts';
import { mixup } from '../../../src/piece/mixup/mixup.ts';
import { hole, kindsOf, SML, tray } from './make.ts';

const kinds = kindsOf({
  A: 'M6x25 flange, 8 mm',
  twin: 'M6x25 flange, 8 mm',
  shorter: 'M6x20 flange, 8 mm',
  longer: 'M6x30 flange, 8 mm',
  long: 'M6x35 flange, 8 mm',
  allen: 'M6x25 socket, 5 mm Allen',
  hex10: 'M6x20 flange, 10 mm',
  thick: 'M8x25 flange, 8 mm',
  unknown: 'M6 flange, 8 mm',
});
const A = kinds.get('A');

test('what shows makes a wrong bolt harder to miss: length, then tool, then head, then thread', () => {
  const hard = (letter: string) => {
    const holds = kinds.get(letter);
    return A && holds ? hardToMiss(A, holds, []) : Number.NaN;
  };
  expect(hard('twin')).toBe(0);
  expect(hard('shorter')).toBe(1);
  expect(hard('unknown')).toBe(1);
  const rest = ['longer', 'long', 'hex10', 'allen', 'thick'].map(hard);
  expect(rest).toEqual([2, 3, 5, 13, 17]);
});

describe('with the hole probed', () => {
  const probed = (to: number): HoleSpec => ({
    ...{ name: '1', note: null, thick: 15, thread: { from: 0, to }, turns: null, proud: null },
    ...{ at: null, torque: null, into: null, wet: false, group: null },
  });
  const ask = (to: number) => {
    const holes = [hole('1', 'S', 'in'), hole('2', 'M', 'out')];
    return mixup({
      ...{ holes, left: tray('S'), kinds: SML },
      fitOf: (letter) => {
        const [kind, own] = [SML.get(letter), SML.get('S')];
        if (!kind || !own) return null;
        return fit(kind, null, { takes: { kind: own, with: [] }, hole: probed(to), piece: null });
      },
    }).explanations[0];
  };

  test('deep enough for the longer one: it looks right, and is easily missed', () => {
    expect(ask(30)).toMatchObject({ hard: 1 });
    expect(ask(30)?.holes[0]?.look).toMatch(/^It goes right in and looks right; take it out/);
  });

  test('too shallow: its head stays off by so much', () => {
    expect(ask(14)).toMatchObject({ hard: 3 });
    expect(ask(14)?.holes[0]?.look).toBe('Its head stays 6 mm or more off the seat.');
  });
});

test('another opinion of what is hard to miss changes the order, not the explanations', () => {
  const pieces = [hole('1', 'D', 'in'), hole('2', 'B', 'in'), hole('3', 'C', 'in')];
  const input = {
    holes: [...pieces, hole('4', 'A', 'out')],
    left: tray('D'),
    kinds: kindsOf({ A: 'M6x20', B: 'M6x25', C: 'M6x30', D: 'M6x60' }),
  };
  const way = (hard?: () => number) =>
    mixup({ ...input, ...(hard ? { hard } : {}) }).explanations.map((e) => [
      e.hard,
      e.difference,
      e.holes.map((h) => `${h.takes}<${h.holds}`).join(' '),
    ]);
  const blind = way(() => 0);
  expect(blind.map((w) => w[0])).toEqual([0, 0, 0, 0, 0]);
  expect(blind.map((w) => w[2]).sort()).toEqual(
    way()
      .map((w) => w[2])
      .sort(),
  );
  expect(blind.slice(1, 3)).toEqual([
    [0, 40, 'D<B B<A'],
    [0, 40, 'D<C C<A'],
  ]);
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fit } from '../../src/bolt/fit/fit.ts';
import type { Kind } from '../../src/model/types.ts';
import { type SwapHole, sayWorst, swaps } from '../../src/piece/swaps.ts';
import { type Given, holeOf } from '../bolt/holes.ts';
import { kindsOf } from './mixup/make.ts';

const spec = (name: string, more: Given) => holeOf(name, { into: 'cast aluminium', ...more });

interface Hole extends SwapHole {
  more?: Given;
}

function ask(texts: Record<string, string> | Map<string, Kind>, holes: Hole[]) {
  const kinds = texts instanceof Map ? texts : kindsOf(texts);
  return swaps({
    ...{ holes, tray: [...kinds.keys()], kinds },
    fitOf: (letter, name) => {
      const hole = holes.find((h) => h.name === name);
      const [kind, own] = [kinds.get(letter), kinds.get(hole?.takes ?? '')];
      if (!kind || !own || !hole) return null;
      const place = { takes: { kind: own, with: [] }, hole: spec(name, hole.more ?? {}) };
      return fit(kind, null, { ...place, piece: null });
    },
  });
}
const told = (list: ReturnType<typeof swaps>) =>
  list.map((s) => `${s.kind} in ${s.hole}: ${s.verdict}${s.unnoticed ? '' : ', seen'}`);

const SML = {
  S: 'M6x25 flange, 8 mm',
  M: 'M6x35 flange, 8 mm',
  L: 'M6x55 flange, 8 mm',
};

describe('swaps of a piece, worst first', () => {
  test('holes probed: the bolt too short for its case goes in unnoticed, the long one stands off', () => {
    const list = ask(SML, [
      { name: '1', takes: 'S', more: { thick: 10, thread: { from: 0, to: 16 } } },
      { name: '2', takes: 'M', more: { thick: 20, thread: { from: 0, to: 16 } } },
    ]);
    expect(told(list)).toEqual([
      'S in 2: short',
      'L in 1: bottoms, seen',
      'L in 2: bottoms, seen',
      'M in 1: bottoms, seen',
    ]);
    expect(list[0]).toEqual({
      ...{ hole: '2', kind: 'S', verdict: 'short', unnoticed: true },
      danger: 'Its few threads pull out of the case at full torque.',
    });
  });

  test('a bolt that sticks out behind is not seen from outside', () => {
    const more = { thick: 10, thread: { from: 0, to: 16 }, wet: true };
    const list = ask(SML, [{ name: '1', takes: 'S', more }]);
    expect(told(list)).toEqual(['L in 1: through', 'M in 1: through']);
    expect(list[0]?.danger).toBe('It sticks out 29 mm behind, into whatever lies there.');
  });

  test('nothing measured: 5 mm longer may go unnoticed, 10 mm and more would stand off', () => {
    const list = ask({ A: 'M6x25', B: 'M6x30', C: 'M6x40' }, [{ name: '1', takes: 'A' }]);
    expect(told(list)).toEqual(['B in 1: longer', 'C in 1: longer, seen']);
  });

  test('a look-alike thread starts and ruins, another size is felt', () => {
    const kinds = {
      A: 'M5x0.8x20 flange, 8 mm',
      B: '10-32 UNF x 3/4 flange, 8 mm',
      C: 'M8x20 flange, 8 mm',
    };
    const list = ask(kinds, [{ name: '1', takes: 'A' }]);
    expect(told(list)).toEqual(['B in 1: wrong-thread', 'C in 1: wrong-thread, seen']);
    expect(list[0]?.danger).toBe('It ruins the thread of the case.');
  });

  test('another head is seen, a weaker mark is not', () => {
    const kinds = {
      A: 'M8x25 10.9 flange, 12 mm',
      B: 'M8x25 8.8 flange, 12 mm',
      C: 'M8x25 10.9 socket, 6 mm Allen',
    };
    const list = ask(kinds, [{ name: '1', takes: 'A' }]);
    expect(told(list)).toEqual(['B in 1: wrong-head', 'C in 1: wrong-head, seen']);
    expect(list[0]?.danger).toContain('weaker');
  });

  test('a bolt that does not reach the thread is felt; a shank that jams is too', () => {
    const more = { thick: 30, thread: { from: 0, to: 30 } };
    expect(told(ask(SML, [{ name: '1', takes: 'L', more }]))).toEqual([
      'M in 1: short',
      'S in 1: short, seen',
    ]);
    const kinds = kindsOf({ A: 'M6x25', B: 'M6x25 flange' });
    const B = kinds.get('B');
    if (B) kinds.set('B', { ...B, threaded: 8 });
    const shank = { thick: 10, thread: { from: 0, to: 30 } };
    expect(told(ask(kinds, [{ name: '1', takes: 'A', more: shank }]))).toEqual([
      'B in 1: shank, seen',
    ]);
  });

  test('one that holds there as well breaks nothing there, and comes last', () => {
    const more = { thick: 10, thread: { from: 0, to: 60 } };
    const kinds = { A: 'M6x30 10.9', B: 'M6x35 10.9', C: 'M6x15 10.9', D: 'M6x30 8.8' };
    const list = ask(kinds, [{ name: '1', takes: 'A', more }]);
    expect(told(list)).toEqual(['C in 1: short', 'D in 1: wrong-head', 'B in 1: longer']);
    expect(list[2]?.danger).toMatch(/^It holds here; but its own hole is left/);
  });

  test('the right bolt, the same bolt under another letter and holes that nobody has named are left out', () => {
    const kinds = { A: 'M6x25 flange', B: 'M6x25 flange' };
    expect(
      ask(kinds, [
        { name: '1', takes: 'A' },
        { name: '2', takes: null },
      ]),
    ).toEqual([]);
  });

  test('the order of holes and kinds changes nothing', () => {
    const hole = fc.record({
      takes: fc.constantFrom('S', 'M', 'L', null),
      more: fc.record({
        thick: fc.option(fc.integer({ min: 5, max: 40 })),
        thread: fc.option(fc.integer({ min: 5, max: 40 }).map((to) => ({ from: 0, to }))),
        wet: fc.boolean(),
      }),
    });
    fc.assert(
      fc.property(fc.array(hole, { maxLength: 6 }), (list) => {
        const holes = list.map((h, i) => ({ name: `${i + 1}`, ...h }));
        const back = Object.fromEntries(Object.entries(SML).reverse());
        const there = ask(SML, holes);
        expect(ask(back, [...holes].reverse())).toEqual(there);
        const firstSeen = there.findIndex((s) => !s.unnoticed);
        if (firstSeen >= 0) expect(there.slice(firstSeen).some((s) => s.unnoticed)).toBe(false);
      }),
    );
  });
});

describe('told once when the piece comes off', () => {
  test('the worst that would go unnoticed, over all holes that it concerns', () => {
    const more = { thick: 20, thread: { from: 0, to: 16 } };
    const holes = [
      { name: '10', takes: 'M', more },
      { name: '2', takes: 'M', more },
      { name: '3', takes: 'S', more: { thick: 10, thread: { from: 0, to: 16 } } },
    ];
    expect(sayWorst(ask(SML, holes), holes)).toBe(
      'Mind S and M: S would go into 2 and 10 unnoticed. Its few threads pull out of the case at full torque.',
    );
  });

  test('nothing is said where nothing would go unnoticed', () => {
    const holes = [{ name: '1', takes: 'S', more: { thick: 10, thread: { from: 0, to: 16 } } }];
    expect(sayWorst(ask(SML, holes), holes)).toBeNull();
    expect(sayWorst([], [])).toBeNull();
  });
});

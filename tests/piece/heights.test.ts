import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { heights, readHeights } from '../../src/piece/heights.ts';
import type { HeightHole } from '../../src/piece/heights-against.ts';
import { SML } from './mixup/make.ts';

/** `S:6=36` takes S, should stand 6, stands 36; `S=36` nobody measured the hole; `S:6=-` nobody measured the head. */
function holes(text: string): HeightHole[] {
  return text.split(' ').map((word, i) => {
    const [, kind = '', expects, mm] = /^([A-Z?])(?::([-\d.]+))?=(.+)$/.exec(word) ?? [];
    return {
      name: `${i + 1}`,
      takes: kind === '?' ? null : { kind, with: [] },
      mm: mm === '-' ? null : Number(mm),
      expects: expects === undefined ? null : Number(expects),
    };
  });
}
const judge = (text: string) => heights(holes(text), SML);
const odd = (text: string) => judge(text).odd.map((o) => o.hole);

describe('heads that stand where they should not', () => {
  test('known holes: the one that stands 10 mm too high lights up, as an M would', () => {
    const answer = judge('S:6=6 S:6=16 M:8=8.5 S:6=5');
    expect(answer.odd).toEqual([
      {
        ...{ hole: '2', mm: 16, expected: 6, by: 10, like: ['M'] },
        say: '2 stands 16 mm off, 10 mm higher than S should. As M would: look at it.',
      },
    ]);
    expect(answer.notDown).toBeNull();
    expect(answer.unjudged).toEqual([]);
  });

  test('unknown holes: what stands apart from the others that take the same', () => {
    expect(odd('S=6 S=6.5 S=5.5 S=16 M=9 M=9.5')).toEqual(['4']);
    expect(odd('L=36 L=36.5 L=6')).toEqual(['3']);
    expect(judge('L=36 L=36.5 L=6').odd[0]).toMatchObject({ by: -30.5 + 0.5, like: ['S'] });
  });

  test('holes of one kind that were cut to several depths stand unevenly and hide nothing far off', () => {
    expect(odd('S=2 S=3 S=4 S=5 S=6')).toEqual([]);
    expect(odd('S=2 S=3 S=4 S=5 S=6 S=16')).toEqual(['6']);
  });

  test('two of one kind 4 mm apart do not agree', () => {
    const two = heights(holes('S=10 S=14'), SML);
    expect(two.odd.map((o) => [o.hole, o.expected])).toEqual([
      ...[
        ['1', null],
        ['2', null],
      ],
    ]);
    expect(heights(holes('S=10 S=12'), SML).odd).toEqual([]);
    expect(heights(holes('S=10 S=10 S=14 S=14'), SML).odd).toHaveLength(4);
    expect(heights(holes('S=10 S=10 S=10 S=14'), SML).odd.map((o) => o.hole)).toEqual(['4']);
  });

  test('two heights and no majority: each of them is to be looked at', () => {
    const answer = judge('S=6 S=16 S=6 S=16');
    expect(answer.odd.map((o) => o.hole)).toEqual(['1', '2', '3', '4']);
    expect(answer.odd[0]).toMatchObject({ expected: null, by: null, like: [] });
    expect(answer.odd[0]?.say).toBe(
      '1, 2, 3 and 4 take the same and stand at different heights: look at each.',
    );
    expect(odd('S=6 S=16')).toEqual(['1', '2']);
    expect(odd('S=6 S=7')).toEqual([]);
  });

  test('one alone of its kind, or of no known kind, cannot be judged', () => {
    expect(judge('S=6 M=9 M=9 ?=4')).toMatchObject({ odd: [], unjudged: ['4', '1'] });
  });

  test('one with a clip under its head is not held against those without', () => {
    const clip = { kind: 'S', with: ['clip'] };
    const list = holes('S=6 S=6 S=2 S=2').map((h, i) => (i > 1 ? { ...h, takes: clip } : h));
    expect(heights(list, SML).odd).toEqual([]);
  });

  test('what was not measured is passed over', () => {
    expect(judge('S:6=- S:6=- M=-')).toEqual({ odd: [], notDown: null, unjudged: [] });
  });

  test('a bolt that does not reach its thread stands on its seat, not below it', () => {
    expect(odd('S:-3=0 M:7=7')).toEqual([]);
    // M is 10 mm longer and would stand 10 − 3 off.
    expect(judge('S:-3=7 M:7=7').odd[0]).toMatchObject({ hole: '1', expected: 0, like: ['M'] });
  });
});

describe('all of them alike', () => {
  test('too high: the piece is not down on its dowels', () => {
    const { odd: list, notDown } = judge('S:6=10 S:6=10.5 M:8=12 L:20=24');
    expect(list).toEqual([]);
    expect(notDown?.by).toBe(4);
    expect(notDown?.say).toMatch(
      /^All heads stand 4 mm too high alike: the piece is not down on its dowels/,
    );
  });

  test('too low: it is held off its joint face by so much', () => {
    expect(judge('S:6=2 S:6=2 M:8=4').notDown).toMatchObject({
      by: -4,
      say: expect.stringMatching(/^All heads stand 4 mm too low alike: the piece is not down/),
    });
  });

  test('one that is off besides still lights up', () => {
    expect(odd('S:6=10 S:6=10 M:8=12 S:6=20')).toEqual(['4']);
  });

  test('one head that stands as it should shows that the piece is down: the others are odd', () => {
    const answer = judge('S:6=16 S:6=16 S:6=6');
    expect(answer.notDown).toBeNull();
    expect(answer.odd.map((o) => o.hole)).toEqual(['1', '2']);
  });

  test('all of one kind alike may also be another kind, and that is said', () => {
    expect(judge('S:6=16 S:6=16 S:6=16').notDown?.say).toContain(
      'or every one of these bolts is another kind',
    );
    expect(judge('S:6=16 M:6=16 S:6=16').notDown?.say).not.toContain('another kind');
  });

  test('all off, but not alike: each is odd', () => {
    expect(judge('S:6=10 S:6=16 S:6=26').notDown).toBeNull();
    expect(odd('S:6=10 S:6=16 S:6=26')).toEqual(['1', '2', '3']);
  });

  test('two are not all', () => {
    expect(judge('S:6=10 S:6=10').notDown).toBeNull();
    expect(odd('S:6=10 S:6=10')).toEqual(['1', '2']);
  });
});

test('the order of the holes changes nothing but the order of the answer', () => {
  const hole = fc.record({
    kind: fc.constantFrom('S', 'M', 'L'),
    mm: fc.option(fc.integer({ min: 0, max: 40 })),
    expects: fc.option(fc.integer({ min: -5, max: 40 })),
  });
  fc.assert(
    fc.property(fc.array(hole, { maxLength: 12 }), (list) => {
      const all = list.map(({ kind, ...h }, i) => ({
        ...{ name: `${i + 1}`, takes: { kind, with: [] }, ...h },
      }));
      const there = heights(all, SML);
      const back = heights([...all].reverse(), SML);
      expect(back.notDown).toEqual(there.notDown);
      expect(back.odd.map((o) => o.hole).reverse()).toEqual(there.odd.map((o) => o.hole));
      const measured = all.filter((h) => h.mm !== null).map((h) => h.name);
      const named = [...there.odd.map((o) => o.hole), ...there.unjudged];
      expect(measured).toEqual(expect.arrayContaining(named));
      expect(new Set(named).size).toBe(named.length);
    }),
  );
});

describe('a row of heights, as typed', () => {
  const names = ['1', '2', '3', '4'];
  const read = (text: string) => {
    const typed = readHeights(text, names);
    return typed.ok
      ? Object.fromEntries(typed.value)
      : typed.faults.map((f) => [f.code, f.at, f.word]);
  };

  test.each([
    ['2.5 2,4 - 12.5', { 1: 2.5, 2: 2.4, 4: 12.5 }],
    ['2.5, 2,4, -, 12,5', { 1: 2.5, 2: 2.4, 4: 12.5 }],
    ['2.5; 2.4; –; 0', { 1: 2.5, 2: 2.4, 4: 0 }],
    ['2.5 mm 2.4mm - 1/2 in', { 1: 2.5, 2: 2.4, 4: 12.7 }],
    ['  - - - -  ', {}],
  ])('%s', (text, value) => {
    expect(read(text)).toEqual(value);
  });

  test('too few, too many, and what is no height, each with its place', () => {
    expect(read('2 3 4')).toEqual([['too-few', 5, '']]);
    expect(read('2 3 4 5 6')).toEqual([['too-many', 8, '6']]);
    expect(read('2 high 4 -3')).toEqual([
      ['no-figure', 2, 'high'],
      ['no-figure', 9, '-3'],
    ]);
    const typed = readHeights('2 3', names);
    expect(typed.ok ? null : typed.faults[0]?.say).toBe(
      '2 heights for 4 holes: one for each in its order, and - where it was not measured.',
    );
  });

  test('never throws', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...'12 .,;-/mxin') }), (text) => {
        const typed = readHeights(text, names);
        if (typed.ok) expect(typed.value.size).toBeLessThanOrEqual(4);
        else expect(typed.faults.length).toBeGreaterThan(0);
      }),
    );
  });
});

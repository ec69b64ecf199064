import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { insideOf, readThings, sayThing } from '../../../src/plan/order/inside.ts';
import { diaryLines } from '../../../src/plan/order/lines.ts';
import { jobOf, type Said } from '../make.ts';

const TEXT = 'pieces: {case: {}, port: {}}';
const inside = (lines: Said[]) =>
  insideOf(diaryLines(jobOf(TEXT, lines))).map((t) => [t.piece, sayThing(t)]);

describe('what went in and has not come out', () => {
  it('is counted for each opening', () => {
    const lines = [
      { piece: 'case', inside: '2 rags' },
      { piece: 'port', inside: 'rag' },
      { piece: 'case', inside: '1 rag, 1 magnet' },
      { piece: 'case', cleared: 'rag' },
      { inside: 'plug' },
    ];
    expect(inside(lines)).toEqual([
      ['case', '2 rags'],
      ['port', '1 rag'],
      ['case', '1 magnet'],
      [null, '1 plug'],
    ]);
  });

  it('all of an opening, or all of everything, comes out in one line', () => {
    const rags = [
      { piece: 'case', inside: '2 rags' },
      { piece: 'port', inside: 'rag' },
    ];
    expect(inside([...rags, { piece: 'case', cleared: 'all' }])).toEqual([['port', '1 rag']]);
    expect(inside([...rags, { cleared: 'all' }])).toEqual([]);
  });

  it('a rag out of one opening is no rag out of another', () => {
    const lines = [
      { piece: 'case', inside: 'rag' },
      { piece: 'port', cleared: 'rag' },
    ];
    expect(inside(lines)).toEqual([['case', '1 rag']]);
  });

  it('does not go below nothing', () => {
    const lines = [
      { piece: 'case', cleared: '3 rags' },
      { piece: 'case', inside: 'rag' },
    ];
    expect(inside(lines)).toEqual([['case', '1 rag']]);
  });

  it('in and out in any order that keeps the count leaves nothing', () => {
    const counts = fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(counts, (all) => {
        const went = all.map((n) => ({ piece: 'case', inside: `${n} rags` }));
        const total = all.reduce((a, b) => a + b, 0);
        expect(inside(went)).toEqual([['case', sayThing({ what: 'rag', count: total })]]);
        expect(inside([...went, { piece: 'case', cleared: `${total} rags` }])).toEqual([]);
        if (total > 1) {
          const most = inside([...went, { piece: 'case', cleared: `${total - 1} rags` }]);
          expect(most).toEqual([['case', '1 rag']]);
        }
      }),
    );
  });

  it.each([
    ['2 rags', [{ what: 'rag', count: 2 }]],
    ['Rag', [{ what: 'rag', count: 1 }]],
    [
      '2 rags and 1 plug',
      [
        { what: 'rag', count: 2 },
        { what: 'plug', count: 1 },
      ],
    ],
    ['1 piece of brass', [{ what: 'piece of brass', count: 1 }]],
    ['0 rags', []],
    ['', []],
  ])('reads %j', (text, things) => {
    expect(readThings(text)).toEqual(things);
  });
});

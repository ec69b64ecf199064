import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { diaryLines } from '../../../src/plan/order/lines.ts';
import { roundsOf } from '../../../src/plan/order/rounds.ts';
import { boltsOff, boltsOn, jobOf, off, on, type Said } from '../make.ts';

const TEXT = 'bolts: {S: M6x25}\npieces: {cover: {bolts: S S}, hose: {}}';
const round = (lines: Said[], piece: string) => {
  const job = jobOf(TEXT, lines);
  return roundsOf(job, diaryLines(job))(piece);
};

describe('where a round begins', () => {
  it('with the line that took it off again', () => {
    const first = [...boltsOff('cover', 'S S'), ...boltsOn('cover', 'S S')];
    expect(round(first, 'cover')).toEqual({ start: -1, before: -1 });
    const note = { piece: 'cover', note: 'weeps' };
    expect(round([...first, note, ...boltsOff('cover', 'S S')], 'cover')).toEqual({
      start: 6,
      before: 5,
    });
  });

  it('not with a bolt that was taken out again before it was all tight', () => {
    const half: Said[] = [
      ...boltsOff('cover', 'S S'),
      { piece: 'cover', in: 'S S' },
      { piece: 'cover', hole: ['1'], tight: 'full' },
      { piece: 'cover', hole: ['1'], out: 'S' },
      { piece: 'cover', hole: ['1'], in: 'S' },
      { piece: 'cover', tight: 'full' },
    ];
    expect(round(half, 'cover')).toEqual({ start: -1, before: -1 });
    expect(round([...half, off('cover')], 'cover')).toEqual({ start: 7, before: 6 });
  });

  it('is the same whether the diary is read whole or in parts', () => {
    const some: Said[] = [
      { piece: 'cover', out: 'S' },
      { piece: 'cover', hole: ['1'], out: 'S' },
      { piece: 'cover', removed: 'all' },
      { piece: 'cover', in: 'S' },
      { piece: 'cover', hole: ['2'], in: 'S' },
      { piece: 'cover', tight: 'full' },
      { piece: 'cover', hole: ['1'], tight: 'full' },
      { piece: 'cover', fitted: 'all' },
      { piece: 'cover', note: 'x' },
      off('hose'),
      on('hose'),
    ];
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...some), { maxLength: 20 }), (lines) => {
        for (const piece of ['cover', 'hose']) {
          const now = jobOf(TEXT, lines).pieces.get(piece)?.round ?? 1;
          // The line behind which the round is what it is now.
          const start =
            now === 1
              ? -1
              : lines.findIndex(
                  (_, i) =>
                    (jobOf(TEXT, lines.slice(0, i + 1)).pieces.get(piece)?.round ?? 1) === now,
                );
          const before =
            start < 0 ? -1 : lines.findLastIndex((l, i) => i < start && l.piece === piece);
          expect(round(lines, piece)).toEqual({ start, before });
        }
      }),
    );
  });
});

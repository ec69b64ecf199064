import { describe, expect, it } from 'vitest';
import { otherFigure, otherFigureSaid } from '../../../../src/job/fold/other-figure.ts';
import type { Wish } from '../../../../src/model/types.ts';
import { Bench } from '../../bench.ts';

const FILE = `putback: 1
job: Rear tyre
bolts:
  L: M8x45 flange, 13 mm
  N: M10x45 flange, 14 mm
pieces:
  starter:
    bolts: L L
    torque: 20 N·m, manual 7-2
    passes: [snug, full]
diary:
`;
function ready(text = FILE): Bench {
  const bench = new Bench(text);
  bench.mark({ do: 'out', piece: 'starter' });
  bench.mark({ do: 'off', piece: 'starter' });
  return bench;
}
function inBoth(bench: Bench): Bench {
  bench.mark({ do: 'in', piece: 'starter', hand: { kind: 'L' } });
  bench.mark({ do: 'tight', piece: 'starter', pass: 'snug' });
  return bench;
}
const told = (bench: Bench) => otherFigureSaid(otherFigure(bench.job, bench.piece('starter')));

describe('a bolt that was set to another figure than is printed', () => {
  it('is told from then on, and goes with the next mark at the figure', () => {
    const bench = inBoth(ready());
    bench.mark({ do: 'tight', piece: 'starter', holes: ['1'], set: '32 N·m' });
    bench.mark({ do: 'tight', piece: 'starter', holes: ['2'] });
    expect(told(bench)).toBe('1 set to 32 N·m, not 20 N·m');
    expect(bench.warnings({ do: 'tight', piece: 'starter', set: '20 N·m' })).toEqual([
      'set-higher',
    ]);
    const again = bench.mark({ do: 'tight', piece: 'starter', set: '20 N·m' });
    expect(again).toMatchObject({ value: 'full', hole: ['1'], set: '20 N·m' });
    expect(told(bench)).toBeNull();
  });

  it('is told of what was right when it was set, and is printed otherwise now', () => {
    const bench = inBoth(ready());
    bench.mark({ do: 'tight', piece: 'starter' });
    expect(told(bench)).toBeNull();
    bench.mark({ do: 'correct', piece: 'starter', what: 'torque', truth: '12 N·m, bulletin 3' });
    expect(told(bench)).toBe('1 and 2 set to 20 N·m, not 12 N·m');
  });

  it('is nothing within a tenth, and nothing in another unit', () => {
    for (const set of ['21 N·m', '15 lbf·ft', '180 lbf·in']) {
      const bench = inBoth(ready());
      bench.mark({ do: 'tight', piece: 'starter', set });
      expect(told(bench)).toBeNull();
    }
  });
});

function mended(says: string, text = FILE): Bench {
  const bench = ready(text);
  bench.mark({ do: 'state', piece: 'starter', hole: '2', state: 'pulled' });
  bench.mark({ do: 'state', piece: 'starter', hole: '2', state: 'mended', says });
  return inBoth(bench);
}

describe('a hole that was mended to another size', () => {
  it('is asked about before its pass with a figure: that is printed for the old one', () => {
    const bench = mended('insert M10');
    const verdict = bench.ask({ do: 'tight', piece: 'starter' });
    expect(verdict).toMatchObject({
      ok: false,
      refused: {
        code: 'other-thread',
        say: '2 was mended to M10, and 20 N·m, manual 7-2 is printed for M8. Look up what M10 takes in this metal, and say what is set.',
        data: { holes: ['2'] },
      },
    });
    bench.mark({ do: 'tight', piece: 'starter', holes: ['1'] });
    const own: Wish = { do: 'tight', piece: 'starter', holes: ['2'], set: '34 N·m' };
    expect(bench.warnings(own)).toEqual([]);
    bench.mark(own);
    expect(told(bench)).toBeNull();
  });

  it('is not asked about again once there is a reason, or a torque of its own', () => {
    const bench = mended('insert M10');
    bench.mark({ do: 'tight', piece: 'starter', because: 'the maker of the insert says so' });
    bench.mark({ do: 'undo' });
    expect(bench.refusal({ do: 'tight', piece: 'starter' })).toMatchObject({
      code: 'other-thread',
    });
    const own = mended(
      'insert M10',
      FILE.replace('    passes', '    holes: {2: {torque: 34 N·m}}\n    passes'),
    );
    own.mark({ do: 'tight', piece: 'starter', holes: ['2'] });
  });

  it('is as it was with an insert of its own size, and where no size was named', () => {
    for (const says of ['wire insert M8', 'insert', 'M8x1.25, 1.5 d', 'by 2 turns deeper']) {
      mended(says).mark({ do: 'tight', piece: 'starter' });
    }
  });
});

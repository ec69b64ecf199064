import { describe, expect, it } from 'vitest';
import type { Wish } from '../../../../src/model/types.ts';
import { Bench } from '../../bench.ts';

const STACK = `putback: 1
job: Gearbox
bolts: {S: M6x25}
pieces:
  outer: {bolts: S S}
  inner: {bolts: S S}
  hose: {}
tasks:
  spring: {do: Detent spring in, before: outer on}
  wash: {do: Wash the forks, while: outer off}
diary:
`;
const off = (bench: Bench, piece: string): Bench => {
  bench.mark({ do: 'out', piece });
  bench.mark({ do: 'off', piece });
  return bench;
};
const put = (piece: string, hole: string): Wish => ({
  do: 'in',
  piece,
  holes: [hole],
  hand: { kind: 'S' },
});
const says = (bench: Bench, wish: Wish): string[] => {
  const verdict = bench.ask(wish);
  return verdict.ok ? verdict.warnings.map((w) => w.say) : [verdict.refused.say];
};

describe('a cover that came off first', () => {
  it('is told with its first bolt of what came off after it and is not back', () => {
    const bench = off(off(new Bench(STACK), 'outer'), 'inner');
    expect(says(bench, put('outer', '1'))).toEqual([
      'Inner came off after Outer and is not back. Look that nothing is closed in.',
      'To be done before Outer is back: Detent spring in.',
      'To be done before Outer is back: Wash the forks.',
    ]);
    bench.mark(put('outer', '1'));
    expect(says(bench, put('outer', '2'))).toEqual([]);
  });

  it('is told of nothing once that is back, and the last one off is told of nothing', () => {
    const bench = off(off(new Bench(STACK), 'outer'), 'inner');
    bench.mark({ do: 'done', task: 'spring' });
    bench.mark({ do: 'done', task: 'wash' });
    expect(says(bench, put('inner', '1'))).toEqual([]);
    bench.mark({ do: 'in', piece: 'inner', hand: { kind: 'S' } });
    expect(says(bench, put('outer', '1'))).toEqual([]);
  });

  it('is told the same where it has no bolts', () => {
    const bench = new Bench(STACK);
    bench.mark({ do: 'off', piece: 'hose' });
    off(bench, 'inner');
    expect(bench.warnings({ do: 'on', piece: 'hose' })).toEqual(['came-off-later']);
  });

  it('goes by what the file says, where it says what lies over what', () => {
    const bench = new Bench(STACK.replace('inner: {', 'inner: {under: outer, '));
    off(off(bench, 'outer'), 'inner');
    expect(bench.refusal(put('outer', '1'))).toMatchObject({ code: 'blocked' });
  });
});

describe('a bolt that comes out under a piece that is still on', () => {
  it('is told of it, once', () => {
    const bench = new Bench(STACK.replace('inner: {', 'inner: {under: outer, '));
    const first: Wish = { do: 'out', piece: 'inner', holes: ['1'] };
    expect(says(bench, first)).toEqual(['Outer is noted as over it, and is still on.']);
    bench.mark(first);
    expect(says(bench, { do: 'out', piece: 'inner', holes: ['2'] })).toEqual([]);
  });
});

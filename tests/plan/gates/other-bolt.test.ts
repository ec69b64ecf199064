import { expect, it } from 'vitest';
import { gate } from '../../../src/plan/gates/gate.ts';
import { Bench } from '../../job/bench.ts';
import { Desk } from '../../screens/desk.ts';

it('a bolt of another kind, put in for a reason, is said at the piece and before the start', () => {
  const bench = new Bench(
    'putback: 1\njob: Cover\nbolts: {S: M6x25, M: M6x35}\npieces: {cover: {bolts: S S M}}\ndiary:\n',
  );
  bench.mark({ do: 'out', piece: 'cover' });
  bench.mark({ do: 'off', piece: 'cover' });
  bench.mark({ do: 'in', piece: 'cover', holes: ['1', '2'], hand: { kind: 'S' } });
  bench.mark({
    do: 'in',
    piece: 'cover',
    holes: ['3'],
    hand: { kind: 'S' },
    because: 'had no other',
  });
  const now = '2026-04-11T20:00:00+02:00';
  const items = () => gate(bench.job, 'start', null, now).items.map(({ say }) => say);
  expect(items()).toContain('Cover: 3 has S, not M.');
  expect(new Desk(bench).open('cover').press('escape').frame).toContain('M, S in!');
  bench.mark({ do: 'settle', piece: 'cover', hole: '3', kind: 'S' });
  expect(items().join(' ')).not.toContain('not M');
});

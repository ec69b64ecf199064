import { expect, it } from 'vitest';
import { Bench } from '../../job/bench.ts';
import { Desk } from '../desk.ts';

const COVER = `putback: 1
job: Cover
bolts: {S: M6x25}
pieces:
  cover: {bolts: S S S, torque: 12 N·m}
diary:
`;

it('a hole whose thread is to be mended is named when all others are in', () => {
  const bench = new Bench(COVER);
  bench.mark({ do: 'out', piece: 'cover' });
  bench.mark({ do: 'state', piece: 'cover', hole: '2', state: 'pulled' });
  bench.mark({ do: 'off', piece: 'cover' });
  bench.mark({ do: 'on', piece: 'cover' });
  const desk = new Desk(bench).open('cover').press('p').press('s a');
  expect(bench.states()).toBe('in out in');
  expect(desk.frame).toContain('All in but 2, 2 of them by fingers only.');
});

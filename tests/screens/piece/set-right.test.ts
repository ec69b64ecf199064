import { expect, it } from 'vitest';
import { Bench } from '../../job/bench.ts';
import { Desk } from '../desk.ts';

const AXLE = `putback: 1
job: Wheel
bolts: {S: M8x40}
pieces:
  plate: {bolts: S S S, torque: 20 N·m, passes: [snug, full]}
diary:
`;

it('what was set too tight is told on its page, and set right from there, bolt by bolt', () => {
  const bench = new Bench(AXLE);
  bench.mark({ do: 'out', piece: 'plate' });
  bench.mark({ do: 'in', piece: 'plate', hand: { kind: 'S' } });
  bench.mark({ do: 'tight', piece: 'plate' });
  bench.mark({ do: 'tight', piece: 'plate', holes: ['1'] });
  bench.mark({ do: 'tight', piece: 'plate', holes: ['2', '3'], set: '26 N·m' });
  const desk = new Desk(bench);
  expect(desk.frame).toContain('! 2 and 3 set to 26 N·m, not 20 N·m');
  desk.open('plate');
  expect(desk.frame).toContain('2 and 3 set to 26 N·m, not 20 N·m.');
  expect(desk.frame).toContain('t set it right');
  desk.press('t');
  expect(desk.frame).toContain('2 was set to 26 N·m. Let it go, then tighten it to 20 N·m.');
  desk.press('space');
  expect(bench.entries.at(-1)).toMatchObject({ value: 'full', hole: ['2'], set: '20 N·m' });
  desk.open('plate').press('t').press('space');
  expect(bench.entries.at(-1)).toMatchObject({ value: 'full', hole: ['3'], set: '20 N·m' });
  expect(desk.open('plate').frame).not.toContain('set to 26');
});

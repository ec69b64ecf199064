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

it('a bolt that broke off is not counted among those in the tray', () => {
  const bench = new Bench(COVER);
  bench.mark({ do: 'out', piece: 'cover', holes: ['1', '3'] });
  bench.mark({ do: 'state', piece: 'cover', hole: '2', state: 'sheared' });
  const desk = new Desk(bench).open('cover');
  for (let i = 0; i < 3 && desk.screen !== 'field'; i += 1) desk.press('enter');
  desk.type('cup 3').press('enter');
  expect(desk.frame).toContain('Cover is off, 2 of 3 bolts in cup 3.');
});

it('what is noted of a hole is marked first where one asks what is wrong with it', () => {
  const bench = new Bench(COVER);
  bench.mark({ do: 'out', piece: 'cover', holes: ['1'] });
  bench.mark({ do: 'state', piece: 'cover', hole: '2', state: 'rounded' });
  const desk = new Desk(bench).open('cover').press('2').press('-');
  expect(desk.frame).toContain('Noted: head rounded.');
  expect(desk.frame).toContain('> r   head rounded');
});

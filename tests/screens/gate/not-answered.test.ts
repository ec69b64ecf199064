/** All is ticked by one key: what is a question has no answer by that, and is said to have none. */
import { expect, it } from 'vitest';
import { Bench } from '../../job/bench.ts';
import { Desk } from '../desk.ts';

const COVER = (joint: string) => `putback: 1
job: Cover
bolts: {S: M6x25}
pieces:
  cover: {bolts: S S S, torque: 12 N·m, joint: ${joint}}
diary:
`;
function past(joint: string): Desk {
  const bench = new Bench(COVER(joint));
  bench.mark({ do: 'out', piece: 'cover' });
  bench.mark({ do: 'off', piece: 'cover' });
  const desk = new Desk(bench).open('cover').press('enter');
  for (let i = 0; i < 5 && desk.screen === 'gate'; i += 1) desk.press('a');
  expect(desk.screen).toBe('on');
  return desk;
}

it('names what is left to answer, once the joint is passed', () => {
  expect(past('paper gasket').frame.replace(/\s+/g, ' ')).toContain(
    'Not answered by that: A new one, or does the old one do: gasket?',
  );
});

it('says nothing where nothing was asked', () => {
  expect(past('two dowels').frame).not.toContain('Not answered');
});

/** A piece named with a slip of the pen is asked about once, as commands do. */
import { expect, it } from 'vitest';
import { Bench } from '../../job/bench.ts';
import { Desk } from '../desk.ts';

const named = (text: string) => new Desk(new Bench()).press('o').type(text).press('enter');

it('asks whether the piece was meant that is there, and opens it by one key', () => {
  const desk = named('covers');
  expect(desk.screen).toBe('field');
  expect(desk.frame).toContain('Did you mean Cover?');
  expect(desk.frame).toContain('Up Cover');
  expect(desk.bench.job.pieces.has('covers')).toBe(false);
  desk.press('up');
  expect(desk.state.view).toMatchObject({ screen: 'piece', piece: 'cover' });
});

it('makes the other one by Enter once more, with its bolts', () => {
  const desk = named('covers 3').press('enter');
  expect(desk.state.view).toMatchObject({ screen: 'piece', piece: 'covers' });
  expect(desk.bench.job.pieces.get('covers')?.holes).toHaveLength(3);
});

it('asks anew of another name, and nothing of one that is like none', () => {
  const desk = named('covers').press('backspace backspace').type('re').press('enter');
  expect(desk.frame).toContain('Did you mean Cover?');
  expect(named('fuel pipe').state.view).toMatchObject({ screen: 'piece', piece: 'fuel-pipe' });
  expect(named('cover').state.view).toMatchObject({ screen: 'piece', piece: 'cover' });
});

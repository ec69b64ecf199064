/** Backspace takes the last mark back on every screen of a job, or says where it stands. */
import { describe, expect, it } from 'vitest';
import { keyOf } from '../../src/screens/show/keys.ts';
import { openOf } from '../../src/screens/show/screens.ts';
import { Bench } from '../job/bench.ts';
import { Desk } from './desk.ts';
import { everyScreen } from './every-screen.ts';

/** One bolt out in this sitting, and back at the job. */
const marked = () => new Desk(new Bench()).open('lever').press('enter space');

describe('Backspace', () => {
  const none = ['wait', 'bench', 'faults', 'unsaved', 'keys', 'add'];
  it.each(
    everyScreen()
      .filter(({ state }) => !none.includes(state.view.screen) && openOf(state).text() === null)
      .map((s) => [s.name, s.state] as const),
  )('is a key: %s', (_name, state) => {
    expect(keyOf(openOf(state), 'backspace')).not.toBeNull();
  });

  it.each([
    ['the job', ''],
    ['what must be had', 'b'],
    ['what is to be tested', 't'],
    ['where it stands', 'w'],
    ['what is known of another piece', 'enter k'],
    ['the gate before the start', 's'],
  ])('on %s takes back what was marked elsewhere, and names it', (_name, keys) => {
    const desk = marked().press('escape escape');
    desk.state = { ...desk.state, view: { screen: 'job', here: 'hose' } };
    desk.press(`${keys} backspace`);
    expect(desk.bench.states('lever')).toBe('home');
    expect(desk.frame).toContain('Taken back: Lever: all out: S.');
  });

  it('on a piece of which nothing is left says where the last mark is', () => {
    const desk = marked();
    desk.open('cover').press('backspace');
    expect(desk.frame).toMatch(
      /Nothing of this piece is left to take back\. The last mark is Lever: all\s+out:\s+S\./,
    );
    expect(desk.bench.states('lever')).toBe('out');
  });

  it('asks about a mark of an earlier day at its piece, and elsewhere says so', () => {
    const bench = new Bench();
    bench.mark({ do: 'out', piece: 'lever' });
    const desk = new Desk(bench).press('backspace');
    expect(desk.frame).toContain('The last mark is of an earlier sitting: Lever: all out: S.');
    expect(bench.states('lever')).toBe('out');
    expect(desk.open('lever').press('backspace').screen).toBe('sure');
  });

  it('says so where there is nothing', () => {
    expect(new Desk(new Bench()).press('backspace').frame).toContain(
      'Nothing is left to take back.',
    );
  });
});

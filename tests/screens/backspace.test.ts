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
  const none = ['wait', 'due', 'bench', 'faults', 'unsaved', 'keys', 'add'];
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

describe('a piece that was just named', () => {
  const named = (text: string) =>
    new Desk(new Bench('putback: 1\njob: Cover weeps\n')).press('o').type(text).press('enter');

  it('keeps its count: Backspace under a question about a bolt says so, and no screen stands empty', () => {
    const desk = named('cover 9');
    expect(desk.screen).toBe('off');
    desk.press('-');
    expect(desk.screen).toBe('trouble');
    desk.press('backspace');
    expect(desk.frame).toContain('how many bolts it has');
    desk.press('escape');
    expect(desk.frame).toContain('off, 0 of 9 out');
    // At its gate likewise.
    desk.press('a g backspace');
    expect(desk.bench.piece().holes).toHaveLength(9);
  });

  it('without bolts says that nobody noted any, and Enter twice that it has none', () => {
    const desk = named('pipe').press('enter');
    expect(desk.frame).toContain('How it came out');
    expect(desk.frame).not.toContain('0 of 0');
    desk.press('enter');
    expect(desk.frame).toContain('Enter again if it has no bolts.');
    desk.press('enter');
    expect(desk.frame).toContain('Look for what holds it before you pull');
    expect(desk.bench.entries).toEqual([]);
    desk.press('enter');
    expect(desk.bench.piece('pipe').away).toBe('removed');
  });
});

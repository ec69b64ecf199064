import { describe, expect, it } from 'vitest';
import { Bench } from '../job/bench.ts';
import { Desk } from './desk.ts';

const EMPTY = 'putback: 1\njob: Nothing yet\ndiary:\n';

/** Counts what is pressed, from the empty job on. */
function counted(keys: (press: (words: string) => void, type: (text: string) => void) => void) {
  const desk = new Desk(new Bench(EMPTY));
  let n = 0;
  keys(
    (words) => {
      n += words.split(' ').length;
      desk.press(words);
    },
    (text) => {
      n += [...text].length;
      desk.type(text);
    },
  );
  return { desk, presses: n };
}

describe('taken off as it comes, from an empty job', () => {
  it('ten bolts and where they lie are noted in under thirty presses, no map and no millimetre asked', () => {
    const { desk, presses } = counted((press, type) => {
      press('o');
      type('cover 10');
      press('enter a');
      press('go');
      type('cup 1');
      press('enter');
    });
    expect(presses).toBeLessThan(30);
    const piece = desk.bench.piece('cover');
    expect(piece.holes.map((h) => h.state)).toEqual(Array(10).fill('out'));
    expect(piece).toMatchObject({ away: 'removed', tray: 'cup 1', where: 'open' });
    expect(desk.screen).toBe('job');
    expect(desk.frame).toMatch(/Cover {2,}off, bolts in cup 1/);
  });

  it('bolts by their row as well', () => {
    const { desk, presses } = counted((press, type) => {
      press('o');
      type('cover s s s m s');
      press('enter a');
    });
    expect(presses).toBeLessThan(30);
    expect(desk.screen).toBe('off-count');
    expect(desk.frame).toContain('5 of 5 out');
    const found = desk.bench.piece('cover').holes.map((h) => h.found?.kind);
    expect(found).toEqual(['S', 'S', 'S', 'M', 'S']);
  });

  it('naming it and its bolts takes none of them out: that is a key a bolt, or one for all', () => {
    const desk = new Desk(new Bench(EMPTY)).press('o').type('cover 4').press('enter');
    expect(desk.bench.states('cover')).toBe('home home home home');
    expect(desk.bench.entries.map((e) => [e.verb, e.value, e.says])).toEqual([
      ['written', 'bolts', '? ? ? ?'],
    ]);
    expect(desk.frame).toContain('off, 0 of 4 out');
    desk.press('space');
    expect(desk.bench.states('cover').split(' ').sort()).toEqual(['home', 'home', 'home', 'out']);
    desk.press('3 - s a');
    expect(desk.frame).toContain('3 of 4 out');
    expect(desk.frame).toContain('Do not pry.');
  });

  it('Backspace takes bolts back, one mark after the other, and never how many there are', () => {
    const desk = new Desk(new Bench(EMPTY)).press('o').type('cover 4').press('enter space a');
    desk.press('backspace backspace backspace backspace');
    expect(desk.bench.states('cover')).toBe('home home home home');
    expect(desk.frame).toContain('The last mark is how many bolts it has.');
    // A piece that was named wrong goes from the job, as that says.
    for (let i = 0; i < 3 && desk.screen !== 'job'; i += 1) desk.press('escape');
    desk.press('backspace');
    expect(desk.frame).toContain('Taken back: Cover: bolts written down');
  });

  it('how many bolts it has can be put right where they are known, or by a row typed twice', () => {
    const desk = new Desk(new Bench(EMPTY)).press('o').type('lid 4').press('enter escape k');
    expect(desk.frame).toContain('4, nobody has named them');
    while (!/> Bolts/.test(desk.frame)) desk.press('down');
    desk.press('enter').type('5').press('enter escape');
    expect(desk.bench.piece('lid').holes).toHaveLength(5);
    desk.press('r').type('s s m s s s').press('enter');
    expect(desk.frame).toContain('Enter again if it has 6.');
    expect(desk.bench.piece('lid').holes).toHaveLength(5);
    desk.press('enter');
    expect(
      desk.bench
        .piece('lid')
        .holes.map((h) => h.found?.kind)
        .join(' '),
    ).toBe('S S M S S S');
    expect(desk.screen).toBe('off-count');
  });

  it('one bolt that nobody could name is put right on the screen', () => {
    const one = 'putback: 1\njob: Weeps\npieces: {lid: {bolts: "?"}}\ndiary:\n';
    const desk = new Desk(new Bench(one)).open('lid').press('k');
    desk.press('enter').type('s s m').press('enter');
    expect(desk.bench.text).toContain('lid: {bolts: S S M}');
    expect(desk.bench.text).not.toContain('?');
  });

  it('a hose is off with one key, and what is to be said of it is asked while it is in the hand', () => {
    const desk = new Desk(new Bench(EMPTY)).press('o').type('breather hose').press('enter o');
    expect(desk.bench.piece('breather-hose')).toMatchObject({ away: 'removed' });
    expect(desk.frame).toContain('How does it run?');
    desk.type('over the frame tube').press('enter');
    expect(desk.bench.entries.map((e) => [e.verb, e.value])).toEqual([
      ['removed', 'all'],
      ['written', 'routes'],
    ]);
    expect(desk.screen).toBe('job');
  });

  it('or moved aside, and nothing is an answer too', () => {
    const desk = new Desk(new Bench(EMPTY)).press('o').type('cable').press('enter v');
    expect(desk.bench.piece('cable').away).toBe('aside');
    desk.press('enter');
    expect(desk.screen).toBe('job');
    expect(desk.bench.entries).toHaveLength(1);
    expect(desk.frame).toMatch(/Cable {2,}moved aside, still connected/);
  });

  it('bolts that nobody told apart go back all the same: one by one, or all with one key', () => {
    const desk = new Desk(new Bench(EMPTY)).press('o').type('cover 4').press('enter a go enter');
    desk.open('cover').press('go');
    expect(desk.frame).toContain('Nobody noted which is which');
    desk.press('go');
    expect(desk.bench.states('cover')).toBe('in out out out');
    desk.press('a');
    expect(desk.bench.states('cover')).toBe('in in in in');
    expect(desk.frame).toContain('All in, 4 of them by fingers only.');
  });

  it('a bolt that nobody can name goes into no hole that takes a known one', () => {
    const bench = new Bench().openCover();
    const refused = bench.refusal({ do: 'in', piece: 'cover', holes: ['3'], hand: { kind: '?' } });
    expect(refused).toMatchObject({ code: 'wrong-bolt' });
  });

  it('going back reverses what really happened', () => {
    const desk = new Desk(new Bench(EMPTY));
    for (const name of ['panel 2', 'cover 3']) {
      desk.press('o').type(name).press('enter a go enter');
    }
    const rows = desk.frame.split('\n');
    const at = (name: string) => rows.findIndex((r) => r.includes(name));
    expect(at('Panel')).toBeLessThan(at('Cover'));
    expect(desk.frame).toMatch(/> Cover/);
  });

  it('what the file knows is not typed over', () => {
    const desk = new Desk(new Bench()).press('o').type('cover 3').press('enter');
    expect(desk.bench.entries).toHaveLength(0);
    expect(desk.bench.piece().holes).toHaveLength(5);
  });

  it('a piece that was only named is not lost: it is said, and its name stands there again', () => {
    const desk = new Desk(new Bench(EMPTY)).press('o').type('engine side cover').press('enter');
    desk.press('escape');
    expect(desk.frame).toContain('Engine side cover is not in the file yet');
    expect(desk.press('o').frame).toContain('> Engine side cover');
  });

  it('a wheel is not asked how it runs', () => {
    const desk = new Desk(new Bench('putback: 1\njob: A\npieces: {front-wheel: {}}\ndiary:\n'));
    desk.open('front-wheel').press('o go enter');
    expect(desk.bench.piece('front-wheel').away).toBe('removed');
    expect(desk.frame).not.toContain('How does it run?');
  });
});

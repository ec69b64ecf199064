/** What is under the finger stays there: rows of a list while one is in it, holes of a piece whatever is said of them. */
import { describe, expect, it } from 'vitest';
import { Bench, COVER } from '../job/bench.ts';
import { Desk } from './desk.ts';
import { CASE, caseOpen } from './plan-jobs.ts';

/** Rows of a list by what they begin with, from above. */
function rowsSeen(desk: Desk, names: readonly string[]): string[] {
  return desk.rows.flatMap((row) =>
    names.filter((name) => row.replace(/^> ?/, '').trim().startsWith(name)),
  );
}
/** The line on which the mark stands, and what it marks. */
const marked = (desk: Desk) => {
  const at = desk.rows.findIndex((row) => row.startsWith('> '));
  return [at, desk.rows[at]?.slice(2).trim().split(/ {2}/)[0]];
};

describe('a list', () => {
  it('of parts keeps its order when one that came on it by itself is ordered', () => {
    const text = `${CASE.replace(/buy:[\s\S]*?(?=diary)/, '')}`;
    const desk = new Desk(caseOpen(text)).press('b');
    const all = desk.rows.filter((row) => /to get|to hand\?/.test(row)).length;
    expect(all).toBeGreaterThan(0);
    const before = marked(desk);
    desk.press('enter').type('5 days').press('enter');
    expect(desk.screen).toBe('parts');
    expect(marked(desk)).toEqual(before);
    desk.press('backspace');
    expect(marked(desk)).toEqual(before);
  });

  it('of parts: a listed one that comes to its end stays between the others', () => {
    const names = ['cover gasket', 'wire inserts', 'sealant'];
    const desk = new Desk(caseOpen()).press('b');
    const before = rowsSeen(desk, names);
    desk.press('down enter').type('5 days').press('enter enter');
    expect(rowsSeen(desk, names)).toEqual(before);
    expect(marked(desk)[1]).toContain('wire inserts');
  });

  it('of pieces and tasks keeps its order when a task is done out of its turn, and when that is taken back', () => {
    const names = ['Lever', 'Fuel pipe', 'Case cover', 'Scrape', 'Lever play', 'Fill', 'Five'];
    const desk = new Desk(caseOpen());
    const before = rowsSeen(desk, names);
    desk.state = { ...desk.state, view: { ...desk.state.view, ...{ here: ':scrape' } } };
    desk.press('enter enter');
    expect(desk.screen).toBe('job');
    expect(rowsSeen(desk, names)).toEqual(before);
    const at = marked(desk);
    desk.press('backspace');
    expect(rowsSeen(desk, names)).toEqual(before);
    expect(marked(desk)).toEqual(at);
  });

  it('takes what is new in behind what it follows, and the mark stays', () => {
    const desk = new Desk(caseOpen()).press('down up down');
    const at = marked(desk);
    desk.press('+').type('do: rub the seat').press('enter enter');
    expect(desk.frame).toContain('rub the seat');
    expect(marked(desk)[1]).toBe(at[1]);
  });

  it('of tests keeps its order when one passed', () => {
    const rows = (desk: Desk) =>
      desk.rows.flatMap((row) => /^..\S.*?(Lever play|Five min)/.exec(row)?.[1] ?? []);
    const desk = new Desk(caseOpen()).press('t');
    const before = rows(desk);
    expect(before).toHaveLength(2);
    // Out of its turn it is noted with a word.
    desk.press('enter r').type('3 mm').press('enter');
    expect(desk.screen).toBe('tests');
    expect(desk.bench.entries.at(-1)).toMatchObject({ verb: 'done', task: 'play' });
    expect(rows(desk).slice(0, before.length)).toEqual(before);
  });
});

describe('the holes of a piece', () => {
  /** Row and column of each hole, whatever stands beside it. */
  function places(desk: Desk): string[] {
    return desk.rows
      .flatMap((row, y) =>
        [...row.matchAll(/[|([!<]\s*(\d+)[|)\]!>]/g)].map((m) => `${m[1]} ${y} ${m.index}`),
      )
      .sort();
  }

  it('stay where they are when what came out has a longer name than what was known', () => {
    const text = COVER.replace('S S M+clip L S', '"? ? ? ? ? ? ?"');
    const desk = new Desk(new Bench(text)).open('cover').press('enter');
    const before = places(desk);
    expect(before).toHaveLength(7);
    desk.press('1 m + c l i p enter');
    desk.press('2 s + c o p p e r enter');
    expect(desk.frame).toContain('M clip');
    expect(places(desk)).toEqual(before);
  });

  it('stand at the same place off, on and tight', () => {
    const desk = new Desk(new Bench().openCover()).open('cover');
    const look = places(desk);
    desk.press('g a a escape');
    desk.state = {
      ...desk.state,
      view: { screen: 'piece', piece: 'cover', step: { step: 'tight', here: null, typed: '' } },
    };
    const columns = (all: readonly string[]) => all.map((p) => p.split(' ')[2]);
    expect(columns(places(desk))).toEqual(columns(look));
  });
});

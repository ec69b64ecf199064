/** What the screens say, read aloud as somebody at a bench would: phrases that were stumbled over stay away. */
import { describe, expect, it } from 'vitest';
import { printFault } from '../../src/job/faults/print.ts';
import { readJob } from '../../src/job/read.ts';
import { readOut } from '../../src/screens/show/read-out.ts';
import { Bench, COVER } from '../job/bench.ts';
import { Desk } from './desk.ts';
import { everyScreen } from './every-screen.ts';
import { caseOpen, caseShut } from './plan-jobs.ts';

const STUMBLED: readonly RegExp[] = [
  /against the clock/,
  /the other way round/,
  /nothing is an answer/i,
  /\bhome\b/,
  // `labels` stands before what they are for.
  /\b(?!labels)([a-z]{2,}) \1\b/,
  /\?[.;:]/,
  /[a-z]\? Space/,
  /\.\.(?!\d|\.)\s/,
  /\b1 (?:bolts|parts|tests|looks|jobs|pieces|holes)\b/,
  /undefined|null|NaN|\[object/,
];

describe('every screen, read aloud', () => {
  const screens = everyScreen();
  it.each(STUMBLED.map((p) => [p.source, p] as const))('never says %s', (_source, pattern) => {
    const said = screens.flatMap(({ name, state }) =>
      readOut(state)
        .filter((line) => pattern.test(line))
        .map((line) => `${name}: ${line}`),
    );
    expect(said).toEqual([]);
  });
});

describe('what was stumbled over', () => {
  it('a piece is coming off until it is off', () => {
    const desk = new Desk(new Bench()).open('cover').press('enter a');
    expect(desk.screen).toBe('off-count');
    expect(desk.rows[0]).toMatch(/ coming off *$/);
    expect(desk.press('enter enter').frame).toMatch(/> +Cover +off/);
  });

  it('the last bolt comes out last', () => {
    const desk = new Desk(new Bench()).open('lever').press('enter');
    expect(desk.frame).toContain('Last to come out: 1.');
  });

  it('bolts lie in the lid, however the place was typed', () => {
    const bench = new Bench();
    bench.mark({ do: 'out', piece: 'lever' });
    bench.mark({ do: 'off', piece: 'lever', tray: 'in the lid' });
    const desk = new Desk(bench);
    expect(desk.frame).toContain('bolts in the lid');
    expect(desk.open('lever').frame).not.toMatch(/\bin in\b/i);
  });

  it('all tests are passed only where there is one', () => {
    expect(new Desk(new Bench()).press('t').frame).not.toContain('all passed');
    const bench = caseShut();
    bench.mark({ do: 'done', task: 'play', was: '5', set: '3' });
    bench.mark({ do: 'done', task: 'fill' });
    bench.mark({ do: 'done', task: 'weep', result: 'passed' });
    const desk = new Desk(bench).press('t');
    expect(desk.frame).toMatch(/all passed|not passed/);
  });

  it('a test is passed by its letter, and the foot says so with a verb', () => {
    const bench = caseShut();
    bench.mark({ do: 'done', task: 'fill' });
    const desk = new Desk(bench);
    desk.state = { ...desk.state, view: { screen: 'task', task: 'weep', under: desk.state.view } };
    expect(desk.rows.at(-1)).toMatch(/^p passed /);
    expect(desk.rows.at(-1)).not.toContain('Space');
  });

  it('a letter that is no kind is told with its line and the way out', () => {
    const { faults } = readJob(COVER.replace('S S M+clip L S', 'S S Q L S'), 'cover.yaml');
    const said = faults.map(printFault).join('\n');
    expect(said).toMatch(/cover\.yaml:12:\d+: warning: no kind Q is listed under bolts/);
    expect(said).toContain('If it is a kind of its own, add it there: Q: M6x25');
  });

  it('a figure stays in the unit in which somebody typed it', () => {
    const text = COVER.replace('10 N·m, manual 2-17', '88 in-lb, manual 2-17');
    expect(new Desk(new Bench(text)).open('cover').frame).toContain('88 in-lb, manual 2-17');
  });

  it('what is left over asks which is missing only where one is', () => {
    const bench = caseOpen();
    const desk = (left: string) =>
      new Desk(bench).open('case-cover').press('l').type(left).press('enter').frame;
    expect(desk('3 S, M')).not.toMatch(/missing/);
    expect(desk('2 S, M')).toMatch(/missing|too few/);
  });
});

/** Anything, from any screen of a job, with one key and one line. */

import { describe, expect, it } from 'vitest';
import { asPrinted } from '../../../src/model/said.ts';
import { Bench, COVER } from '../../job/bench.ts';
import { Desk } from '../desk.ts';

const desk = (bench = new Bench()) => new Desk(bench);
const task = (d: Desk, key: string) => d.bench.job.tasks.get(key)?.spec;

describe('one line', () => {
  it('lands on the piece at hand as what it most likely is', () => {
    const d = desk().open('cover').press('=').type('spring, goggles!').press('enter');
    expect(d.frame).toContain('Cover: a caution, read before its bolts?');
    d.press('enter');
    expect(d.frame).toContain('Cover: a caution: spring, goggles!');
    expect(d.screen).toBe('look');
    expect(d.bench.piece().spec.caution.removal).toEqual([asPrinted('spring, goggles!')]);
  });

  it('a part in three keys and its text', () => {
    const d = desk().open('cover').press('+').type('6204 bearing').press('enter enter');
    expect(d.bench.job.upper.buys.get('6204-bearing')).toMatchObject({
      what: '6204 bearing',
      for: ['cover on'],
    });
  });

  it('how far a part has come, said behind its name, is noted of it', () => {
    const d = desk().open('cover').press('+').type('cover gasket, ordered').press('enter b');
    const [made] = d.bench.job.upper.buys.values();
    expect(made).toMatchObject({ what: 'cover gasket' });
    expect(d.bench.entries.at(-1)).toMatchObject({ buy: made?.key, value: 'ordered' });
    expect(d.frame).toContain('cover gasket: ordered.');
    expect(d.screen).toBe('look');
  });

  it.each([
    ['b', 'buys'],
    ['d', 'do'],
    ['m', 'test'],
    ['s', 'adjust'],
    ['w', 'wait'],
    ['e', 'decide'],
  ])('is something else by its letter %s', (letter, as) => {
    const d = desk().open('cover').press('+').type('brown sludge').press(`enter ${letter}`);
    const { tasks, buys } = d.bench.job.upper;
    const [made] = as === 'buys' ? buys.values() : tasks.values();
    expect(made).toMatchObject(as === 'buys' ? { what: 'brown sludge' } : { verb: as });
  });

  it('a look for the fault is k: it lands among the looks, and what it lacks is said', () => {
    const d = desk().open('cover').press('+').type('blue spark').press('enter k');
    expect(d.bench.text).toContain('checks:\n  blue-spark: {check: blue spark, under: cover}\n');
    expect(d.frame.replace(/\s+/g, ' ')).toContain('It shows none of the suspects yet');
    d.press('backspace');
    expect(d.bench.text).toBe(COVER);
  });

  it('a test has its limit from the end of the line', () => {
    const d = desk().open('cover').press('+').type('coil 0.8..1.2 ohm').press('enter enter');
    expect(task(d, 'coil')).toMatchObject({
      say: asPrinted('coil'),
      limit: asPrinted('0.8..1.2 ohm'),
    });
    expect(d.bench.text).toContain('coil: {test: coil, limit: 0.8..1.2 ohm, while: cover off}');
  });

  it('a tip and a caution only stand at a piece', () => {
    const d = desk().press('+').type('goggles!').press('enter 0');
    expect(d.frame).toContain('The whole job: a note?');
    d.press('c t');
    expect(d.bench.entries).toEqual([]);
    d.press('enter');
    expect(d.bench.entries).toMatchObject([{ verb: 'note', value: 'goggles!' }]);
  });

  it('of a hole that was pointed at; 0 takes it up to the piece and to the job', () => {
    const d = desk().open('cover').press('3 +').type('goggles!').press('enter');
    expect(d.frame).toContain('Cover, hole 3: a caution');
    d.press('0');
    expect(d.frame).toContain('Cover: a caution');
    d.press('0 d');
    expect(task(d, 'goggles')).toMatchObject({ verb: 'do', while: [] });
  });

  it('Esc leads back to the line as it was typed, and a second time leaves it as a draft', () => {
    const d = desk().open('cover').press('+').type('6204 bearing').press('enter escape');
    expect(d.frame).toContain('> 6204 bearing');
    d.press('escape');
    expect(d.screen).toBe('look');
    d.press('+');
    expect(d.frame).toContain('> 6204 bearing');
  });

  it('a line that was left is said to be taken up again, and what is typed over it takes its place', () => {
    const d = desk().open('cover').press('+').type('torque 12 N·m').press('enter escape escape');
    d.press('+');
    expect(d.frame).toContain('> torque 12 N·m');
    expect(d.frame).toContain('This was left half written.');
    d.type('gasket 11394').press('enter enter');
    expect(d.bench.job.upper.buys.get('gasket-11394')?.what).toBe('gasket 11394');
    // An arrow goes on with it.
    const more = desk().open('cover').press('+').type('6204').press('escape + left right');
    expect(more.type(' bearing').frame).toContain('> 6204 bearing');
  });

  it('a figure of torque at a piece is its torque first', () => {
    const empty = new Bench('putback: 1\njob: A\npieces: {lid: {bolts: S S}}\ndiary:\n');
    const d = desk(empty).open('lid').press('+').type('torque 12 N·m').press('enter');
    expect(d.frame).toContain('Lid: its torque, as the manual prints it?');
    d.press('enter');
    expect(d.bench.text).toMatch(/torque: 12 N·m/);
    expect(d.frame).toContain('Its torque: 12 N·m.');
    const not = desk().open('cover').press('+').type('torque wrench 12').press('enter');
    expect(not.frame).not.toContain('its torque, as the manual prints it');
  });

  it('a Space decides nothing', () => {
    const d = desk().open('cover').press('+').type('6204 bearing').press('enter space space');
    expect(d.screen).toBe('add');
    expect(d.bench.entries).toEqual([]);
  });

  it('at a gate it is one thing more to be seen to there, or anything else', () => {
    const d = new Desk(new Bench().openCover()).open('cover').press('g +');
    d.type('washer under the clip').press('enter enter');
    expect(d.screen).toBe('gate');
    expect(d.bench.entries.at(-1)).toMatchObject({ verb: 'added', says: 'washer under the clip' });
    d.press('+').type('6204 bearing').press('enter b');
    expect(d.screen).toBe('gate');
    expect(d.bench.entries.at(-1)).toMatchObject({ verb: 'written', value: 'buy' });
  });

  it('behind the letter of a kind + is still what lies under its head', () => {
    const d = desk().open('cover').press('enter').press('enter');
    d.state = { ...d.state, view: { screen: 'piece', piece: 'cover', step: off() } };
    d.press('m =').type('clip');
    expect(d.frame).toContain('clip');
    expect(d.screen).toBe('off');
  });

  it('is taken back with one key, and the file is as it was', () => {
    const d = desk().open('cover').press('+').type('6204 bearing').press('enter enter backspace');
    expect(d.frame).toContain('Taken back');
    expect(d.bench.text).toBe(COVER);
  });
});

const off = () => ({ step: 'off', here: null, typed: '', hand: '' }) as const;

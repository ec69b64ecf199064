/** A key held down: it opens and marks what one press does, and answers nothing more. */
import { describe, expect, it } from 'vitest';
import { Bench } from '../job/bench.ts';
import { Desk } from './desk.ts';

const EMPTY = 'putback: 1\njob: Brakes\npieces:\ndiary:\n';
const COVER = `putback: 1
job: Cover
bolts: {S: M6x25}
pieces:
  cover: {bolts: S S S, torque: 12 N·m, joint: gasket}
diary:
`;
const TEST = `putback: 1
job: Cover
pieces: {lever: {}}
tasks: {free: {test: moves free and comes back?, after: lever on}}
diary:
`;
const verbs = (desk: Desk) => desk.bench.entries.map((e) => e.verb);

describe('Enter held down', () => {
  it('takes no brake caliper off, on or tight: neither its caution nor its tray is answered', () => {
    const desk = new Desk(new Bench(EMPTY)).press('o').type('front brake caliper 2');
    desk.hold('enter', 60);
    expect(verbs(desk)).toEqual(['written']);
    // Pressed anew it goes as far as the next question, and no further.
    for (let i = 0; i < 4; i += 1) desk.hold('enter', 60);
    const caliper = desk.bench.piece('front-brake-caliper');
    expect(caliper.holes.every((h) => h.state !== 'in' && h.state !== 'tight')).toBe(true);
    expect(verbs(desk).filter((v) => v === 'out').length).toBeLessThanOrEqual(2);
  });

  it('says that it was still down', () => {
    const desk = new Desk(new Bench(COVER)).open('cover').hold('enter', 1);
    desk.hold('enter', 3);
    expect(desk.frame).toContain('That key was still down.');
  });

  it('gives each bolt one click, and begins no pass', () => {
    const bench = new Bench(COVER);
    bench.mark({ do: 'out', piece: 'cover' });
    bench.mark({ do: 'off', piece: 'cover' });
    bench.mark({ do: 'on', piece: 'cover' });
    bench.mark({ do: 'in', piece: 'cover', hand: { kind: 'S' } });
    const desk = new Desk(bench).open('cover').press('t').hold('enter', 60);
    expect(bench.piece('cover').holes.flatMap((h) => h.passes)).toEqual(['snug']);
    // Space is the mark, and no more than one.
    desk.hold('space', 60);
    expect(bench.piece('cover').holes.flatMap((h) => h.passes)).toEqual(['snug', 'snug']);
  });

  it('takes no more bolts out or in than a hand that taps: then it is told from one', () => {
    const rim = COVER.replace('S S S', 'S S S S S S S S S');
    for (const [key, most] of [
      ['space', 3],
      ['enter', 1],
    ] as const) {
      const bench = new Bench(rim);
      const count = (verb: string) => bench.entries.filter((e) => e.verb === verb).length;
      const desk = new Desk(bench).open('cover').press('enter').hold(key, 40);
      expect(count('out')).toBe(most);
      expect(desk.frame).toContain('That key was still down.');
      bench.mark({ do: 'out', piece: 'cover' });
      bench.mark({ do: 'off', piece: 'cover' });
      bench.mark({ do: 'on', piece: 'cover' });
      const on = new Desk(bench).open('cover').press('s').hold(key, 40);
      expect(count('in')).toBe(most);
      expect(on.frame).toContain('That key was still down.');
    }
  });

  it('is no click of a wrench: a pass with a figure takes a press a bolt', () => {
    const bench = new Bench(COVER);
    bench.mark({ do: 'out', piece: 'cover' });
    bench.mark({ do: 'off', piece: 'cover' });
    bench.mark({ do: 'on', piece: 'cover' });
    bench.mark({ do: 'in', piece: 'cover', hand: { kind: 'S' } });
    bench.mark({ do: 'tight', piece: 'cover' });
    const full = () =>
      bench.piece('cover').holes.flatMap((h) => (h.passes.includes('full') ? [h.name] : []));
    const desk = new Desk(bench).open('cover').press('t').hold('space', 60);
    expect(full().length).toBe(1);
    expect(desk.frame).toContain('That key was still down.');
    desk.hold('space', 60).hold('space', 60);
    expect(full().length).toBe(3);
  });

  it('passes no test: passed is a letter, and Enter says which', () => {
    const bench = new Bench(TEST);
    bench.mark({ do: 'off', piece: 'lever' });
    bench.mark({ do: 'on', piece: 'lever' });
    const desk = new Desk(bench).press('t enter');
    expect(desk.screen).toBe('task');
    desk.press('enter enter enter').hold('enter', 20);
    expect(verbs(desk)).not.toContain('done');
    expect(desk.press('enter').frame).toContain('Then p: it passed; -: it failed.');
    desk.press('p');
    expect(desk.bench.entries.at(-1)).toMatchObject({ task: 'free', value: 'passed' });
  });

  it('fits no part: that it is here, that it is the right one and that it is in are three presses', () => {
    const bench = new Bench(`putback: 1
job: Cover
pieces: {cover: {bolts: S S, joint: gasket}}
buy: {g: {what: cover gasket, for: cover on}}
diary:
`);
    bench.mark({ do: 'buy', buy: 'g', state: 'ordered' });
    const desk = new Desk(bench).press('b').hold('enter', 20);
    expect(verbs(desk)).toEqual(['done', 'done']);
    expect(bench.entries.at(-1)).toMatchObject({ buy: 'g', value: 'here' });
  });
});

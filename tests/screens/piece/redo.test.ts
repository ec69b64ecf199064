import { describe, expect, it } from 'vitest';
import { Bench, COVER } from '../../job/bench.ts';
import { Desk } from '../desk.ts';

const on = () => new Desk(new Bench().openCover()).open('cover').press('go');
const offered = (desk: Desk) => /\by redo\b/.test(desk.rows.at(-1) ?? '');

describe('redo: what was just taken back stands again', () => {
  it('is offered after taking back, and not before', () => {
    const desk = on().press('s go');
    expect(offered(desk)).toBe(false);
    desk.press('backspace');
    expect(offered(desk)).toBe(true);
    desk.press('y');
    expect(desk.bench.states()).toBe('in out out out out');
    expect(desk.frame).toContain('It stands again: 1 in by fingers: S.');
    expect(offered(desk)).toBe(false);
  });

  it('goes forward step by step, as far as was gone back', () => {
    const desk = on().press('s go go go backspace backspace backspace');
    expect(desk.bench.states()).toBe('out out out out out');
    desk.press(',');
    expect(desk.bench.states()).toBe('in out out out out');
    desk.press(', ,');
    expect(desk.bench.states()).toBe('in in out out in');
    expect(desk.screen).toBe('on');
    const before = desk.bench.entries.length;
    desk.press(',');
    expect(desk.bench.entries.length).toBe(before);
    expect(offered(desk)).toBe(false);
  });

  it('is over once something new was marked on the piece', () => {
    const desk = on().press('s go go backspace m go');
    expect(offered(desk)).toBe(false);
    desk.press(',');
    expect(desk.bench.states()).toBe('in out in out out');
  });

  it('can be taken back in turn, and again', () => {
    const desk = on().press('s go backspace , backspace');
    expect(desk.bench.states()).toBe('out out out out out');
    expect(desk.press(',').bench.states()).toBe('in out out out out');
  });

  it('brings back the last bolt out, a click, and the piece itself', () => {
    const bench = new Bench();
    bench.mark({ do: 'out', piece: 'lever' });
    bench.mark({ do: 'off', piece: 'lever' });
    const desk = new Desk(bench).open('cover').press('go go go go go');
    desk.press('go backspace');
    expect(desk.screen).toBe('off');
    desk.press('y');
    expect(desk.screen).toBe('off-count');
    expect(desk.bench.states()).toBe('out out out out out');
    const tight = new Desk(new Bench(COVER).openCover().fillCover()).open('cover');
    tight.press('go go backspace y');
    expect(tight.screen).toBe('tight');
    expect(tight.frame).toContain('2 of 5 done in this pass');
  });

  it('does not bring back what was taken back in an earlier sitting', () => {
    const desk = on().press('s go backspace');
    const later = new Desk(desk.bench).open('cover').press('go');
    expect(later.screen).toBe('on');
    expect(offered(later)).toBe(false);
    later.press(',');
    expect(later.bench.states()).toBe('out out out out out');
  });

  it('leaves Y to the hand where it is a kind of this job', () => {
    const text = COVER.replace('L: M6x55', 'Y: M6x55').replace('M+clip L S', 'M+clip Y S');
    const desk = new Desk(new Bench(text).openCover()).open('cover').press('go s go backspace');
    expect(desk.rows.at(-1)).toContain(', redo');
    expect(desk.press('y').frame).toContain('In your hand: Y');
  });
});

import { describe, expect, it } from 'vitest';
import { Bench } from '../job/bench.ts';
import { Desk } from './desk.ts';

const practice = () => new Desk(new Bench(), { guide: true });

describe('the practice says what to try', () => {
  it('once at each place, quietly, until the next press', () => {
    const desk = practice();
    expect(desk.frame).toContain('Enter opens the marked piece');
    desk.press('n');
    expect(desk.frame).not.toContain('Enter opens the marked piece');
    desk.press('escape');
    expect(desk.frame).not.toContain('Enter opens the marked piece');
    expect(desk.open('cover').frame).toContain('Enter is the next right thing here');
    for (let n = 0; n < 3 && desk.step !== 'off'; n++) desk.press('go');
    expect(desk.frame).toContain('this one is out');
  });

  it('never in place of what the program has to say', () => {
    const desk = practice().open('cover');
    desk.press('backspace');
    expect(desk.frame).toContain('Nothing of this piece is left to take back.');
  });

  it('which key takes them away, and it does', () => {
    const desk = new Desk(new Bench(), { guide: true, on: { folder: '/bench' } });
    const [, key = ''] = /key (\S+) takes\s+these hints/.exec(desk.frame) ?? [];
    expect(desk.press(key).frame).toContain('No more hints.');
  });

  it('no more after one key, which does nothing elsewhere', () => {
    const desk = practice().press('[');
    expect(desk.frame).toContain('No more hints.');
    expect(desk.open('cover').frame).not.toContain('Enter is the next right thing here');
    const other = new Desk(new Bench());
    const { state } = other;
    const after = other.press('[').state;
    expect({ ...after, quiet: null, blind: false, last: null }).toEqual(state);
    expect(after.quiet).toBe('[ is no key here.');
  });

  it('its text goes into a note and not away', () => {
    const desk = practice().press('n').type('zz');
    expect(desk.frame).toContain('> zz');
  });
});

/** What a pedal can do, or a hand that presses once too often: mark a bolt, turn a page that only tells. */
import { describe, expect, it } from 'vitest';
import { keyIn } from '../../src/screens/show/press.ts';
import { Bench } from '../job/bench.ts';
import { LEFT_COVER } from './covers.ts';
import { Desk } from './desk.ts';
import { everyScreen } from './every-screen.ts';

/** Keys that Space may be: a bolt is marked, a hole drawn, a letter typed, a page turned, a list opened. */
const MARKS = ['out', 'in', 'click', 'put', 'type'];
const TURNS = [
  'open',
  'open-piece',
  'open-test',
  'pieces',
  'again',
  'retry',
  'seen',
  'go-on',
  'read-task',
  'leave-within',
  'close',
];

describe('Space', () => {
  it('marks a bolt or turns a page, on every screen there is', () => {
    const does = everyScreen().map(({ name, state }) => [name, keyIn(state, 'space')?.id ?? null]);
    const more = does.filter(([, id]) => id !== null && ![...MARKS, ...TURNS].includes(id ?? ''));
    expect(more).toEqual([]);
    expect(does.filter(([, id]) => MARKS.includes(id ?? '')).length).toBeGreaterThan(5);
  });

  it('held for as long as one likes takes out what is in, and no piece off', () => {
    const desk = new Desk(new Bench(LEFT_COVER)).open('gear-lever').press('go');
    desk.press('space '.repeat(60));
    const lever = desk.bench.piece('gear-lever');
    expect(lever.holes.map((h) => h.state)).toEqual(['out']);
    expect(lever.away).toBe('no');
  });

  it('held does not take a stuck bolt out, nor leave the STOP in front of it', () => {
    const desk = new Desk(new Bench(LEFT_COVER));
    for (const piece of ['gear-lever', 'sprocket-cover']) {
      desk.bench.mark({ do: 'out', piece });
      desk.bench.mark({ do: 'off', piece });
    }
    desk.open('alternator').press('go');
    desk.press('9 - s').press('space '.repeat(60));
    const cover = desk.bench.piece('alternator');
    expect(cover.holes.filter((h) => h.state !== 'out').map((h) => h.name)).toEqual(['9']);
    expect(cover.away).toBe('no');
    expect(desk.frame).toMatch(/9 is still in/);
    // Enter leads back to that bolt; what it is now takes its own key.
    desk.press('enter').press('space '.repeat(60));
    expect(desk.bench.piece('alternator').holes.find((h) => h.name === '9')?.state).not.toBe('out');
    desk.press('enter enter');
    expect(desk.bench.piece('alternator').holes.find((h) => h.name === '9')?.state).not.toBe('out');
    desk.press('o');
    expect(desk.bench.piece('alternator').holes.find((h) => h.name === '9')?.state).toBe('out');
  });

  it('held from in to tight ends each pass, and begins none', () => {
    const bench = new Bench(LEFT_COVER);
    bench.mark({ do: 'out', piece: 'sprocket-cover' });
    bench.mark({ do: 'off', piece: 'sprocket-cover' });
    bench.mark({ do: 'on', piece: 'sprocket-cover' });
    bench.mark({ do: 'in', piece: 'sprocket-cover', hand: { kind: 'S' } });
    const desk = new Desk(bench).open('sprocket-cover').press('t').press('space '.repeat(60));
    const passes = desk.bench.piece('sprocket-cover').holes.map((h) => h.passes);
    expect(passes).toEqual([['snug'], ['snug'], ['snug']]);
  });
});

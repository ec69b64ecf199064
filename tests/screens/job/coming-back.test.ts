import { describe, expect, it } from 'vitest';
import { Bench } from '../../job/bench.ts';
import { LEFT_COVER } from '../covers.ts';
import { Desk } from '../desk.ts';

const LATER = '2026-05-02T10:00:00+02:00';

function halfOff(): Bench {
  const bench = new Bench(LEFT_COVER);
  for (const piece of ['gear-lever', 'sprocket-cover']) {
    bench.mark({ do: 'out', piece });
    bench.mark({ do: 'off', piece, tray: 'cup 1' });
  }
  bench.mark({ do: 'out', piece: 'alternator', row: 'S S S M+clip S S S+copper S ! M S' });
  bench.mark({ do: 'state', piece: 'alternator', hole: '9', state: 'stuck' });
  bench.mark({ do: 'note', text: 'heat 9 before trying again' });
  return bench;
}

describe('coming back after days', () => {
  it('begins with where the job stands, in words', () => {
    const desk = new Desk(halfOff(), { now: LATER });
    expect(desk.screen).toBe('note');
    expect(desk.frame).toContain('21 days since the last mark');
    expect(desk.frame).toMatch(/Off {12}Gear lever \(cup 1\)\n {15}Sprocket cover \(cup 1\)/);
    expect(desk.frame).toContain('Coming off     Alternator cover: 10 of 11 out');
    expect(desk.frame).toContain('Trouble        Alternator cover, 9: stuck');
    expect(desk.frame).toContain(
      'Differs        Alternator cover, 10: the file says L, M came out',
    );
    expect(desk.frame).toContain('Finger-tight   nothing');
    expect(desk.frame).toContain('Last note      heat 9 before trying again (11 April)');
    expect(desk.frame).toMatch(/Next: Alternator cover/);
    desk.press('go');
    expect(desk.screen).toBe('job');
    expect(desk.frame).toContain('>   Alternator cover   coming off, 10 of 11 out   ! 9 stuck');
  });

  it('asks about what stood open over night, and keeps the answer', () => {
    const bench = new Bench().openCover();
    const desk = new Desk(bench, { now: LATER });
    expect(desk.frame).toContain('Open           Cover since 11 April: covered, plugged?');
    expect(desk.frame).toContain('i covered, plugged');
    desk.press('i enter');
    expect(desk.frame).toContain('It stands open, and is asked about again.');
    desk.press('i').type('2 rags').press('enter');
    expect(bench.entries.at(-1)).toMatchObject({ piece: 'cover', verb: 'inside', value: '2 rags' });
    expect(desk.screen).toBe('note');
    expect(desk.frame).not.toContain('plugged?');
    expect(desk.frame).toContain('Inside         2 rags');
    desk.press('backspace i').type('foil over it').press('enter');
    expect(bench.entries.at(-1)).toMatchObject({ verb: 'note', value: 'foil over it' });
    expect(desk.frame).not.toContain('plugged?');
  });

  it('says what is only finger-tight', () => {
    const bench = new Bench().openCover();
    bench.mark({ do: 'in', piece: 'cover', hand: { kind: 'S' } });
    const desk = new Desk(bench, { now: LATER });
    expect(desk.frame).toContain('Finger-tight   Cover: 1, 2 and 5');
  });

  it('begins with the pieces on the same day, and on a job where nothing is under way', () => {
    expect(new Desk(halfOff()).screen).toBe('job');
    expect(new Desk(new Bench(), { now: LATER }).screen).toBe('job');
  });

  it('goes straight to the step that was begun', () => {
    expect(new Desk(halfOff()).open('alternator').screen).toBe('off');
    const bench = new Bench().openCover();
    bench.mark({ do: 'in', piece: 'cover', hand: { kind: 'S' } });
    expect(new Desk(bench).open('cover').screen).toBe('on');
  });

  it('asks before it takes back a mark of an earlier sitting, with another key', () => {
    const desk = new Desk(halfOff(), { now: LATER }).open('alternator').press('backspace');
    expect(desk.screen).toBe('sure');
    expect(desk.frame).toContain('Take back a mark of an earlier day?');
    expect(desk.frame).toContain('11 April: 9 stuck.');
    desk.press('backspace');
    expect(desk.screen).toBe('off');
    expect(desk.bench.hole('9', 'alternator').trouble).toBe('stuck');
    desk.press('backspace go enter');
    expect(desk.screen).toBe('sure');
    desk.press('t');
    expect(desk.bench.hole('9', 'alternator').trouble).toBeNull();
    expect(desk.screen).toBe('off');
  });
});

describe('notes', () => {
  it('are kept on the job, on a piece and on a hole', () => {
    const desk = new Desk(new Bench());
    desk.press('n').type('ask for the manual').press('enter');
    expect(desk.frame).toContain('Noted.');
    desk.open('cover').press('n').type('dowel at 2').press('enter');
    desk.press('4 n').type('thread cleaned').press('enter');
    expect(desk.bench.entries.map(({ piece, hole, value }) => [piece, hole, value])).toEqual([
      [undefined, undefined, 'ask for the manual'],
      ['cover', undefined, 'dowel at 2'],
      ['cover', ['4'], 'thread cleaned'],
    ]);
  });

  it('that are empty are no notes', () => {
    const desk = new Desk(new Bench()).press('n go enter');
    expect(desk.screen).toBe('job');
    expect(desk.bench.entries).toHaveLength(0);
  });

  it('stand there again when they were left by half', () => {
    const desk = new Desk(new Bench()).press('n').type('half').press('escape n');
    expect(desk.frame).toContain('> half');
    desk.type(' done').press('enter n');
    expect(desk.frame).not.toContain('half');
  });

  it('keep their text while the list of keys is looked at', () => {
    const desk = new Desk(new Bench()).press('n').type('half a th').press('tab escape');
    expect(desk.frame).toContain('> half a th');
  });
});

describe('the bench', () => {
  it('lists its jobs, where each stands and what is next, and opens one', () => {
    const desk = new Desk(halfOff(), { on: { folder: '/home/me/repairs' }, now: LATER });
    expect(desk.screen).toBe('bench');
    expect(desk.frame).toMatch(/^repairs {2,}1 job/);
    expect(desk.frame).toMatch(/> Left cover weeps oil {2,}Hollin 400 Twin {2,}coming off 21 days/);
    desk.press('go');
    expect(desk.screen).toBe('note');
    desk.press('escape escape');
    expect(desk.screen).toBe('bench');
  });

  it('is never left by going back, however often', () => {
    const desk = new Desk(new Bench(), { on: { folder: '/home/me/repairs' } }).press('go go go');
    desk.press('escape '.repeat(20));
    expect(desk.screen).toBe('bench');
    expect(desk.done).not.toContain('quit');
    desk.press('q');
    expect(desk.done).toContain('quit');
  });
});

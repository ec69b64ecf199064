import { describe, expect, it } from 'vitest';
import type { Entry } from '../../src/model/types.ts';
import { benchRow } from '../../src/screens/terminal/bench-row.ts';
import { Bench } from '../job/bench.ts';
import { Desk, SAME_DAY } from './desk.ts';

function outOf(bench: Bench, piece: string): Bench {
  bench.mark({ do: 'out', piece });
  bench.mark({ do: 'off', piece });
  return bench;
}

describe('what breaks nothing is asked quietly', () => {
  it('the lever goes back after the cover under it: no frame, no ringing, and a way on', () => {
    const desk = new Desk(new Bench().openCover()).open('lever');
    expect(desk.frame).toContain('To be back on before it: Cover.');
    desk.press('go s go');
    expect(desk.screen).toBe('stop');
    expect(desk.frame).toContain('Cover must be back on first');
    expect(desk.frame).not.toContain('STOP');
    expect(desk.done).toEqual([]);
    desk.press('backspace');
    expect(desk.screen).toBe('on');
  });

  it('a length that fits two kinds asks for the letter', () => {
    const bench = new Bench(
      'putback: 1\njob: Lid\nbolts: {S: M6x25, T: M8x25}\npieces:\n  lid: {bolts: S T}\ndiary:\n',
    );
    const desk = new Desk(outOf(bench, 'lid')).open('lid').press('go').type('.25').press('go');
    expect(desk.screen).toBe('on');
    expect(desk.frame).toContain('25 mm long are S and T: which is it?');
    desk.press('t go');
    expect(bench.states('lid')).toBe('out in');
  });

  it('a bolt still on top of it is said before it comes off', () => {
    expect(new Desk(new Bench()).open('cover').frame).toContain('Over it, and still on: Lever.');
  });

  it('an earlier mark that later ones rest on stays', () => {
    const bench = new Bench().openCover();
    const desk = new Desk(bench, { now: '2026-05-02T10:00:00+02:00' })
      .open('cover')
      .press('backspace t');
    expect(desk.frame).toContain('Taken back: off.');
    expect(desk.screen).toBe('off-count');
  });
});

describe('two marks that cannot both be true', () => {
  /** Two diaries came together: S and M both went into 1. */
  function clash(): Bench {
    const bench = new Bench().openCover();
    const entry = (id: string, value: string): Entry => ({
      at: '2026-04-12T09:00:00+02:00',
      id,
      piece: 'cover',
      hole: ['1'],
      verb: 'in',
      value,
    });
    bench.entries.push(entry('aaaaaaaa', 'S'), entry('bbbbbbbb', 'M'));
    return bench;
  }

  it('are shown on the map, and settled by looking what is really in the hole', () => {
    const desk = new Desk(clash()).open('cover');
    expect(desk.frame).toContain('!1!');
    desk.press('go');
    expect(desk.screen).toBe('settle');
    expect(desk.frame).toMatch(/1: .*S.*M.*\. Look what is really in it\./s);
    desk.press('k c');
    expect(desk.screen).toBe('settle');
    desk.press('.').type('s').press('enter');
    expect(desk.bench.hole('1').conflict).toBeNull();
    expect(desk.bench.states()).toBe('in out out out out');
    expect(desk.screen).toBe('on');
  });
});

describe('a row of the bench', () => {
  const row = (bench: Bench, now = SAME_DAY) =>
    benchRow('a.yaml', { ok: true, job: bench.job, faults: [] }, now);

  it('says where a job stands by the piece that is furthest from done', () => {
    expect(row(new Bench())).toEqual({
      file: 'a.yaml',
      job: 'Cover weeps',
      machine: '',
      stands: 'not begun',
      loud: '',
      next: expect.stringContaining('Lever'),
    });
    expect(row(outOf(new Bench(), 'lever'), '2026-04-18T08:00:00+02:00').stands).toBe(
      'open 7 days',
    );
    expect(row(new Bench().openCover().fillCover()).stands).toBe('open');
    expect(row(new Bench('putback: 1\njob: New\ndiary:\n')).stands).toBe('new');
  });

  it('says what is wrong with a file that cannot be read', () => {
    const fault = {
      code: 'x',
      severity: 'error',
      file: 'a.yaml',
      line: 4,
      column: 1,
      say: 'a tab',
      fix: '',
      excerpt: '',
    } as const;
    expect(benchRow('a.yaml', { ok: false, faults: [fault] }, SAME_DAY)).toMatchObject({
      job: 'a.yaml',
      stands: 'cannot be read',
      next: 'line 4: a tab',
    });
    const unread = { code: 'gone', say: 'It is not there any more.', fix: '' };
    expect(benchRow('a.yaml', { ok: false, unread }, SAME_DAY).next).toBe(
      'It is not there any more.',
    );
  });
});

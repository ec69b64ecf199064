import { describe, expect, it } from 'vitest';
import { Desk } from '../desk.ts';
import { caseOpen } from '../plan-jobs.ts';

describe('what goes into the machine', () => {
  it('is noted by one key on the piece that closes over it, and shown until it is out', () => {
    const desk = new Desk(caseOpen()).open('case-cover').press('i').type('2 rags').press('enter');
    expect(desk.frame).toContain('- 2 rags inside.');
    expect(desk.frame).toContain('Inside: 2 rags.');
    desk.press('escape');
    expect(desk.frame).toContain('Inside: 2 rags (Case cover).');
    desk.press('x');
    expect(desk.frame).toContain('> 2 rags');
    desk.press('ctrl-u').type('1 rag').press('enter');
    expect(desk.frame).toContain('Inside: 1 rag (Case cover).');
    desk.press('x enter');
    expect(desk.frame).toContain('Nothing is inside any more.');
    expect(desk.frame).not.toContain('Inside:');
    expect(desk.bench.job.inside).toEqual([]);
  });

  it('on the job is behind the marked piece where that is off, else in the machine at large', () => {
    const desk = new Desk(caseOpen());
    desk.state = { ...desk.state, view: { screen: 'job', here: 'case-cover' } };
    desk.press('i');
    expect(desk.frame).toContain('What goes in, behind Case cover?');
    desk.press('escape');
    desk.state = { ...desk.state, view: { screen: 'job', here: 'fuel-pipe' } };
    desk.press('i').type('plug').press('enter');
    expect(desk.bench.job.inside).toMatchObject([{ piece: null, what: 'plug', count: 1 }]);
  });

  it('more than went in cannot come out', () => {
    const desk = new Desk(caseOpen()).open('case-cover').press('i').type('rag').press('enter');
    desk.press('x ctrl-u').type('3 rags').press('enter');
    expect(desk.frame).toContain('3 rags: inside is 1 rag.');
    expect(desk.bench.job.inside).toHaveLength(1);
  });

  it('nothing typed is nothing noted', () => {
    const desk = new Desk(caseOpen()).press('i enter');
    expect(desk.bench.job.inside).toEqual([]);
    expect(desk.screen).toBe('job');
  });
});

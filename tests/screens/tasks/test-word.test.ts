/** With a word on a test: whether it passed is asked, and nothing typed there passes it by itself. */
import { describe, expect, it } from 'vitest';
import { Bench, COVER } from '../../job/bench.ts';
import { Desk } from '../desk.ts';
import { caseShut } from '../plan-jobs.ts';

function oilIn(): Bench {
  const bench = caseShut();
  bench.mark({ do: 'done', task: 'fill' });
  return bench;
}

function atWeep(bench: Bench = oilIn()): Desk {
  const desk = new Desk(bench);
  const under = { screen: 'job', here: ':weep' } as const;
  desk.state = { ...desk.state, view: { screen: 'task', task: 'weep', under } };
  return desk.press('r');
}
const last = (desk: Desk) => desk.bench.entries.at(-1);

describe('a word about a test', () => {
  it('asks which of both it is, and what was typed stays', () => {
    const desk = atWeep();
    expect(desk.frame).toContain('Passed, or failed?');
    desk.type('still stalls after 8 minutes').press('enter');
    expect(last(desk)).toMatchObject({ task: 'fill' });
    expect(desk.frame).toContain('Whether it passed is not said yet.');
    expect(desk.frame).toContain('still stalls after 8 minutes');
    desk.type(', failed').press('enter');
    const says = 'still stalls after 8 minutes';
    expect(last(desk)).toMatchObject({ task: 'weep', value: 'failed', says });
    expect(desk.screen).toBe('round');
  });

  it('is taken with its verdict ahead', () => {
    const desk = atWeep().type('passed, dry').press('enter');
    expect(last(desk)).toMatchObject({ task: 'weep', value: 'passed', says: 'dry' });
    expect(desk.frame).toContain('passed, dry');
  });

  it('adds to a test that is noted already, where one key has nothing to say', () => {
    const desk = atWeep().type('passed, dry').press('enter');
    const under = { screen: 'job', here: ':weep' } as const;
    desk.state = { ...desk.state, view: { screen: 'task', task: 'weep', under } };
    expect(desk.frame).not.toContain('p passed');
    const before = desk.bench.entries.length;
    expect(desk.press('p').frame).toContain('That is noted already: passed. r adds a word.');
    expect(desk.bench.entries.length).toBe(before);
  });

  it('empty says nothing either', () => {
    const desk = atWeep().press('enter');
    expect(last(desk)).toMatchObject({ task: 'fill' });
    expect(desk.frame).toContain('Whether it passed is not said yet.');
  });

  it('before its turn takes a reason as well', () => {
    const tasks =
      'tasks:\n  wipe: {do: Wipe it dry}\n  weep: {test: Any drop?, after: wipe}\ndiary:';
    const desk = atWeep(new Bench(COVER.replace('diary:', tasks)));
    desk.type('passed, dry').press('enter');
    expect(desk.bench.entries).toEqual([]);
    expect(desk.frame).toContain('a test before it proves nothing');
    desk.type('it was dry already').press('enter');
    expect(last(desk)).toMatchObject({ task: 'weep', says: 'dry', because: 'it was dry already' });
  });
});

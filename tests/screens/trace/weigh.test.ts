import { describe, expect, it } from 'vitest';
import { readJob } from '../../../src/job/read.ts';
import { Bench } from '../../job/bench.ts';
import { Desk } from '../desk.ts';
import { question, SEAL } from './trace-screens.ts';

const said = (desk: Desk) => desk.frame.replace(/\s+/g, ' ');
const last = (desk: Desk) => desk.bench.entries.at(-1);

describe('renew it, or leave it', () => {
  it('says what it costs now and later, and on what it turns', () => {
    const frame = said(question({}, 'seal'));
    expect(frame).toContain('now 12.50 and 40 min later 26.70 and 1 h 50 min');
    expect(frame).toContain('with 1 h 10 min for Lever and Cover off and on again');
    expect(frame).toContain('and cover gasket again, 14.20');
    expect(frame).toContain('Worth it if it would fail more often than 4 times in 9');
  });

  it('Enter decides, with what the figures said beside it, and Space does not', () => {
    const desk = question({}, 'seal').press('space');
    expect(desk.bench.entries).toHaveLength(0);
    desk.press('enter');
    expect(last(desk)).toMatchObject({ task: 'seal', verb: 'done', result: 'renew it' });
    expect(last(desk)?.advised).toMatch(/^the same either way, it turns at 4 times in 9/);
    expect(desk.screen).toBe('job');
    expect(said(desk)).toContain('Decided: renew it.');
  });

  it('l leaves it, with the reason', () => {
    const desk = question({}, 'seal').press('l').type('no seal here').press('enter');
    expect(last(desk)).toMatchObject({ result: 'leave it', says: 'no seal here' });
  });

  it('o notes that the owner is asked, and the question stays open', () => {
    const desk = question({}, 'seal').press('o');
    expect(last(desk)).toMatchObject({
      verb: 'note',
      value: 'Ask the owner: Renew the shaft seal?',
    });
    expect(said(desk)).toContain('Noted: ask the owner.');
    expect(desk.bench.job.tasks.get('seal')?.done).toBe(null);
  });

  it('c takes other figures into the file, and Backspace takes them out again', () => {
    const desk = question({}, 'seal').press('c ctrl-u').type('now 5; 3 in 4').press('enter');
    const { upper } = readJob(desk.bench.text, 'a.yaml');
    expect(upper.tasks.get('seal')?.weigh).toEqual({
      ...{ now: { price: '5', takes: null }, later: null, chance: '3 in 4', harm: null },
    });
    expect(said(desk)).toContain('you said 3 in 4: renew it.');
    desk.press('backspace');
    const tasks = (text: string) => readJob(text, 'a.yaml').upper.tasks;
    expect(tasks(desk.bench.text)).toEqual(tasks(SEAL));
  });

  it('what is no figure is asked for again', () => {
    const desk = question({}, 'seal').press('c ctrl-u').type('chance maybe').press('enter');
    expect(said(desk)).toContain('maybe is no chance: 1 in 6, or often, now and then, rarely.');
    desk.press('ctrl-u').type('now cheap').press('enter');
    expect(said(desk)).toContain('cheap is neither a price nor a time: 12.50, 40 min.');
    expect(desk.bench.entries).toHaveLength(0);
  });

  it('is by the manual where somebody may be hurt, and no figure stands there', () => {
    const frame = said(question({}, 'hose'));
    expect(frame).toContain("renew it as the maker's manual says");
    expect(frame).not.toMatch(/\d/);
  });

  it('a question without figures leads there by w', () => {
    const desk = question({}, 'bearing');
    expect(desk.screen).toBe('task');
    desk.press('w');
    expect(desk.screen).toBe('weigh');
  });

  it('without the worth of an hour money and time stand each by itself', () => {
    const desk = new Desk(new Bench(SEAL));
    desk.state = { ...desk.state, view: { screen: 'job', here: ':seal' } };
    expect(said(desk.press('space'))).not.toContain('bench.yaml) Worth');
  });
});

import { describe, expect, it } from 'vitest';
import { Bench } from '../job/bench.ts';
import { LEFT_COVER } from './covers.ts';
import { FILE } from './desk.ts';
import { again, dueJobs, finding, olderJobs } from './memory-screens.ts';

describe('last time', () => {
  it('is one quiet line on the job and on the piece, and whole by one key', () => {
    const desk = again();
    expect(desk.frame).toContain(
      'Last time on this machine, April (Left cover weeps oil): Alternator cover: 9',
    );
    desk.open('alternator');
    expect(desk.frame).toContain('You had this off in April: 9 stuck');
    desk.press('e');
    expect(desk.screen).toBe('last');
    expect(desk.frame).toContain('9 stuck: heat helped (Left cover weeps oil, 2026-04-11)');
    expect(desk.frame).toContain('the lead goes behind the frame tube');
    expect(desk.frame).toContain('2 older jobs not looked at');
    expect(desk.press('escape').screen).toBe('look');
  });

  it('its key is named in the foot of a job of which nothing is noted yet', () => {
    const empty = again({}, new Bench('putback: 1\njob: x\nmachine: Hollin 400 Twin\ndiary:\n'));
    expect(empty.frame).toContain('Last time on this machine');
    expect(empty.frame.split('\n').findLast((l) => l.trim() !== '')).toBe(
      'k find the fault   o say what comes off first   n note   e last time   ? keys',
    );
  });

  it('is not said of another job, nor before it is known', () => {
    const desk = again();
    desk.state = { ...desk.state, open: desk.state.open && { ...desk.state.open, file: 'x.yaml' } };
    expect(desk.frame).not.toContain('You had this off');
    expect(desk.press('e').screen).toBe('job');
  });

  it('is taken over by one key, which asks for it by both files', () => {
    const desk = again();
    desk.open('alternator').press('e');
    desk.holds = true;
    desk.press('t');
    expect(desk.state.waiting).toMatchObject({
      for: 'recorded',
      wish: { do: 'take', piece: 'alternator', from: 'cover-2025.yaml' },
    });
  });

  it('nothing new in it is said, and one is where one was', () => {
    const desk = again({}, new Bench(LEFT_COVER));
    desk.open('alternator').press('e t');
    expect(desk.screen).toBe('last');
    expect(desk.frame).toContain('Nothing that does not stand here already');
  });
});

describe('find on the bench', () => {
  it('finds as one types, and Enter goes there', () => {
    const desk = finding();
    expect(desk.frame).toContain('2 lines');
    expect(desk.frame).toContain('state: stuck, says: "heat helped"');
    desk.press('enter');
    expect(desk.state.open?.file).toBe(FILE);
    expect(desk.state.view).toMatchObject({ screen: 'piece', piece: 'alternator' });
  });

  it('letters are text, also those of keys; Esc leads back to the bench', () => {
    const desk = finding({}, 'q');
    expect(desk.done).not.toContain('quit');
    expect(desk.frame).toContain('> q');
    expect(desk.press('escape').screen).toBe('bench');
  });

  it('what was asked before is not shown for what stands there now', () => {
    const desk = finding();
    desk.holds = true;
    desk.type('x');
    desk.happen({ on: 'found', text: 'stuck', found: [], unread: [] });
    expect(desk.frame).toContain('2 lines');
    desk.happen({ on: 'found', text: 'stuckx', found: [], unread: ['a.yaml is a pipe.'] });
    expect(desk.frame).toContain('nothing found');
    expect(desk.frame).toContain('Not read: a.yaml is a pipe.');
  });

  it('a line of another bench is not opened here, and says how', () => {
    const desk = finding();
    const held = [{ file: '/srv/club/old.yaml', line: 1, job: 'x', machine: null, piece: null }];
    const found = held.map((h) => ({
      ...h,
      day: null,
      text: 'stuck',
      score: 1,
      when: '',
      undone: false,
    }));
    desk.happen({ on: 'found', text: 'stuck', found, unread: [] }).press('enter');
    expect(desk.screen).toBe('find');
    expect(desk.frame).toContain('putback /srv/club/old.yaml');
  });

  it('says how far the reading has come', () => {
    const desk = finding();
    desk.happen({ on: 'finding', text: 'stuck', done: 300, of: 10_000 });
    expect(desk.frame).toContain('reading 300 of 10000 jobs');
  });
});

describe('a bench of many jobs', () => {
  it('says what is yet to be read, and folds away what was done long ago', () => {
    const desk = olderJobs();
    expect(desk.frame).toContain('1 job, 3 older, 7 to be read');
    expect(desk.frame).not.toContain('Old job');
    expect(desk.press('o').frame).toContain('Old job 1');
    expect(desk.press('o').frame).not.toContain('Old job');
  });
});

describe('what is kept, read off and due', () => {
  it('one key keeps the note that was just written', () => {
    const desk = again();
    desk.press('n').type('the lead goes behind').press('enter');
    expect(desk.frame).toContain('keep it for next time');
    desk.press('j');
    const [note, keep] = desk.bench.entries.slice(-2);
    expect([keep?.verb, keep?.value]).toEqual(['keep', note?.id]);
  });

  it('one key takes what the counter says; what is no reading is asked again', () => {
    const desk = again();
    desk.press('r').type('much').press('enter');
    expect(desk.frame).toContain('That is no reading yet');
    desk.press('ctrl-u').type('41400 km').press('enter');
    expect(desk.bench.entries.at(-1)).toMatchObject({ verb: 'reading', value: '41400 km' });
  });

  it('a counter that runs back is asked about, and counts with a reason', () => {
    const desk = again();
    desk.press('r').type('41400 km').press('enter');
    desk.press('r').type('100 km').press('enter');
    expect(desk.frame).toContain('Before it said 41400 km: a counter does not run back.');
    desk.type('new clocks').press('enter');
    expect(desk.bench.entries.at(-1)).toMatchObject({
      ...{ verb: 'reading', value: '100 km', because: 'new clocks' },
    });
    expect(desk.screen).not.toBe('field');
  });

  it('what is due says which jobs could not be asked', () => {
    const desk = dueJobs();
    const unread = ['a.yaml', 'b.yaml', 'c.yaml', 'd.yaml', 'e.yaml'];
    desk.happen({ on: 'due', due: [], unread });
    expect(desk.frame.replace(/\s+/g, ' ')).toContain(
      'Nothing is due. Not all could be read, so more may be due: a.yaml, b.yaml, c.yaml and 2 more.',
    );
    expect(desk.happen({ on: 'due', due: [], unread: [] }).frame).not.toContain('Not all');
  });

  it('what is due on all machines, and from there to its job', () => {
    const desk = dueJobs();
    expect(desk.frame).toContain('1 due, 1 later');
    expect(desk.frame).toContain('since 41280 km  Alternator cover: tighten again, cold.');
    expect(desk.frame).toContain('11 November');
    desk.press('enter');
    expect(desk.state.view).toMatchObject({ screen: 'piece', piece: 'alternator' });
  });
});

import { describe, expect, it } from 'vitest';
import { Bench } from '../../job/bench.ts';
import { Desk, FILE } from '../desk.ts';
import { caseOpen } from '../plan-jobs.ts';

const off = () => new Desk(new Bench()).open('cover').press('go');

describe('marks that are on their way', () => {
  it('do not show as done before they are on disk', () => {
    const desk = off();
    desk.holds = true;
    desk.press('go');
    expect(desk.frame).toContain('off, 0 of 5 out');
    desk.answer();
    expect(desk.frame).toContain('off, 1 of 5 out');
  });

  it('hold back what is pressed meanwhile: five presses are five bolts, none lost and none twice', () => {
    const desk = off();
    desk.holds = true;
    desk.press('go go go go go');
    for (let i = 0; i < 5; i += 1) {
      expect(desk.frame).toContain(`off, ${i} of 5 out`);
      desk.answer();
    }
    expect(desk.bench.states()).toBe('out out out out out');
    expect(desk.bench.entries.map((e) => e.hole?.length)).toEqual([1, 1, 1, 1, 1]);
    expect(desk.screen).toBe('off-count');
  });

  it('are undone in their turn when that is pressed ahead', () => {
    const desk = off();
    desk.holds = true;
    desk.press('go go backspace go');
    for (let i = 0; i < 4; i += 1) desk.answer();
    expect(desk.bench.states().match(/out/g)).toHaveLength(2);
    expect(desk.bench.entries.map((e) => e.verb)).toEqual(['out', 'out', 'undo', 'out']);
  });

  it('that are refused take with them what was pressed ahead', () => {
    const desk = new Desk(new Bench().openCover()).open('cover').press('go m 1');
    desk.holds = true;
    desk.press('go s a w');
    desk.answer();
    expect(desk.screen).toBe('stop');
    expect(desk.state.ahead).toEqual([]);
    expect(desk.bench.states()).toBe('out out out out out');
  });

  it('have not seen a gate that comes in sight: what was pressed before it is dropped', () => {
    const bench = caseOpen();
    bench.mark({ do: 'buy', buy: 'gasket', state: 'here' });
    const desk = new Desk(bench).open('case-cover').press('go');
    expect(desk.frame).toContain('before it closes');
    desk.holds = true;
    desk.press('go go go');
    desk.answer();
    expect(desk.frame).toContain('before the joint is made');
    expect(desk.state.ahead).toEqual([]);
    expect(desk.bench.entries.filter((e) => e.verb === 'seen')).toHaveLength(1);
  });

  it('are not waited for when one leaves', () => {
    const desk = off();
    desk.holds = true;
    desk.press('go ctrl-c');
    expect(desk.state.waiting).not.toBeNull();
    desk.holds = false;
    desk.answer().answer();
    expect(desk.done).toEqual(['quit']);
    expect(desk.bench.entries).toHaveLength(1);
  });
});

describe('a mark that could not be saved', () => {
  const why = {
    code: 'no-space',
    say: 'There is no room on the disk.',
    fix: 'Make room, then again.',
  };

  it('is said until it is saved, rings, and shows nothing as done', () => {
    const desk = off();
    desk.broken = { ok: false, unsaved: why };
    desk.press('go');
    expect(desk.screen).toBe('unsaved');
    expect(desk.done).toEqual(['ring']);
    expect(desk.frame).toContain('There is no room on the disk.');
    expect(desk.frame).toContain('Cover: 4 out: L');
    expect(desk.frame).toContain('The file is as it was.');
    desk.press('go');
    expect(desk.screen).toBe('unsaved');
    desk.broken = null;
    desk.press('go');
    expect(desk.screen).toBe('off');
    expect(desk.frame).toContain('off, 1 of 5 out');
  });

  it('can be given up', () => {
    const desk = off();
    desk.broken = { ok: false, unsaved: why };
    desk.press('go escape');
    expect(desk.screen).toBe('off');
    expect(desk.frame).toContain('off, 0 of 5 out');
  });
});

describe('a file that cannot be read', () => {
  const fault = {
    code: 'duplicate-key',
    severity: 'error',
    file: FILE,
    line: 7,
    column: 3,
    say: 'cover stands here twice',
    fix: 'Take one of them away.',
    excerpt: '  cover:\n  ^',
  } as const;

  it('is said with its place and the way out, and can be read again', () => {
    const desk = off();
    desk.broken = { ok: false, faults: [fault] };
    desk.press('go');
    expect(desk.screen).toBe('faults');
    expect(desk.frame).toContain('7:3  cover stands here twice');
    expect(desk.frame).toContain('Take one of them away.');
    desk.broken = null;
    desk.press('go');
    expect(desk.screen).toBe('job');
  });

  it('on a bench leads back to the others', () => {
    const desk = new Desk(new Bench(), { on: { folder: 'jobs' } });
    desk.press('go');
    desk.holds = true;
    desk.press('escape');
    desk.holds = false;
    desk.answer().press('go');
    desk.broken = { ok: false, faults: [fault] };
    desk.open('cover').press('go go');
    expect(desk.screen).toBe('faults');
    desk.press('escape');
    expect(desk.screen).toBe('bench');
  });

  it('changed under the hand: what was read last stands until it reads again', () => {
    const desk = off();
    desk.happen({ on: 'file', file: FILE, read: { ok: false, faults: [fault] } });
    expect(desk.screen).toBe('off');
    expect(desk.frame).toContain('The file was changed and cannot be read just now.');
    desk.bench.mark({ do: 'out', piece: 'cover', holes: ['1', '2'] });
    desk.happen({ on: 'file', file: FILE, read: { ok: true, job: desk.bench.job, faults: [] } });
    expect(desk.frame).toContain('off, 2 of 5 out');
  });
});

describe('outside a text field a paste', () => {
  it('marks nothing', () => {
    const desk = off().happen({ on: 'paste', text: '    \nqw' });
    expect(desk.screen).toBe('off');
    expect(desk.frame).toContain('A paste counts only where a text is asked for.');
    expect(desk.bench.entries).toHaveLength(0);
  });
});

describe('a quiet line', () => {
  it('stays until the next press', () => {
    const desk = off().happen({ on: 'quiet', say: 'Not committed: a merge is under way.' });
    expect(desk.frame).toContain('- Not committed: a merge is under way.');
    expect(desk.press('right').frame).not.toContain('Not committed');
  });

  it('that comes by itself takes nothing away that was said before it', () => {
    const desk = off();
    desk.happen({ on: 'quiet', say: 'Left over: 1 M.' });
    desk.happen({ on: 'quiet', say: 'No commit.' });
    expect(desk.frame).toContain('- Left over: 1 M. No commit.');
  });
});

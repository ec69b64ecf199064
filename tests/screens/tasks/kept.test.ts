/** What came to nothing stays to be read: a part that did not fit, a test that failed. */
import { describe, expect, it } from 'vitest';
import { Desk } from '../desk.ts';
import { caseOpen, caseShut } from '../plan-jobs.ts';

describe('a part that did not fit', () => {
  it('keeps why, its number, and the new one', () => {
    const bench = caseOpen();
    const desk = new Desk(bench).press('b w').type('HL-1142 A, one hole less').press('enter');
    expect(desk.frame).toContain('came, and does not fit');
    expect(desk.frame).toContain('HL-1142 A, one hole less');
    desk.press('n').type('HL-1142 B').press('enter enter enter enter');
    expect(desk.frame).toMatch(/Before: came, and does not fit: HL-1142 A, one hole less \(/);
    expect(desk.frame).toMatch(/Before: has another number now: now HL-1142 B \(/);
  });

  it('needs no reason', () => {
    const desk = new Desk(caseOpen()).press('b w enter');
    expect(desk.frame).toContain('came, and does not fit');
  });
});

describe('a test that failed', () => {
  it('keeps its reading after it passed', () => {
    const bench = caseShut();
    bench.mark({ do: 'done', task: 'fill' });
    bench.mark({ do: 'done', task: 'weep', result: 'failed', says: 'a drop at 3' });
    bench.mark({ do: 'done', task: 'weep', result: 'passed' });
    const desk = new Desk(bench);
    desk.state = { ...desk.state, view: { screen: 'task', task: 'weep', under: desk.state.view } };
    expect(desk.frame).toMatch(/Before +failed 11 April: a drop at 3/);
  });
});

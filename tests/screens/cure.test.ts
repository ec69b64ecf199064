import { describe, expect, it } from 'vitest';
import { Desk } from './desk.ts';
import { CASE, caseOpen, caseShut } from './plan-jobs.ts';

const CURES = CASE.replace('open 10 min;', 'open 10 min, cures 12 h;');
/** Marks stand at 18:25 on 11 April, one a second. */
const OVER = '2026-04-12T06:27:00+02:00';
const TOLD = 'Sealant cures 12 h, until 06:25 tomorrow.';

function allIn() {
  const bench = caseOpen(CURES);
  for (const buy of ['gasket', 'insert']) bench.mark({ do: 'buy', buy, state: 'here' });
  for (const kind of ['S', 'M']) bench.mark({ do: 'in', piece: 'case-cover', hand: { kind } });
  bench.mark({ do: 'tight', piece: 'case-cover', pass: 'snug' });
  return bench;
}

describe('a joint that cures', () => {
  it('is told on the piece with the last click of the last pass, and not before', () => {
    const desk = new Desk(allIn()).open('case-cover').press('go go go');
    expect(desk.frame).not.toContain('cures');
    desk.press('go');
    expect(desk.screen).toBe('look');
    expect(desk.frame).toContain(TOLD);
    desk.press('backspace');
    expect(desk.frame).not.toContain(TOLD);
  });

  it('is silent when it is over', () => {
    const desk = new Desk(caseShut(CURES)).open('case-cover');
    expect(desk.frame).toContain(TOLD);
    desk.happen({ on: 'time', now: OVER });
    expect(desk.frame).not.toContain('cures');
    expect(desk.press('escape').frame).not.toContain('cure');
  });

  it('is told on the job, and what would load it waits for it', () => {
    const desk = new Desk(caseShut(CURES));
    expect(desk.frame).toContain('Case cover: sealant cures 12 h, until 06:25 tomorrow.');
    expect(desk.frame).toMatch(/Fill the oil in again +waits for the cure, until 06:25 tomorrow/);
    desk.happen({ on: 'time', now: OVER });
    expect(desk.frame).toMatch(/Fill the oil in again +to do/);
  });

  it('is told beside twenty minutes, which do not offer to load it', () => {
    const desk = new Desk(caseShut(CURES)).press('m enter');
    expect(desk.frame).toContain('Case cover: sealant cures 12 h, until 06:25 tomorrow.');
    expect(desk.frame).not.toContain('Fill the oil');
  });

  it('is told in the note and on the bench', () => {
    const desk = new Desk(caseShut(CURES), { on: { folder: '/Repairs' } });
    expect(desk.frame).toContain('Case cover: sealant cures 12 h, until 06:25 tomorrow');
    expect(desk.press('go w').frame).toMatch(/Don't load it, don't fill\sthe oil in/);
  });
});

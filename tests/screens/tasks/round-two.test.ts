/** A test failed: the cheap things first, then all off once more, as before. */
import { describe, expect, it } from 'vitest';
import { roundAgain } from '../../../src/plan/tests/again.ts';
import { Desk } from '../desk.ts';
import { caseShut } from '../plan-jobs.ts';

function weeps() {
  const bench = caseShut();
  bench.mark({ do: 'done', task: 'fill' });
  bench.mark({ do: 'done', task: 'weep', result: 'failed', says: 'a drop at 3' });
  return bench;
}

function failed(bench = weeps()): Desk {
  const desk = new Desk(bench);
  desk.state = { ...desk.state, view: { screen: 'job', here: ':weep' } };
  return desk.press('go go go');
}

describe('the next round', () => {
  it('begins with what is cheap: cool, dry, the place, the torque cold', () => {
    const again = roundAgain(weeps().job, 'weep', '2026-04-12T10:00:00+02:00');
    expect(again?.first).toEqual([
      'Wait until it is cool.',
      'Wipe it dry, run it again for a moment and find the place: chalk or paper shows it.',
      'Go round with the wrench, cold, at the torque as it counts: does a bolt turn?',
    ]);
    const desk = failed();
    expect(desk.screen).toBe('round');
    expect(desk.frame).toMatch(/First +Wait until it is cool[\s\S]*Off again/);
  });

  it('is all out as before with one key and off with the next; kinds and tray stay', () => {
    const bench = weeps();
    const before = bench.piece('lever').holes.map((h) => h.belongs);
    const desk = failed(bench).press('a space a');
    expect(desk.screen).toBe('off-count');
    desk.press('enter');
    expect(bench.piece('lever')).toMatchObject({ round: 2, away: 'removed', tray: 'cup 1' });
    expect(bench.piece('lever').holes.map((h) => h.belongs)).toEqual(before);
    expect(desk.screen).toBe('job');
  });

  it('goes on downward: what just came off is not the next thing to put back', () => {
    const desk = failed().press('a space a enter');
    expect(desk.frame).toContain('Next: Case cover: off for the next round.');
    expect(desk.frame).not.toMatch(/Next: Lever/);
    expect(desk.frame).toMatch(/> +Case cover/);
    desk.press('enter o a enter');
    expect(desk.bench.piece('case-cover')).toMatchObject({ round: 2, away: 'removed' });
    expect(desk.frame).not.toContain('off for the next round');
  });
});

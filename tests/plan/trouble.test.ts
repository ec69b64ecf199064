/** What is stuck, rounded, sheared, pulled: gone round, remembered, and in the way where it must be. */
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/job/judge/judge.ts';
import { TROUBLES } from '../../src/model/types.ts';
import { gate } from '../../src/plan/gates/gate.ts';
import { backAfter } from '../../src/plan/next/back.ts';
import { nextStep } from '../../src/plan/next/next.ts';
import { plan } from '../../src/plan/plan.ts';
import { boltsOff, boltsOn, done, jobOf, NOW, type Said } from './make.ts';

const TEXT = `
bolts: {S: M6x25}
pieces:
  cover: {bolts: S S S S}
  guard: {bolts: S}
tasks:
  clean: {do: Clean the tray}
  run: {test: Five minutes at idle, after: cover on}
`;
const SINCE = '2026-04-11T18:00:00+02:00';
const noted = (state: string, hole = '3'): Said => ({
  piece: 'cover',
  hole: [hole],
  state,
  says: 'soaking, heat tomorrow',
  at: SINCE,
});
const stamp = { at: NOW, id: 'newmark1' };

describe('on the way off', () => {
  it.each(['stuck', 'rounded'])(
    'a bolt that is %s is gone round, and named at the end',
    (state) => {
      expect(nextStep(jobOf(TEXT, [noted(state)]))?.hole).not.toBe('3');
      const last: Said[] = [noted(state), { piece: 'cover', hole: ['1', '2', '4'], out: 'S' }];
      expect(nextStep(jobOf(TEXT, last))).toMatchObject({
        do: 'mend',
        hole: '3',
        say: `Cover: 3 ${state} still holds it.`,
      });
    },
  );

  it('what else can be done meanwhile is offered', () => {
    const lines: Said[] = [noted('stuck'), { piece: 'cover', hole: ['1', '2', '4'], out: 'S' }];
    expect(plan(jobOf(TEXT, lines), NOW).canDo.map((c) => c.say)).toEqual(
      expect.arrayContaining([
        'Cover: 3 stuck still holds it.',
        'Guard: 1 bolt to come out.',
        'Clean the tray.',
      ]),
    );
  });

  it.each(TROUBLES)('%s is remembered with what was said, and since when', (state) => {
    const [trouble] = backAfter(jobOf(TEXT, [noted(state)]), NOW).trouble;
    expect(trouble).toMatchObject({
      hole: '3',
      trouble: state,
      since: SINCE,
      says: 'soaking, heat tomorrow',
    });
  });
});

describe('on the way on', () => {
  const back = [...boltsOff('cover', 'S'), ...boltsOn('cover', 'S')];

  it('a thread that is pulled is not tight, nor what it holds tested, until it is mended', () => {
    const tested = [...back, done('run')];
    expect(jobOf(TEXT, tested).pieces.get('cover')?.where).toBe('tested');
    const pulled = [...tested, noted('pulled')];
    const cover = jobOf(TEXT, pulled).pieces.get('cover');
    expect(cover?.where).toBe('on');
    const mended: Said[] = [...pulled, { piece: 'cover', hole: ['3'], state: 'mended' }];
    const again: Said[] = [
      ...mended,
      { piece: 'cover', tight: 'snug' },
      { piece: 'cover', tight: 'full' },
    ];
    const alone = again.map((said) => ('tight' in said ? { ...said, hole: ['3'] } : said));
    expect(jobOf(TEXT, alone).pieces.get('cover')?.where).toBe('on');
    // What was tested with the thread that gave way is tested again.
    expect(jobOf(TEXT, again).pieces.get('cover')?.where).toBe('tight');
    expect(jobOf(TEXT, [...again, done('run')]).pieces.get('cover')?.where).toBe('tested');
  });

  it.each(['pulled', 'rounded', 'stuck'])('nothing is noted as tight where it is %s', (state) => {
    const job = jobOf(TEXT, [...back.slice(0, 3), noted(state)]);
    const verdict = judge(job, { do: 'tight', piece: 'cover', holes: ['3'] }, stamp);
    expect(verdict).toMatchObject({
      ok: false,
      refused: { code: 'trouble', say: `3: noted as ${state}. Mend it first, and say so.` },
    });
  });

  it.each(['sheared', 'stud'])(
    'a bolt that is %s leaves its hole open, and the piece not back',
    (state) => {
      const job = jobOf(TEXT, [...back, noted(state)]);
      expect(job.pieces.get('cover')?.where).toBe('on');
      const keys = gate(job, 'start', null, NOW)
        .items.filter((i) => !i.done)
        .map((i) => i.key);
      expect(keys).toContain('trouble-cover');
    },
  );
});

import { describe, expect, it } from 'vitest';
import { benchRow } from '../../../src/screens/terminal/bench-row.ts';
import { Bench } from '../../job/bench.ts';
import { Desk } from '../desk.ts';
import { CASE, caseShut } from '../plan-jobs.ts';
import { leftAlone } from '../plan-screens.ts';

const LATER = '2026-05-02T10:00:00+02:00';

const left = leftAlone;
const rowOf = (bench: Bench, now = LATER) =>
  benchRow('a.yaml', { ok: true, job: bench.job, faults: [] }, now);

describe('the note on coming back', () => {
  it('says what is off and where its bolts lie, what is inside, in trouble, awaited and here', () => {
    const { frame } = new Desk(left(), { now: LATER });
    expect(frame).toContain('Off            Lever (cup 1)');
    expect(frame).toContain('Case cover (cup 2)');
    expect(frame).toContain('Inside         1 rag (Case cover) since 11 April');
    expect(frame).toContain(
      'Trouble        Case cover, 3: thread pulled since 11 April (insert M6 x 9)',
    );
    expect(frame).toContain('Awaited        cover gasket, promised 25 April, 7 days late');
    expect(frame).toContain('Here           wire inserts M6 x 9 (shelf)');
    expect(frame).toContain('Finger-tight   nothing');
  });

  it('says what to do in the next twenty minutes, and what must not be done', () => {
    const { frame } = new Desk(left(), { now: LATER });
    // What burns is not begun in passing: the fuel pipe waits for more time.
    expect(frame).toContain('Twenty minutes: Scrape both faces.');
    expect(frame).toContain("Don't run it: the oil is out, 1 rag is inside (Case cover)");
  });

  it('does not warn of what is over: the rag is out, the oil is in', () => {
    const bench = left();
    bench.mark({ do: 'cleared', piece: 'case-cover', what: 'all' });
    bench.mark({ do: 'done', task: 'fill' });
    bench.mark({ do: 'state', piece: 'case-cover', hole: '3', state: 'mended' });
    const { frame } = new Desk(bench, { now: LATER });
    expect(frame).not.toContain('Inside');
    expect(frame).not.toContain("Don't run");
  });

  it('comes for a test that is due, though all is back', () => {
    const bench = caseShut();
    bench.mark({ do: 'done', task: 'fill' });
    const desk = new Desk(bench, { now: LATER });
    expect(desk.screen).toBe('note');
    expect(desk.frame).toContain('Test now       Lever play');
  });
});

describe('the bench', () => {
  it('shouts of what is finger-tight and inside', () => {
    const bench = left();
    bench.mark({ do: 'in', piece: 'lever', hand: { kind: 'S' }, because: 'to try it' });
    expect(rowOf(bench).loud).toBe('1 bolt only by fingers, 1 rag inside');
    const desk = new Desk(bench, { on: { folder: 'jobs' }, now: LATER, colour: true });
    expect(desk.frame).toContain('\x1b[1;31m! 1 bolt only by fingers, 1 rag inside');
    expect(rowOf(new Bench(CASE)).loud).toBe('');
  });

  it('says what it waits for, and until when', () => {
    expect(rowOf(left(), '2026-04-20T10:00:00+02:00').next).toMatch(
      /^waits for cover gasket, promised 25 April; /,
    );
    const bench = left();
    bench.mark({ do: 'buy', buy: 'gasket', state: 'here' });
    expect(rowOf(bench).next).not.toContain('waits');
  });

  it('says when to look again', () => {
    const lid = 'lid: {bolts: S, "passes": [full, again after 10 hours]}';
    const bench = new Bench(`putback: 1\njob: Lid\nbolts: {S: M6x25}\npieces:\n  ${lid}\ndiary:\n`);
    bench.mark({ do: 'out', piece: 'lid' });
    bench.mark({ do: 'off', piece: 'lid' });
    bench.mark({ do: 'in', piece: 'lid', hand: { kind: 'S' } });
    bench.mark({ do: 'tight', piece: 'lid', pass: 'full' });
    expect(rowOf(bench, '2026-04-11T19:00:00+02:00').next).toContain('look again after 10 hours');
    expect(rowOf(bench).next).toContain('test: Lid: tighten again, cold');
  });
});

/** A test is passed by a clear word, and not before what it comes after is done. */
import { describe, expect, it } from 'vitest';
import { jobOf, readJob } from '../../../../src/job/read.ts';
import type { Entry } from '../../../../src/model/types.ts';
import { nextNow } from '../../../../src/plan/next/next-now.ts';
import { testList } from '../../../../src/plan/tests/testlist.ts';
import { foundWish } from '../../../../src/plan/trace/found.ts';
import { besideSaid, endSaid } from '../../../../src/plan/trace/say.ts';
import { traced } from '../../../../src/plan/trace/traced.ts';
import { SAME_DAY } from '../../../screens/desk.ts';
import { Bench, COVER } from '../../bench.ts';

const WEEP = COVER.replace(
  'diary:',
  `tasks:
  fill: {do: Fill, after: cover on}
  weep: {test: Cover weeps when hot?, after: cover on}
  idle: {test: Twenty minutes at idle, after: fill}
  play: {test: Lever play, limit: 2..4 mm, after: lever on}
diary:`,
);
const passed = { do: 'done', task: 'weep', result: 'passed' } as const;
const stateOf = ({ job }: Bench, test: string) =>
  testList(job, SAME_DAY).find((t) => t.test === test)?.state;

describe('a test before what it comes after', () => {
  it('is not noted without a reason, with its piece off or with bolts open', () => {
    const bench = new Bench(WEEP).openCover();
    const early = { code: 'early', before: ['cover on'] };
    expect(bench.refusal(passed)).toEqual(early);
    bench.fillCover();
    expect(bench.refusal(passed)).toEqual(early);
    expect(bench.refusal({ ...passed, result: 'dry after 10 min hot, passed' })).toEqual(early);
    expect(bench.refusal({ do: 'done', task: 'weep' })).toEqual(early);
    expect(bench.warnings({ ...passed, result: 'failed' })).toEqual(['early']);
    bench.tightenCover();
    expect(bench.mark(passed)).toMatchObject({ value: 'passed' });
  });

  it('is not let through by a task that was marked too early itself', () => {
    const bench = new Bench(WEEP).openCover();
    bench.mark({ do: 'done', task: 'fill' });
    expect(bench.refusal({ ...passed, task: 'idle' })).toEqual({
      code: 'early',
      before: ['cover on'],
    });
  });

  it('proves nothing of the piece once that is tight, whatever the reason was', () => {
    const bench = new Bench(WEEP).openCover().fillCover();
    bench.mark({ ...passed, because: 'it was run with the bolts in' });
    expect(stateOf(bench, 'weep')).toBe('passed');
    bench.tightenCover();
    expect(bench.piece().where).toBe('tight');
    expect(bench.job.tasks.get('weep')).toMatchObject({ done: null, early: true });
    expect(stateOf(bench, 'weep')).toBe('due');
    bench.mark(passed);
    expect(stateOf(bench, 'weep')).toBe('passed');
  });

  it('is asked for again of a diary that has it without a reason', () => {
    const bench = new Bench(WEEP).openCover().fillCover();
    const noted = { at: '2026-04-11T18:25:40+02:00', id: 'byhand', verb: 'done' } as const;
    bench.entries.push({ ...noted, task: 'weep', value: 'passed', result: 'passed' } as Entry);
    bench.tightenCover();
    expect(stateOf(bench, 'weep')).toBe('due');
    bench.entries.push({ ...noted, id: 'byhand2', task: 'idle', value: 'passed' } as Entry);
    bench.mark({ do: 'done', task: 'fill' });
    expect(stateOf(bench, 'idle')).toBe('due');
    for (const task of ['weep', 'idle']) bench.mark({ ...passed, task });
    expect(bench.piece().where).toBe('tested');
    const whole = jobOf({ ...readJob(bench.text, 'job.yaml'), entries: [...bench.entries] });
    expect(whole.tasks).toEqual(bench.job.tasks);
  });

  it('stays passed when the bolts are gone round once more', () => {
    const bench = new Bench(WEEP).openCover().fillCover().tightenCover();
    bench.mark(passed);
    const again = { at: '2026-04-11T18:25:40+02:00', id: 'byhand', verb: 'tight' } as const;
    bench.entries.push({ ...again, piece: 'cover', value: 'full', set: '10 N·m' } as Entry);
    expect(stateOf(bench, 'weep')).toBe('passed');
  });
});

describe('words that do not say whether a test passed', () => {
  const bench = new Bench(WEEP).openCover().fillCover().tightenCover();
  bench.mark({ do: 'in', piece: 'lever', hand: { kind: 'S' } });

  it.each(['still stalls', 'leaks', '8 kohm'])('%s: are asked about, reason or not', (result) => {
    for (const more of [{}, { because: 'meter says so' }]) {
      const verdict = bench.ask({ ...passed, result, ...more });
      expect(verdict).toMatchObject({
        ok: false,
        refused: { code: 'say-passed', overrulable: false },
      });
      const way = `--result 'passed, ${result}', or --result 'failed, ${result}'`;
      expect(verdict.ok ? '' : verdict.refused.say).toContain(way);
    }
  });

  it('stand beside the word, in the entry', () => {
    const ask = (result: string) => bench.ask({ ...passed, result });
    expect(ask('passed, dry')).toMatchObject({ entry: { value: 'passed', says: 'dry' } });
    expect(ask('failed, a drop at 3')).toMatchObject({
      entry: { value: 'failed', result: 'failed', says: 'a drop at 3' },
    });
  });

  it('are a reading where a limit judges it, and nothing else is', () => {
    const because = 'it is at hand';
    const ask = (result: string) => bench.ask({ do: 'done', task: 'play', result, because });
    expect(ask('3 mm')).toMatchObject({ entry: { result: '3 mm', judged: 'within' } });
    expect(ask('rather loose')).toMatchObject({ refused: { code: 'say-passed' } });
  });

  it('of a plain task are what came of it', () => {
    expect(bench.ask({ do: 'done', task: 'fill', result: '1.4 l' })).toMatchObject({ ok: true });
  });

  it('are noted where the same verdict has another word', () => {
    const again = new Bench(WEEP).openCover().fillCover().tightenCover();
    again.mark(passed);
    expect(again.mark({ ...passed, says: 'dry' })).toMatchObject({ says: 'dry' });
    expect(again.ask({ ...passed, says: 'dry' })).toMatchObject({ entry: null });
  });
});

describe('a reading beyond its limit that a reason let through', () => {
  const COIL = `putback: 1
job: Left cylinder dead
complaint: Runs on one cylinder
suspects: {coil: Coil open, jet: Jet blocked}
checks:
  ohms: {check: Coil primary, limit: 4..6 kohm, bad: coil}
diary:
`;

  it('stays bad, and proves no repair', () => {
    const bench = new Bench(COIL);
    bench.mark({ do: 'look', check: 'ohms', reading: '9 kohm' });
    bench.mark(foundWish(bench.job, 'coil'));
    bench.mark({ do: 'done', task: 'mend-coil' });
    const proof = { do: 'done', task: 'proof-coil', result: '8 kohm' } as const;
    expect(bench.refusal(proof)).toMatchObject({ code: 'out-of-limit' });
    bench.mark({ ...proof, because: 'meter says so' });
    const now = traced(bench.job);
    expect(now.proved).toBe(false);
    expect(besideSaid(bench.job, now).join()).toBe(
      'Coil primary: before 9 kohm (bad), now 8 kohm (bad, let through beyond its limit because “meter says so”)',
    );
    expect(endSaid(bench.job, now).join(' ')).not.toContain('proved:');
    bench.mark({ ...proof, result: '5 kohm' });
    expect(traced(bench.job).proved).toBe(true);
  });

  it('and the complaint is not gone before its proof is made', () => {
    const bench = new Bench(COIL);
    bench.mark({ do: 'look', check: 'ohms', how: 'bad' });
    bench.mark(foundWish(bench.job, 'coil'));
    const gone = { do: 'done', task: 'complaint-gone' } as const;
    expect(bench.refusal({ ...gone, result: 'passed' })).toMatchObject({ code: 'early' });
    bench.mark({ do: 'done', task: 'mend-coil' });
    bench.mark({ do: 'done', task: 'proof-coil', result: '5 kohm' });
    expect(bench.refusal({ ...gone, result: 'still stalls' })).toEqual({ code: 'say-passed' });
    expect(nextNow(bench.job, SAME_DAY)?.say).toContain('Runs on one cylinder');
  });
});

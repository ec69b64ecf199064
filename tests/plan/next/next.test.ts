import { describe, expect, it } from 'vitest';
import { nextStep, nextWork } from '../../../src/plan/next/next.ts';
import { Bench, COVER } from '../../job/bench.ts';

const next = (bench: Bench) => {
  const step = nextStep(bench.job);
  return step && [step.piece, step.hole, step.do];
};

describe('what is next', () => {
  it('leads down: what lies over, then what is under it, in loosening order', () => {
    const bench = new Bench();
    expect(next(bench)).toEqual(['lever', '1', 'out']);
    bench.mark({ do: 'out', piece: 'lever' });
    expect(next(bench)).toEqual(['lever', null, 'off']);
    bench.mark({ do: 'off', piece: 'lever' });
    expect(next(bench)?.[0]).toBe('cover');
    expect(next(bench)?.[2]).toBe('out');
  });

  it('goes on with the other piece that lies over, before the one under both', () => {
    const bench = new Bench(COVER.replace('under: [lever]', 'under: [lever, hose]'));
    bench.mark({ do: 'out', piece: 'lever' });
    bench.mark({ do: 'off', piece: 'lever' });
    expect(next(bench)).toEqual(['hose', null, 'off']);
  });

  it('takes off first what is still over a piece whose bolts are all out', () => {
    const bench = new Bench();
    bench.mark({ do: 'out', piece: 'cover' });
    expect(next(bench)).toEqual(['lever', '1', 'out']);
    bench.mark({ do: 'out', piece: 'lever' });
    bench.mark({ do: 'off', piece: 'lever' });
    expect(next(bench)).toEqual(['cover', null, 'off']);
  });

  it('names what holds a piece when every other bolt is out', () => {
    const bench = new Bench();
    bench.mark({ do: 'state', piece: 'cover', hole: '4', state: 'stuck' });
    bench.mark({ do: 'out', piece: 'cover', holes: ['1', '2', '3', '5'] });
    expect(next(bench)).toEqual(['cover', '4', 'mend']);
  });

  it('leads back up: settle, in, tight pass by pass, then what lies over', () => {
    const bench = new Bench();
    bench.mark({ do: 'out', piece: 'lever' });
    bench.mark({ do: 'off', piece: 'lever' });
    bench.mark({ do: 'out', piece: 'cover', row: 's l m+clip l s' });
    bench.mark({ do: 'off', piece: 'cover' });
    expect(next(bench)).toEqual(['cover', '2', 'settle']);
    bench.mark({ do: 'settle', piece: 'cover', hole: '2', kind: 'S' });
    expect(next(bench)).toEqual(['cover', '1', 'in']);
    bench.fillCover();
    expect(next(bench)?.slice(0, 1)).toEqual(['cover']);
    expect(next(bench)?.[2]).toBe('tight');
    bench.tightenCover();
    expect(next(bench)).toEqual(['cover', '1', 'tight']);
    expect(nextStep(bench.job)?.say).toBe('Cover: tighten 1, final, 10 N·m.');
    bench.mark({ do: 'tight', piece: 'cover' });
    expect(next(bench)).toEqual(['lever', '1', 'in']);
    bench.mark({ do: 'in', piece: 'lever', hand: { kind: 'S' }, because: 'a new one' });
    bench.mark({ do: 'tight', piece: 'lever' });
    bench.mark({ do: 'tight', piece: 'lever' });
    expect(nextStep(bench.job)).toBeNull();
  });

  it('goes on with the piece that was worked on last, whatever the clock said', () => {
    const bench = new Bench();
    bench.mark({ do: 'out', piece: 'cover', holes: ['1'] });
    bench.mark({ do: 'out', piece: 'cover', holes: ['2'] });
    const text = COVER.replace('  hose:', '  lid: {bolts: S S}\n  hose:');
    const two = new Bench(text);
    two.mark({ do: 'out', piece: 'cover', holes: ['1'] });
    two.mark({ do: 'out', piece: 'lid', holes: ['1'] });
    expect(next(two)?.[0]).toBe('lid');
  });
});

describe('what is next, said of the whole piece', () => {
  it('counts the bolts where many are to come out or to be tightened', () => {
    const bench = new Bench();
    const said = () => nextWork(bench.job)?.say;
    expect(said()).toBe('Lever: 1 bolt to come out.');
    bench.mark({ do: 'out', piece: 'lever' });
    bench.mark({ do: 'off', piece: 'lever' });
    expect(said()).toBe('Cover: 5 bolts to come out.');
    bench.mark({ do: 'out', piece: 'cover' });
    bench.mark({ do: 'off', piece: 'cover' });
    for (const kind of ['S', 'M', 'L']) bench.mark({ do: 'in', piece: 'cover', hand: { kind } });
    expect(said()).toBe('Cover: tighten, snug.');
    bench.mark({ do: 'tight', piece: 'cover', pass: 'snug' });
    bench.mark({ do: 'tight', piece: 'cover', pass: 'full', holes: ['1', '2'] });
    expect(said()).toBe('Cover: tighten, full, 10 N·m, 2 of 5 done.');
  });

  it('is at the same piece, and the same thing to do, as the exact one', () => {
    const bench = new Bench();
    const same = () => {
      const [exact, work] = [nextStep(bench.job), nextWork(bench.job)];
      expect([work?.piece, work?.do]).toEqual([exact?.piece, exact?.do]);
    };
    same();
    for (const piece of ['lever', 'cover']) {
      bench.mark({ do: 'out', piece });
      same();
      bench.mark({ do: 'off', piece });
      same();
    }
    for (const kind of ['S', 'M', 'L']) bench.mark({ do: 'in', piece: 'cover', hand: { kind } });
    same();
  });
});

/** Where nothing can be done, it is said what the job waits for. */
import { describe, expect, it } from 'vitest';
import { backAfter } from '../../../src/plan/next/back.ts';
import { nothingNext } from '../../../src/plan/next/nothing-next.ts';
import { Bench } from '../../job/bench.ts';

const NOW = '2026-04-11T19:00:00+02:00';
const said = (bench: Bench) => nothingNext(bench.job, backAfter(bench.job, NOW), NOW);

/** Off and on again, on the evening before. */
function back(more: string): Bench {
  const bench = new Bench(`putback: 1\njob: Hose\npieces: {shelf: {}}\n${more}diary:\n`);
  bench.mark({ do: 'off', piece: 'shelf' });
  bench.mark({ do: 'on', piece: 'shelf' });
  return bench;
}

describe('nothing is next', () => {
  it('is all that is said where nothing is waited for', () => {
    expect(said(back(''))).toBe('Nothing is next.');
  });

  it('is not said of a job in which no piece is noted', () => {
    const say = 'No piece is noted yet: say what comes off first.';
    expect(said(new Bench('putback: 1\njob: Nothing\ndiary:\n'))).toBe(say);
  });

  it('says that no test proves it, where a piece is tight again and none is listed', () => {
    const text =
      'putback: 1\njob: Whines\nbolts: {S: M6x20}\npieces: {shelf: {bolts: S}}\ndiary:\n';
    const bench = new Bench(text);
    bench.mark({ do: 'out', piece: 'shelf' });
    bench.mark({ do: 'off', piece: 'shelf' });
    bench.mark({ do: 'in', piece: 'shelf', hand: { kind: 'S' } });
    bench.mark({ do: 'tight', piece: 'shelf', set: '9 N·m' });
    bench.mark({ do: 'tight', piece: 'shelf', set: '9 N·m' });
    expect(said(bench)).toMatch(/^Nothing is next, and no test says that it holds/);
  });

  it('names the part, with its day', () => {
    const bench = new Bench(
      'putback: 1\njob: P\npieces: {hose: {}}\nbuy: {clip: {what: Hose clip, for: hose on}}\ndiary:\n',
    );
    bench.mark({ do: 'off', piece: 'hose' });
    bench.mark({ do: 'buy', buy: 'clip', state: 'ordered', promised: '2026-04-20' });
    expect(said(bench)).toBe('Nothing is next: it waits for Hose clip, promised 20 April.');
  });

  it('names the wait that runs, and a test whose day has not come', () => {
    const bench = back(
      'tasks:\n  set: {wait: Glue sets 24 h, after: shelf on}\n  look: {test: No drop, when: next day, after: shelf on}\n',
    );
    expect(said(bench)).toMatch(/^Nothing is next: it waits for Glue sets 24 h: until /);
    expect(said(bench)).toContain('No drop');
  });

  it('leaves what is to be tested now before all else', () => {
    expect(said(back('tasks: {look: {test: No drop, after: shelf on}}\n'))).toBe(
      'Nothing is left to do but what is to be tested.',
    );
  });
});

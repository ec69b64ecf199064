import { describe, expect, it } from 'vitest';
import type { Wish } from '../../../src/model/types.ts';
import { Bench, COVER } from '../bench.ts';

describe('what comes out of an opening that nobody names', () => {
  const two = () => {
    const bench = new Bench().openCover();
    bench.mark({ do: 'inside', piece: 'cover', what: '2 rags' });
    return bench;
  };

  it('comes out of the one that has it', () => {
    const bench = two();
    expect(bench.mark({ do: 'cleared', what: '2 rags' })).toMatchObject({ piece: 'cover' });
    expect(bench.job.inside).toEqual([]);
  });

  it('is asked about where several have it', () => {
    const bench = two();
    bench.mark({ do: 'inside', piece: 'lever', what: '1 rag' });
    expect(bench.refusal({ do: 'cleared', what: '1 rag' })).toEqual({
      code: 'which-opening',
      pieces: ['cover', 'lever'],
    });
    expect(bench.mark({ do: 'cleared', what: '2 rags' })).toMatchObject({ piece: 'cover' });
  });
});

describe('what is to be had', () => {
  const text = COVER.replace(
    'diary:',
    'buy:\n  gasket: {what: cover gasket, once: true, for: cover on}\ndiary:',
  );

  it('holds the piece until it is noted as here, or a reason is given', () => {
    const bench = new Bench(text).openCover();
    expect(bench.refusal({ do: 'on', piece: 'cover' })).toEqual({
      code: 'blocked',
      by: ['gasket'],
    });
    bench.mark({ do: 'buy', buy: 'gasket', state: 'ordered', promised: '2026-04-25' });
    expect(bench.refusal({ do: 'on', piece: 'cover' })).toEqual({
      code: 'blocked',
      by: ['gasket'],
    });
    const bolt: Wish = { do: 'in', piece: 'cover', holes: ['1'], hand: { kind: 'S' } };
    expect(bench.refusal(bolt)).toEqual({ code: 'blocked', by: ['gasket'] });
    bench.mark({ do: 'on', piece: 'cover', because: 'only to turn the engine over' });
    expect(bench.warnings(bolt)).toEqual(['not-here']);
    bench.mark({ do: 'buy', buy: 'gasket', state: 'here', tray: 'shelf' });
    expect(bench.warnings(bolt)).toEqual([]);
  });
});

describe('what is used once', () => {
  const text = COVER.replace(
    'diary:',
    'buy:\n  gasket: {what: cover gasket, once: true, for: cover  on}\ndiary:',
  );

  it('went in with the piece: after it came off again, another one is to be here', () => {
    const bench = new Bench(text).openCover();
    bench.mark({ do: 'buy', buy: 'gasket', state: 'here' });
    bench.mark({ do: 'on', piece: 'cover' });
    bench.fillCover();
    for (const pass of ['snug', 'full']) bench.mark({ do: 'tight', piece: 'cover', pass });
    bench.mark({ do: 'out', piece: 'cover' });
    bench.mark({ do: 'off', piece: 'cover' });
    expect(bench.refusal({ do: 'on', piece: 'cover' })).toEqual({
      code: 'blocked',
      by: ['gasket'],
    });
    bench.mark({ do: 'buy', buy: 'gasket', state: 'here' });
    expect(bench.mark({ do: 'on', piece: 'cover' }).verb).toBe('fitted');
  });
});

describe('names that are too long for a key of the file', () => {
  const long = 'x'.repeat(1030);
  const empty = 'putback: 1\njob: Long names\npieces: {cover: {bolts: S}}\ndiary:\n';

  it.each(['do', 'test', 'adjust', 'wait', 'decide', 'buy', 'check'] as const)(
    'one word of 1030 letters, added as %s, is written, and under a short key',
    (as) => {
      const bench = new Bench(empty);
      bench.mark({ do: 'add', as, text: long });
      const { tasks, buys, checks } = bench.job.upper;
      const keys = [...tasks.keys(), ...buys.keys(), ...checks.keys()];
      expect(keys.map((key) => key.length)).toEqual([60]);
    },
  );

  it('is no name of a new piece, and that is said', () => {
    const bench = new Bench(empty);
    expect(bench.refusal({ do: 'off', piece: long })).toMatchObject({ code: 'bad-name' });
    expect(bench.refusal({ do: 'out', piece: long, row: 'S S' })).toMatchObject({
      code: 'bad-name',
    });
  });
});

import { describe, expect, it } from 'vitest';
import { readJob } from '../../../src/job/read.ts';
import { Bench } from '../bench.ts';

const PIPES = `putback: 1
job: Gearbox drips
pieces:
  pipe: {bridges: [cover, pump]}
  plate: {along: cover}
  cover: {bolts: S S}
diary:
`;

function faultsOf(piece: string): string[] {
  return readJob(
    `putback: 1\njob: X\npieces:\n  cover:\n  pipe: ${piece}\n`,
    'job.yaml',
  ).faults.map((f) => `${f.line}:${f.column} ${f.code}`);
}

describe('a piece that joins two', () => {
  it('is told to be over them while it is on', () => {
    const bench = new Bench(PIPES);
    bench.mark({ do: 'out', piece: 'cover' });
    expect(bench.warnings({ do: 'off', piece: 'cover' })).toEqual(['still-over']);
    bench.mark({ do: 'off', piece: 'pipe' });
    expect(bench.warnings({ do: 'off', piece: 'cover' })).toEqual([]);
  });

  it('goes on only when those are back', () => {
    const bench = new Bench(PIPES);
    bench.mark({ do: 'off', piece: 'pipe' });
    bench.mark({ do: 'out', piece: 'cover' });
    bench.mark({ do: 'off', piece: 'cover' });
    expect(bench.refusal({ do: 'on', piece: 'pipe' })).toEqual({ code: 'blocked', by: ['cover'] });
  });

  it('may join what is no piece of the job, but a slip is told', () => {
    expect(faultsOf('{bridges: [cover, pump]}')).toEqual([]);
    expect(faultsOf('{bridges: [covre, pump]}')).toEqual(['5:20 unknown-piece']);
  });
});

describe('a piece that comes off with another', () => {
  it('keeps nothing waiting that it came off with', () => {
    const bench = new Bench(PIPES);
    bench.mark({ do: 'off', piece: 'pipe' });
    bench.mark({ do: 'out', piece: 'cover' });
    bench.mark({ do: 'off', piece: 'cover' });
    expect(bench.mark({ do: 'on', piece: 'cover' })).toMatchObject({ verb: 'fitted' });
  });

  it('is back on that one first where it was taken off by itself', () => {
    const bench = new Bench(PIPES);
    bench.mark({ do: 'off', piece: 'pipe' });
    bench.mark({ do: 'out', piece: 'cover' });
    bench.mark({ do: 'off', piece: 'cover' });
    bench.mark({ do: 'off', piece: 'plate' });
    expect(bench.refusal({ do: 'on', piece: 'cover' })).toEqual({ code: 'blocked', by: ['plate'] });
  });

  it('names a piece of the job', () => {
    expect(faultsOf('{along: nosuch}')).toEqual(['5:17 unknown-piece']);
  });
});

describe('what lies deeper', () => {
  const STACK = `putback: 1
job: Gearbox drips
pieces:
  guard: {}
  cover: {under: guard}
  seal: {under: cover}
diary:
`;

  it('is back first, also where what lies between never came off', () => {
    const bench = new Bench(STACK);
    bench.mark({ do: 'off', piece: 'guard' });
    bench.mark({ do: 'off', piece: 'seal' });
    expect(bench.refusal({ do: 'on', piece: 'guard' })).toEqual({ code: 'blocked', by: ['seal'] });
  });

  it('is not named where what lies over it is to be back first anyway', () => {
    const bench = new Bench(STACK);
    for (const piece of ['guard', 'cover', 'seal']) bench.mark({ do: 'off', piece });
    expect(bench.refusal({ do: 'on', piece: 'guard' })).toEqual({ code: 'blocked', by: ['cover'] });
  });

  it('has nothing inside when something goes on over it', () => {
    const bench = new Bench(STACK);
    bench.mark({ do: 'off', piece: 'guard' });
    bench.mark({ do: 'inside', piece: 'seal', what: '1 rag' });
    expect(bench.refusal({ do: 'on', piece: 'guard' })).toMatchObject({ code: 'inside' });
    bench.mark({ do: 'cleared', piece: 'seal', what: 'all' });
    expect(bench.mark({ do: 'on', piece: 'guard' }).verb).toBe('fitted');
  });
});

describe('a piece that is said to bridge itself', () => {
  it('does not wait for itself', () => {
    const bench = new Bench(PIPES.replace('[cover, pump]', '[pipe, cover]'));
    bench.mark({ do: 'off', piece: 'pipe' });
    expect(bench.mark({ do: 'on', piece: 'pipe' }).verb).toBe('fitted');
  });
});

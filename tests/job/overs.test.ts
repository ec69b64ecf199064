import { describe, expect, it } from 'vitest';
import { readJob } from '../../src/job/read.ts';
import { Bench } from './bench.ts';

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

/** A piece that came off before anybody noted its bolts has none of them in it. */
import { describe, expect, it } from 'vitest';
import { Bench } from '../bench.ts';

const JOB = 'putback: 1\njob: Wheel\npieces: {wheel: {}}\ndiary:\n';

describe('bolts that are written down when their piece is off already', () => {
  it('are out', () => {
    const bench = new Bench(JOB);
    bench.mark({ do: 'off', piece: 'wheel' });
    bench.mark({ do: 'write', piece: 'wheel', key: 'bolts', text: '? ?' });
    expect(bench.piece('wheel')).toMatchObject({ away: 'removed', where: 'open' });
    expect(bench.states('wheel')).toBe('out out');
  });

  it('stay in where the piece was only moved aside, or where it came off with a bolt in for a reason', () => {
    const aside = new Bench(JOB);
    aside.mark({ do: 'aside', piece: 'wheel' });
    aside.mark({ do: 'write', piece: 'wheel', key: 'bolts', text: '? ?' });
    expect(aside.states('wheel')).toBe('home home');
    const forced = new Bench(JOB.replace('wheel: {}', 'wheel: {bolts: "? ?"}'));
    forced.mark({ do: 'off', piece: 'wheel', because: 'the ears broke off' });
    expect(forced.states('wheel')).toBe('home home');
  });
});

/** The round at full torque that many bolts want: asked for while one gets at them, and told before the start. */
import { describe, expect, it } from 'vitest';
import { gate } from '../../../src/plan/gates/gate.ts';
import { roundLeft } from '../../../src/plan/piece/round-left.ts';
import { Bench, COVER } from '../../job/bench.ts';

const NOW = '2026-04-11T19:00:00+02:00';
const tight = () => new Bench().openCover().fillCover().tightenCover();
const left = (bench: Bench) => roundLeft(bench.job, bench.piece());
const atStart = (bench: Bench) =>
  gate(bench.job, 'start', null, NOW).items.find((item) => item.key === 'round-cover');

describe('once round at full torque', () => {
  it('is left when the bolts are tight, and over when each has had it', () => {
    const bench = tight();
    expect([bench.piece().where, left(bench)]).toEqual(['tight', ['1', '2', '3', '4', '5']]);
    bench.mark({ do: 'tight', piece: 'cover', holes: ['1', '2'] });
    expect(left(bench)).toEqual(['3', '4', '5']);
    bench.mark({ do: 'tight', piece: 'cover' });
    expect(left(bench)).toEqual([]);
  });

  it('is told at the start and stops nothing', () => {
    const bench = tight();
    expect(atStart(bench)).toMatchObject({
      ...{ say: 'Cover: not gone once round at full torque.', done: false, stops: false },
    });
    bench.mark({ do: 'tight', piece: 'cover' });
    expect(atStart(bench)).toBeUndefined();
  });

  it('is not asked for where something lies over it again', () => {
    const bench = tight();
    bench.mark({ do: 'in', piece: 'lever', hand: { kind: 'S' } });
    expect(left(bench)).toEqual([]);
  });

  it('is none of four bolts, nor without a figure', () => {
    for (const text of [
      COVER.replace('S S M+clip L S', 'S S M L'),
      COVER.replace(/ +torque.*\n/, ''),
    ]) {
      const bench = new Bench(text);
      for (const wish of [
        ...[
          { do: 'out', piece: 'lever' } as const,
          { do: 'off', piece: 'lever' } as const,
          { do: 'out', piece: 'cover' } as const,
          { do: 'off', piece: 'cover' } as const,
          { do: 'on', piece: 'cover' } as const,
        ],
      ])
        bench.mark(wish);
      for (const h of bench.piece().holes)
        bench.mark({
          do: 'in',
          piece: 'cover',
          holes: [h.name],
          hand: { kind: h.belongs?.kind ?? 'S', with: h.belongs?.with ?? [] },
        });
      bench.tightenCover();
      expect([bench.piece().where, left(bench)]).toEqual(['tight', []]);
    }
  });
});

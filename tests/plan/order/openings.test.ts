import { describe, expect, it } from 'vitest';
import { coverSaid, openOverNight, openToAsk } from '../../../src/plan/order/openings.ts';
import { Bench } from '../../job/bench.ts';

/** The clock of the bench stands on 11 April. */
const SAME = '2026-04-11T23:00:00+02:00';
const NEXT = '2026-04-12T08:00:00+02:00';

describe('what stands open over night', () => {
  it('is a piece that closed something, from the next day on', () => {
    const bench = new Bench().openCover();
    expect(openOverNight(bench.job, SAME)).toEqual([]);
    expect(openOverNight(bench.job, NEXT).map((o) => [o.name, o.covered])).toEqual([
      ['Cover', null],
    ]);
  });

  it('is known to be covered by a note on it since, not by one before', () => {
    const bench = new Bench();
    bench.mark({ do: 'note', piece: 'cover', text: 'bag over it' });
    bench.openCover();
    expect(openOverNight(bench.job, NEXT)[0]?.covered).toBeNull();
    bench.mark({ do: 'note', piece: 'cover', text: 'covered with foil' });
    expect(openOverNight(bench.job, NEXT)[0]?.covered).toBe('covered with foil');
  });

  it('is not covered by a note that says it is not, and is by what went inside', () => {
    const bench = new Bench().openCover();
    bench.mark({ do: 'note', piece: 'cover', text: 'not covered yet' });
    expect(openToAsk(bench.job, NEXT)?.piece).toBe('cover');
    bench.mark({ do: 'inside', piece: 'cover', what: '2 corks' });
    expect(openToAsk(bench.job, NEXT)).toBeNull();
  });

  it.each([
    ['2 rags, 1 plug', { inside: '2 rags, 1 plug' }],
    ['a rag in the port', { inside: '1 rag' }],
    ['foil over it', { note: 'foil over it' }],
    ['a board on top', { note: 'covered: a board on top' }],
    ['yes', { note: 'covered' }],
    ['no', null],
    ['it stood open', null],
    ['', null],
  ])('what is answered: %s', (text, said) => {
    expect(coverSaid(text)).toEqual(said);
  });

  it('is none that is back on', () => {
    const bench = new Bench().openCover().fillCover().tightenCover();
    expect(openOverNight(bench.job, NEXT)).toEqual([]);
  });
});

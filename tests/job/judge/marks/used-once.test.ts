import { describe, expect, it } from 'vitest';
import type { Wish } from '../../../../src/model/types.ts';
import { Bench } from '../../bench.ts';

const JOB = `putback: 1
job: Head off
bolts:
  T: M10x60 10.9 once, 14 mm
  S: M6x25 flange, 8 mm
pieces:
  head: {bolts: T T S+copper}
buy:
  gasket: {what: head gasket, once: true, for: head on}
diary:
`;
const off = (text = JOB) => {
  const bench = new Bench(text);
  bench.mark({ do: 'out', piece: 'head' });
  bench.mark({ do: 'off', piece: 'head' });
  return bench;
};
const put = (hole: string, kind: string, because?: string): Wish => ({
  do: 'in',
  piece: 'head',
  holes: [hole],
  hand: { kind },
  ...(because ? { because } : {}),
});
const here = (buy: string, what: string): Wish => ({
  do: 'buy',
  buy,
  state: 'here',
  add: { what, for: 'head on', once: true },
});

describe('a bolt that is used once and goes back in', () => {
  it('is asked about where it goes in, and the reason is kept; then it is told', () => {
    const bench = off();
    expect(bench.refusal(put('1', 'T'))).toEqual({
      code: 'used-once',
      holes: ['1'],
      buy: ['head-t'],
    });
    expect(bench.mark(put('1', 'T', 'measured, not stretched'))).toMatchObject({
      because: 'measured, not stretched',
    });
    expect(bench.warnings(put('2', 'T'))).toContain('used-once');
    bench.mark(put('2', 'T'));
    bench.mark(put('3', 'S'));
    const tight: Wish = { do: 'tight', piece: 'head', pass: 'snug' };
    expect(bench.warnings(tight)).toContain('used-once');
    expect(bench.ask(tight).ok).toBe(true);
  });

  it('is not, once new ones are noted as here', () => {
    const bench = off();
    bench.mark(here('head-t', 'M10x60 10.9 once, 14 mm'));
    bench.mark({ do: 'buy', buy: 'gasket', state: 'here' });
    expect(bench.ask(put('1', 'T')).ok).toBe(true);
    bench.mark(put('1', 'T'));
    bench.mark(put('2', 'T'));
    bench.mark(put('3', 'S'));
    const said = bench.ask({ do: 'tight', piece: 'head', pass: 'snug' });
    expect(said.ok && said.warnings.filter((w) => w.say.includes(' T is never'))).toEqual([]);
  });

  it('is asked again in the next round: those that were new went in', () => {
    const bench = off();
    bench.mark(here('head-t', 'M10x60 10.9 once, 14 mm'));
    bench.mark({ do: 'buy', buy: 'gasket', state: 'here' });
    for (const [hole, kind] of [
      ['1', 'T'],
      ['2', 'T'],
      ['3', 'S'],
    ] as const)
      bench.mark(put(hole, kind));
    bench.mark({ do: 'tight', piece: 'head', pass: 'snug' });
    bench.mark({ do: 'out', piece: 'head' });
    bench.mark({ do: 'off', piece: 'head' });
    // The list has it: used once already.
    expect(bench.refusal(put('1', 'T'))).toEqual({ code: 'blocked', by: ['gasket', 'head-t'] });
  });

  it('is asked where it is tightened, if nobody was asked before', () => {
    const bench = off();
    // As somebody wrote it by hand.
    bench.entries.push({
      at: '2026-04-11T18:30:00+02:00',
      id: 'byhand01',
      piece: 'head',
      verb: 'in',
      value: 'T T S+copper',
    });
    const tight: Wish = { do: 'tight', piece: 'head', pass: 'snug' };
    expect(bench.refusal(tight)).toMatchObject({ code: 'used-once', holes: ['1', '2'] });
    expect(bench.mark({ ...tight, because: 'new ones' })).toMatchObject({ because: 'new ones' });
    expect(bench.ask({ do: 'tight', piece: 'head', holes: ['1'], pass: 'full' }).ok).toBe(true);
  });

  it('that never came out is only tightened', () => {
    const bench = new Bench(JOB);
    expect(
      bench.warnings({ do: 'tight', piece: 'head', holes: ['1'], pass: 'snug' }),
    ).not.toContain('used-once');
  });
});

describe('washers and seals', () => {
  it('that seal once are a question, and hold nothing up', () => {
    const bench = off();
    const said = bench.ask(put('3', 'S', 'the old gasket is whole'));
    expect(
      said.ok && said.warnings.filter((w) => w.code === 'used-once').map((w) => w.say),
    ).toEqual(['copper under 3: seals once: a new one, or the old one flat again?']);
    expect(said.ok && said.warnings.at(-1)?.say).toBe('Not here yet: head gasket (wanted).');
    expect(bench.refusal(put('3', 'S'))).toEqual({ code: 'blocked', by: ['gasket'] });
    bench.mark(here('head-copper', 'copper washer'));
    bench.mark({ do: 'buy', buy: 'gasket', state: 'here' });
    expect(bench.warnings(put('3', 'S'))).not.toContain('used-once');
  });

  it('are told with the first bolt, and with the first that is tightened', () => {
    const bench = off();
    bench.mark(put('3', 'S', 'the old gasket is whole'));
    const second = bench.ask(put('1', 'T', 'new ones'));
    expect(second.ok && second.warnings.map((w) => w.say).join(' ')).not.toContain('gasket');
    bench.mark(put('1', 'T', 'new ones'));
    bench.mark(put('2', 'T'));
    const first = bench.ask({ do: 'tight', piece: 'head', holes: ['1'], pass: 'snug' });
    expect(first.ok && first.warnings.map((w) => w.say).join(' ')).toContain(
      'head gasket: used once',
    );
    bench.mark({ do: 'tight', piece: 'head', holes: ['1'], pass: 'snug' });
    const then = bench.ask({ do: 'tight', piece: 'head', holes: ['2'], pass: 'snug' });
    expect(then.ok && then.warnings.map((w) => w.say).join(' ')).not.toContain('gasket');
  });

  it('that joint, loose parts or the list name are told, until they are ticked as to hand', () => {
    const bench = off(
      JOB.replace('T T S+copper}', 'T T S+copper, joint: new sump gasket; O-ring}'),
    );
    const told = () => {
      const verdict = bench.ask(put('3', 'S', 'the old gasket is whole'));
      return verdict.ok ? verdict.warnings.filter((w) => w.code === 'used-once') : [];
    };
    expect(told().map((w) => w.say)).toEqual([
      'copper under 3: seals once: a new one, or the old one flat again?',
      'O-ring: a new one, or does the old one do? (head-o-ring)',
    ]);
    bench.mark({
      do: 'gate',
      moment: 'sealing',
      piece: 'head',
      how: 'seen',
      item: 'part-head-o-ring',
    });
    expect(told()).toHaveLength(1);
  });

  it('that the list calls once are asked about under a head, and the reason is kept', () => {
    const bench = off(
      JOB.replace('buy:', 'buy:\n  rings: {what: copper rings, once: true, for: head on}'),
    );
    expect(bench.refusal(put('3', 'S'))).toMatchObject({ code: 'used-once', holes: ['3'] });
    expect(bench.mark(put('3', 'S', 'annealed'))).toMatchObject({ because: 'annealed' });
  });

  it('of a piece without bolts are told when it goes on', () => {
    const bench = new Bench(JOB.replace('pieces:', 'pieces:\n  hose: {joint: new crush washers}'));
    bench.mark({ do: 'off', piece: 'hose' });
    expect(bench.warnings({ do: 'on', piece: 'hose' })).toEqual(['used-once']);
  });
});

import { describe, expect, it } from 'vitest';
import type { Wish } from '../../../../src/model/types.ts';
import { Bench } from '../../bench.ts';

const JOB = `putback: 1
job: Cover off
bolts: {S: M6x25, M: M6x35}
pieces:
  cover: {bolts: S M M M}
  guard: {bolts: M S}
diary:
`;
const off = (text = JOB, row = 'S M M M') => {
  const bench = new Bench(text);
  bench.mark({ do: 'out', piece: 'cover', row });
  bench.mark({ do: 'off', piece: 'cover' });
  return bench;
};
const put = (holes: string[], kind: string, because?: string): Wish => {
  const reason = because ? { because } : {};
  return { do: 'in', piece: 'cover', holes, hand: { kind }, ...reason };
};
const said = (bench: Bench, wish: Wish) => {
  const verdict = bench.ask(wish);
  return verdict.ok ? verdict.warnings.map((w) => w.say).join(' ') : verdict.refused.say;
};

describe('more bolts of a kind than the job has', () => {
  it('are stopped where the rest of them are counted', () => {
    const bench = off();
    bench.mark(put(['1'], 'M', 'S is bent'));
    bench.mark(put(['2', '3'], 'M'));
    expect(bench.refusal(put(['4'], 'M'))).toMatchObject({ code: 'none-left', kind: 'M' });
    expect(said(bench, put(['4'], 'M'))).toBe(
      'The job has 4 M, in 1, 2 and 3 and 1 of Guard: where does this one come from?',
    );
  });

  it('several at once too', () => {
    const bench = off();
    bench.mark(put(['1'], 'M', 'S is bent'));
    expect(bench.refusal(put(['2', '3', '4'], 'M'))).toMatchObject({ code: 'none-left' });
    expect(bench.ask(put(['2', '3'], 'M')).ok).toBe(true);
  });

  it('the STOP of a wrong bolt says it too, and a reason does not silence it', () => {
    const bench = off();
    bench.mark(put(['2', '3', '4'], 'M'));
    expect(said(bench, put(['1'], 'M'))).toContain('The job has 4 M, in 2, 3 and 4 and 1 of Guard');
    expect(said(bench, put(['1'], 'M', 'found in the box'))).toContain('where does this one come');
  });

  it('those of another piece that is off are there to be taken', () => {
    const bench = off();
    bench.mark({ do: 'out', piece: 'guard', row: 'M S' });
    bench.mark(put(['1'], 'M', 'S is bent'));
    expect(bench.ask(put(['2', '3', '4'], 'M')).ok).toBe(true);
  });

  it('new ones that are noted as here count', () => {
    const bench = off();
    bench.mark(put(['1'], 'M', 'S is bent'));
    bench.mark(put(['2', '3'], 'M'));
    const add = { what: 'M6x35', for: 'cover on' };
    bench.mark({ do: 'buy', buy: 'spare', state: 'here', add });
    expect(bench.ask(put(['4'], 'M')).ok).toBe(true);
  });

  it('nothing is said where nobody knows what is in some hole', () => {
    const bench = off(JOB.replace('guard: {bolts: M S}', 'guard: {bolts: "? ?"}'));
    bench.mark(put(['1'], 'M', 'S is bent'));
    expect(bench.ask(put(['2', '3', '4'], 'M')).ok).toBe(true);
  });

  it('a hole that was found empty takes its own kind, and it is told that it did not come from there', () => {
    const bench = off(JOB, 'S M M -');
    bench.mark(put(['2', '3'], 'M'));
    expect(said(bench, put(['4'], 'M'))).toContain('4 was found empty: this one did not come out');
    expect(bench.warnings(put(['4'], 'M'))).toContain('found-empty');
  });
});

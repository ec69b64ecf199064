import { describe, expect, it } from 'vitest';
import { knownRows } from '../../../src/plan/known/rows.ts';
import { Bench } from '../../job/bench.ts';
import { GRINDER, LEFT_COVER } from '../../screens/covers.ts';
import { CASE } from '../../screens/plan-jobs.ts';

const BOTH_WAYS = LEFT_COVER.replace(
  'hose:',
  'hose: {caution: Hot for an hour., note: brittle, holes: {3: {note: long}}}',
);

describe('rows of what is known', () => {
  it.each([
    ['a cover', LEFT_COVER],
    ['a grinder', GRINDER],
    ['a case', CASE],
    ['a caution for both ways', BOTH_WAYS],
  ])('of %s have each a name of its own, that a correction does not change', (_, text) => {
    const bench = new Bench(text);
    const all = () =>
      [
        ...[...bench.job.pieces.keys()].map((piece) => ({ piece })),
        ...[...bench.job.tasks.keys()].map((task) => ({ task })),
      ].map((of) => knownRows(bench.job, of).map((r) => r.id));
    const before = all();
    for (const ids of before) expect(new Set(ids).size).toBe(ids.length);
    for (const piece of bench.job.pieces.keys()) {
      for (const { figure } of knownRows(bench.job, { piece })) {
        if (figure?.what !== 'torque' || figure.hole !== undefined) continue;
        bench.mark({ do: 'correct', piece, what: 'torque', truth: '3 N·m' });
      }
    }
    expect(all()).toEqual(before);
  });

  it('say a caution that holds for both ways once, and it is corrected in both', () => {
    const bench = new Bench(BOTH_WAYS);
    const cautions = () =>
      knownRows(bench.job, { piece: 'hose' }).filter((r) => /^Caution/.test(r.label));
    expect(cautions()).toMatchObject([{ label: 'Caution', text: 'Hot for an hour.' }]);
    bench.mark({ do: 'correct', piece: 'hose', what: 'caution', truth: 'Never hot.' });
    expect(cautions()).toMatchObject([{ label: 'Caution', printed: 'Hot for an hour.' }]);
    const never = { text: 'Never hot.', printed: 'Hot for an hour.' };
    expect(bench.piece('hose').spec.caution).toEqual({
      removal: [never],
      fitting: [never],
    });
  });
});

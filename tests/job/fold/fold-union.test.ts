import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fold } from '../../../src/job/fold/fold.ts';
import { unite } from '../../../src/job/merge/merge.ts';
import { readJob } from '../../../src/job/read.ts';
import type { Entry } from '../../../src/model/types.ts';
import { Bench, COVER } from '../bench.ts';

const upper = readJob(COVER, 'job.yaml').upper;

/** The cover open on both benches before they part. */
const base = new Bench().openCover().entries;

/** What one bench notes by itself, let in at its own door. */
function marks(
  side: string,
  holes: readonly string[],
  kinds: readonly string[],
  minutes: number[],
): Entry[] {
  return holes.map((hole, i) => ({
    at: `2026-05-01T10:${String((minutes[i] ?? 0) % 60).padStart(2, '0')}:00+02:00`,
    id: `${side}${String(i).padStart(4, '0')}`,
    piece: 'cover',
    hole: [hole],
    verb: 'in',
    value: kinds[i] ?? 'S',
  }));
}

const side = (name: string) =>
  fc
    .tuple(
      fc.uniqueArray(fc.constantFrom('1', '2', '3', '4', '5'), { maxLength: 5 }),
      fc.array(fc.constantFrom('S', 'M+clip', 'L'), { minLength: 5, maxLength: 5 }),
      fc.array(fc.nat(59), { minLength: 5, maxLength: 5 }).map((m) => m.sort((a, b) => a - b)),
    )
    .map(([holes, kinds, minutes]) => marks(name, holes, kinds, minutes));

/** What the person at the bench sees of a fold. */
function seen(entries: readonly Entry[]) {
  const job = fold(upper, entries);
  return [...job.pieces.values()].map((p) => [
    p.where,
    p.round,
    p.holes.map((h) => [
      h.name,
      h.state,
      h.state === 'conflict' ? null : h.holds,
      h.passes,
      h.trouble,
    ]),
  ]);
}

describe('two diaries united', () => {
  it('fold the same either way round', () => {
    fc.assert(
      fc.property(side('ours'), side('them'), (ours, theirs) => {
        const one = unite(base, [...base, ...ours], [...base, ...theirs]);
        const other = unite(base, [...base, ...theirs], [...base, ...ours]);
        expect(fold(upper, one).conflicts).toEqual(fold(upper, other).conflicts);
        expect(seen(one)).toEqual(seen(other));
      }),
      { numRuns: 500 },
    );
  });

  it('by plain union of lines, as git does it without the driver: the same holes stand the same way', () => {
    fc.assert(
      fc.property(side('ours'), side('them'), (ours, theirs) => {
        const one = seen([...base, ...ours, ...theirs]);
        expect(seen([...base, ...theirs, ...ours])).toEqual(one);
        expect(seen(unite(base, [...base, ...ours], [...base, ...theirs]))).toEqual(one);
      }),
      { numRuns: 500 },
    );
  });

  it('keep every mark that both agree on, and make a conflict of each that they do not', () => {
    fc.assert(
      fc.property(side('ours'), side('them'), (ours, theirs) => {
        const job = fold(upper, unite(base, [...base, ...ours], [...base, ...theirs]));
        for (const hole of job.pieces.get('cover')?.holes ?? []) {
          const said = [...ours, ...theirs]
            .filter((e) => e.hole?.[0] === hole.name)
            .map((e) => e.value);
          const kinds = new Set(said);
          const state = kinds.size === 0 ? 'out' : kinds.size === 1 ? 'in' : 'conflict';
          expect(hole.state).toBe(state);
        }
      }),
      { numRuns: 500 },
    );
  });
});

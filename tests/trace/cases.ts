/** Cases for the tests of tracing: short to write, and random ones from a seed. */
import type { Check, Cover, Suspect, TraceInput, TraceLikely } from '../../src/trace/types.ts';

/** Numbers from 0 to 1, the same for the same seed (mulberry32). */
export function seeded(seed: number): () => number {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

export const suspect = (
  name: string,
  likely: Suspect['likely'] = null,
  repair: number | null = null,
): Suspect => ({ name, likely, repair });

export const check = (
  name: string,
  bad: string,
  takes: number | null = 1,
  more: Partial<Check> = {},
): Check => ({ name, takes, bad: words(bad), along: [], behind: [], ...more });

export const cover = (name: string, takes: number | null): Cover => ({ name, takes });

export const asked = (
  suspects: readonly Suspect[],
  checks: readonly Check[],
  more: Partial<TraceInput> = {},
): TraceInput => ({ suspects, checks, covers: [], marks: [], ...more });

/** Marks as `spark:bad flow:good`. */
export const marks = (text: string): TraceInput['marks'] =>
  words(text).map((mark) => {
    const [check = '', says] = mark.split(':');
    return { check, says: says as 'good' | 'bad' | 'unclear' };
  });

export const words = (text: string): string[] => text.split(' ').filter((word) => word !== '');

const LIKELY: readonly (TraceLikely | null)[] = ['often', 'now and then', 'rarely', null];

export interface Sizes {
  suspects: number;
  checks: number;
  covers: number;
  /** The least and the greatest share of the suspects that a check shows. */
  shows: readonly [number, number];
}

/** Whole minutes, so that sums are exact: looks of 1 to 10, some costless where few; covers of 5 to 24. */
export function randomCase(random: () => number, sizes: Sizes): TraceInput {
  const upTo = (n: number) => Math.floor(random() * n);
  const many = <T>(n: number, make: (i: number) => T) =>
    Array.from({ length: n }, (_, i) => make(i));
  const names = many(sizes.suspects, (i) => `s${i}`);
  const covers = many(sizes.covers, (i) => cover(`c${i}`, 5 + upTo(20)));
  const [least, most] = sizes.shows;
  return asked(
    names.map((name) => suspect(name, LIKELY[upTo(3)])),
    many(sizes.checks, (i) => {
      const share = least + (most - least) * random();
      const shown = names.filter(() => random() < share).join(' ');
      const behind = covers.map(({ name }) => name).filter(() => random() < 0.4);
      return check(`t${i}`, shown, sizes.suspects < 10 ? upTo(8) : 1 + upTo(10), { behind });
    }),
    { covers },
  );
}

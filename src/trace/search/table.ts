/**
 * The least expected minutes for every set of up to 16 states, covers left out, by dynamic programming over sets.
 *
 * What a set costs depends only on the set: V(S) = min over the tests that part S of cⱼ p(S) + V(S ∩ dⱼ) + V(S \ dⱼ),
 * and V(S) = 0 for one state (Garey, Optimal binary identification procedures, SIAM J. Appl. Math. 23, 1972).
 * p is not made to sum to one here, so that minutes and chances in whole numbers add up exactly.
 *
 * O(2ⁿ × tests) steps; memory: two numbers of 8 bytes for each of 2ⁿ sets.
 */
import type { Problem, States } from './problem.ts';

/** 2^16 sets × 24 tests: some 10 ms. */
export const MOST_STATES = 16;

/** V of each set, a set being a number with bit i for state i. */
export function leastOfSets({ p, tests }: Pick<Problem, 'p' | 'tests'>): Float64Array {
  const sets = 2 ** p.length;
  const mass = new Float64Array(sets);
  const V = new Float64Array(sets);
  const all = tests.map(({ c, d }) => ({ c, d: setOf([...d.keys()].filter((i) => d[i] === 1)) }));
  for (let S = 1; S < sets; S += 1) {
    const rest = S & (S - 1);
    const m = (mass[rest] ?? 0) + (p[31 - Math.clz32(S ^ rest)] ?? 0);
    mass[S] = m;
    if (rest === 0) continue;
    let least = Number.POSITIVE_INFINITY;
    for (const { c, d } of all) {
      const bad = S & d;
      if (bad === 0 || bad === S) continue;
      const minutes = c * m + (V[bad] ?? 0) + (V[S ^ bad] ?? 0);
      if (minutes < least) least = minutes;
    }
    V[S] = least;
  }
  return V;
}

export const setOf = (S: States): number => S.reduce((set, i) => set | (1 << i), 0);

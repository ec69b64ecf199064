/**
 * The bare question behind a trace, with the symbols of Pattipati & Alexandridis (Application of heuristic search
 * and information theory to sequential fault diagnosis, IEEE Trans. SMC 20(4), 1990): states sᵢ with chances pᵢ,
 * of which exactly one holds; tests tⱼ that cost cⱼ and come out bad where dᵢⱼ = 1. Added here: covers. A test may
 * lie behind some; opening cover k costs aₖ once, and it stays open for all that follows.
 */

export interface Problem {
  /** Chances of the states, above zero, on any scale. Some test tells any two states apart. */
  p: readonly number[];
  tests: readonly Test[];
  /** Minutes to open each cover. */
  a: readonly number[];
}

export interface Test {
  /** Minutes. */
  c: number;
  /** For each state 1 where this test would come out bad. */
  d: Uint8Array;
  /** Covers, ascending. */
  behind: readonly number[];
}

/** States, ascending. */
export type States = readonly number[];

/** Where a search may stand: what it can still be, and for each cover 1 where it is open. */
export interface SearchStanding {
  S: States;
  open: Uint8Array;
}

/** A test that tells some of the states left from others. */
export interface Option {
  /** Number of the test. */
  j: number;
  /** Minutes, with the covers that are still shut. */
  minutes: number;
  /** Covers that it opens. */
  opens: readonly number[];
  /** States left where it comes out bad, and good. */
  bad: States;
  good: States;
}

/** Nothing looked at, and all covers shut. */
export const startOf = ({ p, a }: Problem): SearchStanding => ({
  S: [...p.keys()],
  open: new Uint8Array(a.length),
});

/** p(S). */
export function massOf(p: readonly number[], S: States): number {
  let mass = 0;
  for (const i of S) mass += p[i] ?? 0;
  return mass;
}

/** States for which a way of parting them is still an exact number, a bit for each; equal ways are not looked for beyond. */
const MOST_BITS = 52;

type Candidate = Pick<Option, 'j' | 'opens'> & { test: Test };

/**
 * The tests worth making. Of two that part S alike one makes the other useless if it costs no more by itself and
 * lies behind no cover that the other does not open. O(tests × states).
 */
export function optionsAt({ tests, a }: Problem, { S, open }: SearchStanding): Option[] {
  const alike = new Map<number, Candidate[]>();
  for (const [j, test] of tests.entries()) {
    const first = test.d[S[0] ?? 0];
    let parting = 0;
    for (const i of S) parting = parting * 2 + (test.d[i] === first ? 0 : 1);
    if (parting === 0) continue;
    const key = S.length <= MOST_BITS ? parting : -1 - j;
    const others = alike.get(key) ?? [];
    const candidate = { j, test, opens: test.behind.filter((k) => open[k] !== 1) };
    if (others.some((other) => replaces(other, candidate))) continue;
    alike.set(key, [...others.filter((other) => !replaces(candidate, other)), candidate]);
  }
  return [...alike.values()].flat().map(({ j, test, opens }) => {
    let minutes = test.c;
    for (const k of opens) minutes += a[k] ?? 0;
    return { j, minutes, opens, ...partedBy(test, S) };
  });
}

const replaces = (one: Candidate, other: Candidate) =>
  one.test.c <= other.test.c && one.opens.every((k) => other.opens.includes(k));

function partedBy({ d }: Test, S: States): { bad: States; good: States } {
  let count = 0;
  for (const i of S) count += d[i] ?? 0;
  // As long as they get, and no longer: a search keeps many thousands.
  const [bad, good] = [new Array<number>(count), new Array<number>(S.length - count)];
  let [b, g] = [0, 0];
  for (const i of S) {
    if (d[i] === 1) bad[b++] = i;
    else good[g++] = i;
  }
  return { bad, good };
}

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
export function optionsAt(problem: Problem, { S, open }: SearchStanding): Option[] {
  const alike = new Map<number, Candidate[]>();
  let j = -1;
  for (const test of problem.tests) {
    j += 1;
    const first = test.d[S[0] ?? 0];
    let parting = 0;
    for (const i of S) parting = parting * 2 + (test.d[i] === first ? 0 : 1);
    if (parting === 0) continue;
    const key = S.length <= MOST_BITS ? parting : -1 - j;
    const candidate = { j, test, opens: shutOf(test, open) };
    const others = alike.get(key);
    if (!others) alike.set(key, [candidate]);
    else if (!others.some((other) => replaces(other, candidate)))
      alike.set(key, [...others.filter((other) => !replaces(candidate, other)), candidate]);
  }
  const options: Option[] = [];
  alike.forEach((some) => {
    for (const candidate of some) options.push(optionOf(problem, S, candidate));
  });
  return options;
}

/** Covers before it that are still shut. */
const shutOf = ({ behind }: Test, open: Uint8Array): readonly number[] =>
  behind.every((k) => open[k] !== 1) ? behind : behind.filter((k) => open[k] !== 1);

const replaces = (one: Candidate, other: Candidate) =>
  one.test.c <= other.test.c && one.opens.every((k) => other.opens.includes(k));

/** The test that tells most for its minutes; a costless one before all. Null where none parts S. */
export function mostTelling(problem: Problem, { S, open }: SearchStanding): Option | null {
  const { p, tests, a } = problem;
  const mass = massOf(p, S);
  let best: Test | null = null;
  let most = -1;
  for (const test of tests) {
    const { c, d, behind } = test;
    let minutes = c;
    let inBad = 0;
    let count = 0;
    for (const k of behind) if (open[k] !== 1) minutes += a[k] ?? 0;
    for (const i of S) {
      if (d[i] !== 1) continue;
      inBad += p[i] ?? 0;
      count += 1;
    }
    if (count === 0 || count === S.length) continue;
    const bits = entropy(inBad / mass);
    const told = minutes > 0 ? bits / minutes : Number.POSITIVE_INFINITY;
    if (told <= most) continue;
    best = test;
    most = told;
  }
  if (!best) return null;
  return optionOf(problem, S, { j: tests.indexOf(best), test: best, opens: shutOf(best, open) });
}

/** Bits that the answer of a test tells, which is bad with the chance q. */
export const entropy = (q: number): number =>
  q > 0 && q < 1 ? -q * Math.log2(q) - (1 - q) * Math.log2(1 - q) : 0;

function optionOf({ a }: Problem, S: States, { j, test, opens }: Candidate): Option {
  let minutes = test.c;
  for (const k of opens) minutes += a[k] ?? 0;
  return { j, minutes, opens, ...partedBy(test, S) };
}

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

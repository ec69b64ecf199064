/**
 * The bare problem for what is left, as small as it gets: suspects that no check tells apart are one state, checks
 * that tell nothing or no more than a cheaper one are left out, and so are covers that cost nothing, lie before
 * one check only (then their minutes are that check's) or are always opened together (then they are one).
 */
import { optionsAt, type Problem, startOf, type Test } from './search/problem.ts';
import type { Timed } from './times.ts';

export interface Reduced {
  problem: Problem;
  /** Suspects of each state. */
  groups: string[][];
  /** The check behind each test. */
  checks: Timed[];
}

export function reduce(
  left: readonly string[],
  weights: ReadonlyMap<string, number>,
  checks: readonly Timed[],
  covers: ReadonlyMap<string, number>,
): Reduced {
  const parting = checks.filter(({ shows }) => tells(shows, left));
  const groups = grouped(left, (name) => parting.map(({ shows }) => +shows.has(name)).join(''));
  const p = chances(groups, weights);
  const names = [...covers.keys()];
  const tests = parting.map(({ minutes, shows, behind }) => ({
    c: minutes,
    d: Uint8Array.from(groups, ([name = '']) => +shows.has(name)),
    behind: names.flatMap((name, k) => (behind.includes(name) ? [k] : [])),
  }));
  const a = [...covers.values()];
  const all = { p, tests, a };
  const kept = optionsAt(all, startOf(all))
    .map(({ j }) => j)
    .sort((one, other) => one - other);
  const pick = <T>(from: readonly T[]) => kept.flatMap((j) => from[j] ?? []);
  return {
    problem: { p, ...withFewerCovers(pick(tests), a) },
    groups,
    checks: pick(parting),
  };
}

/** Whether a check that shows these tells some of those left from others. */
export function tells(shows: ReadonlySet<string>, left: readonly string[]): boolean {
  const shown = left.filter((name) => shows.has(name)).length;
  return shown > 0 && shown < left.length;
}

function grouped<T>(all: readonly T[], keyOf: (one: T) => string): T[][] {
  const groups = new Map<string, T[]>();
  for (const one of all) groups.set(keyOf(one), [...(groups.get(keyOf(one)) ?? []), one]);
  return [...groups.values()];
}

/** Against the heaviest; far below it still above zero, so that nothing is divided by nothing. */
function chances(groups: readonly string[][], weights: ReadonlyMap<string, number>): number[] {
  const heaviest = Math.max(...groups.flat().map((name) => weights.get(name) ?? 0));
  const chance = (name: string) => Math.max((weights.get(name) ?? 0) / heaviest, 1e-12);
  return groups.map((group) => group.reduce((sum, name) => sum + chance(name), 0));
}

function withFewerCovers(tests: readonly Test[], a: readonly number[]): Omit<Problem, 'p'> {
  const before = (k: number) =>
    [...tests.keys()].filter((j) => tests[j]?.behind.includes(k)).join();
  const used = [...a.keys()].filter((k) => (a[k] ?? 0) > 0 && before(k) !== '');
  const together = grouped(used, before).map((covers) => ({
    first: covers[0] ?? 0,
    minutes: covers.reduce((sum, k) => sum + (a[k] ?? 0), 0),
    one: !before(covers[0] ?? 0).includes(','),
  }));
  const shared = together.filter(({ one }) => !one);
  const own = together.filter(({ one }) => one);
  return {
    tests: tests.map(({ c, d, behind }) => ({
      c: own.reduce((sum, { first, minutes }) => sum + (behind.includes(first) ? minutes : 0), c),
      d,
      behind: shared.flatMap(({ first }, k) => (behind.includes(first) ? [k] : [])),
    })),
    a: shared.map(({ minutes }) => minutes),
  };
}

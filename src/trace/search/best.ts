/** The best way of tests for a problem, with the bounds that suit its size. */
import { pricesOf } from './prices.ts';
import { massOf, type Problem, type States } from './problem.ts';
import { type Lower, type SearchFound, search } from './search.ts';
import { leastOfSets, MOST_STATES, setOf } from './table.ts';
import { toldBound } from './told.ts';

/** Exact for up to 16 states (see `byTable`), else within a bound that is told. */
export function bestWay(problem: Problem): SearchFound {
  return search(problem, problem.p.length <= MOST_STATES ? byTable(problem) : byBounds(problem));
}

/**
 * From tables over all sets. Without covers the table is the answer, and the search only follows it. With covers
 * two bounds hold: as if all were open; and with each cover's minutes in the prices of the tests behind it, less the
 * minutes of those that are open, because opening them first would have cost just that.
 */
function byTable(problem: Problem): Lower {
  const { p, a, tests } = problem;
  const bare = leastOfSets(problem);
  const prices = pricesOf(
    problem,
    tests.map(({ behind }, j) => ({ j, opens: behind })),
    p.length,
  );
  const paid =
    a.length === 0
      ? bare
      : leastOfSets({ p, tests: tests.map((test, j) => ({ ...test, c: prices[j] ?? 0 })) });
  const least = (S: States, opened: number) => {
    const set = setOf(S);
    return Math.max(bare[set] ?? 0, (paid[set] ?? 0) - opened * massOf(p, S));
  };
  return ({ S, open }) => {
    const opened = a.reduce((sum, minutes, k) => (open[k] === 1 ? sum + minutes : sum), 0);
    return {
      lower: least(S, opened),
      behind: ({ opens, bad, good }) => {
        const all = opens.reduce((sum, k) => sum + (a[k] ?? 0), opened);
        return { bad: least(bad, all), good: least(good, all) };
      },
    };
  };
}

/** From what the tests can tell, at each standing looked into. */
export function byBounds(problem: Problem): Lower {
  const { p, a } = problem;
  return ({ S }, options) => {
    const told = toldBound(p, S, options, pricesOf(problem, options, S.length));
    return {
      lower: told.lower,
      behind: (option) => {
        const { bad, good } = told.behind(option);
        // A cover that it opens was in the prices of the others.
        const opened = option.opens.reduce((sum, k) => sum + (a[k] ?? 0), 0);
        const less = (bound: number, side: States) =>
          opened === 0 ? bound : Math.max(0, bound - opened * massOf(p, side));
        return { bad: less(bad, option.bad), good: less(good, option.good) };
      },
    };
  };
}

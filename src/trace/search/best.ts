/** The best way of tests for a problem, with the bounds that suit its size. */
import { depthBound } from './depth.ts';
import { pairsBound } from './pairs.ts';
import { pricesOf } from './prices.ts';
import { massOf, type Problem } from './problem.ts';
import { type Found, type Lower, search } from './search.ts';
import { leastOfSets, MOST_STATES, setOf } from './table.ts';

/** Exact for up to 16 states (see `byTable`), else within a bound that is told. */
export function bestWay(problem: Problem): Found {
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
  if (a.length === 0) return ({ S }) => bare[setOf(S)] ?? 0;
  const prices = pricesOf(
    problem,
    tests.map(({ behind }, j) => ({ j, opens: behind })),
    p.length,
  );
  const paid = leastOfSets({ p, tests: tests.map((test, j) => ({ ...test, c: prices[j] ?? 0 })) });
  return ({ S, open }) => {
    const set = setOf(S);
    const opened = a.reduce((sum, minutes, k) => (open[k] === 1 ? sum + minutes : sum), 0);
    return Math.max(bare[set] ?? 0, (paid[set] ?? 0) - opened * massOf(p, S));
  };
}

/** The higher of two bounds made at each standing: which that is depends on the tests. */
function byBounds(problem: Problem): Lower {
  const { p } = problem;
  return ({ S }, options) => {
    const prices = pricesOf(problem, options, S.length);
    const chances = Float64Array.from(S, (i) => p[i] ?? 0).sort();
    return Math.max(
      pairsBound(p, S, options, prices),
      depthBound(chances, Float64Array.from(prices).sort()),
    );
  };
}

/**
 * Prices for tests that no way on can undercut, with covers paid in them.
 *
 * A cover is paid once on a way, however many tests behind it are made: shared out evenly among all that there could
 * be, what the tests of one way pay together is never more than the cover. No way makes more tests than there are
 * states, less one.
 */
import type { Problem } from './problem.ts';

interface Asked {
  /** Number of the test. */
  j: number;
  /** Covers that it would open. */
  opens: readonly number[];
}

/** Minutes of each test asked about, where these are all that could part so many states. */
export function pricesOf({ tests, a }: Problem, asked: readonly Asked[], states: number): number[] {
  const behind = new Map<number, number>();
  for (const { opens } of asked) for (const k of opens) behind.set(k, (behind.get(k) ?? 0) + 1);
  const share = (k: number) => (a[k] ?? 0) / Math.min(behind.get(k) ?? 1, states - 1);
  return asked.map(({ j, opens }) => opens.reduce((sum, k) => sum + share(k), tests[j]?.c ?? 0));
}

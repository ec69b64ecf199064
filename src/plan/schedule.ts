/**
 * The critical path method: earliest and latest start and finish of activities that wait for one another
 * (Kelley and Walker 1959; finish to start, activities on the nodes). Times in any one unit, the start being 0.
 */
import { graphOf, type Pair, topological } from './order/graph.ts';

export interface Activity {
  key: string;
  duration: number;
  /** Keys of what must be finished before; names that are no activity are not waited for. */
  after: readonly string[];
  /** Not before this time, whatever is finished. */
  release?: number;
}

export interface Scheduled {
  key: string;
  /** Earliest start and finish, latest start and finish, and what lies between them. */
  es: number;
  ef: number;
  ls: number;
  lf: number;
  slack: number;
}

export interface Schedule {
  /** In the order of the activities given. */
  rows: Scheduled[];
  length: number;
  /** Without slack, each behind what it waits for. */
  critical: string[];
}

const NOTHING = 1e-6;

/** Activities that wait for each other in a circle have no times and are left out. */
export function schedule(activities: readonly Activity[]): Schedule {
  const at = new Map(activities.map((a, i) => [a.key, i]));
  const pairs = activities.flatMap((activity, to) =>
    activity.after.flatMap((key): Pair[] => {
      const from = at.get(key);
      return from === undefined ? [] : [[from, to]];
    }),
  );
  const graph = graphOf(activities.length, pairs);
  const order = topological(
    graph,
    activities.map((_, i) => i),
  );
  const es = activities.map((a) => a.release ?? 0);
  const ef = activities.map(() => 0);
  for (const i of order) {
    const end = (es[i] ?? 0) + (activities[i]?.duration ?? 0);
    ef[i] = end;
    for (const to of graph.next[i] ?? []) es[to] = Math.max(es[to] ?? 0, end);
  }
  const length = order.reduce((most, i) => Math.max(most, ef[i] ?? 0), 0);
  const lf = activities.map(() => length);
  for (const i of order.toReversed()) {
    for (const to of graph.next[i] ?? []) {
      const start = (lf[to] ?? 0) - (activities[to]?.duration ?? 0);
      lf[i] = Math.min(lf[i] ?? length, start);
    }
  }
  const timed = new Set(order);
  const rows = activities.map((activity, i): Scheduled => {
    const ls = (lf[i] ?? 0) - activity.duration;
    const times = { es: es[i] ?? 0, ef: ef[i] ?? 0, ls, lf: lf[i] ?? 0 };
    return { key: activity.key, ...times, slack: ls - times.es };
  });
  const tight = (i: number) => Math.abs(rows[i]?.slack ?? 1) <= NOTHING;
  return {
    rows: rows.filter((_, i) => timed.has(i)),
    length,
    critical: order.filter(tight).flatMap((i) => rows[i]?.key ?? []),
  };
}

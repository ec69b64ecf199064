/** Step by step, each time the hole that leaves the least imbalance. Sound, not best. */
import type { Computed } from './exact.ts';
import { EPSILON, measure, type Task } from './vectors.ts';

export function greedyOrder(task: Task): Computed {
  const { v, rank, done, left } = task;
  let [x, y] = [0, 0];
  for (const i of done) [x, y] = [x + (v.x[i] ?? 0), y + (v.y[i] ?? 0)];
  const open = new Set(left);
  const order: number[] = [];
  while (open.size > 0) {
    let best = -1;
    let bestRank = Number.POSITIVE_INFINITY;
    let least = Number.POSITIVE_INFINITY;
    for (const i of open) {
      const r = rank[i] ?? 0;
      const b = Math.hypot(x + (v.x[i] ?? 0), y + (v.y[i] ?? 0));
      if (r < bestRank || (r === bestRank && b < least - EPSILON)) {
        [best, bestRank, least] = [i, r, b];
      }
    }
    open.delete(best);
    order.push(best);
    [x, y] = [x + (v.x[best] ?? 0), y + (v.y[best] ?? 0)];
  }
  return { order, best: measure(task, order).peak, exact: false };
}

/** The order that tilts a piece least: exact for few holes, searched for many. */
import { type Computed, exactOrder, MOST_EXACT } from './exact.ts';
import type { Task } from './vectors.ts';
import { wideOrder } from './wide.ts';

export function computedOrder(task: Task): Computed {
  return task.left.length <= MOST_EXACT ? exactOrder(task) : wideOrder(task);
}

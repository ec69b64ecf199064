/** Whether a piece is tested: back on, nothing in conflict, and each test that hangs on it done. */
import type { PieceNow, TaskNow, TaskSpec } from './types.ts';

export function taskNow(spec: TaskSpec): TaskNow {
  return { spec, done: null, was: null, set: null, result: null };
}

/** Tests and adjustments that come after a piece is on, directly or by other tasks. */
export function testsOf(piece: string, tasks: ReadonlyMap<string, TaskNow>): TaskNow[] {
  const reached = new Set<string>([`${piece} on`]);
  let grew = true;
  while (grew) {
    grew = false;
    for (const task of tasks.values()) {
      if (reached.has(task.spec.key)) continue;
      if (!task.spec.after.some((step) => reached.has(step))) continue;
      reached.add(task.spec.key);
      grew = true;
    }
  }
  return [...tasks.values()].filter(
    (task) =>
      reached.has(task.spec.key) && (task.spec.verb === 'test' || task.spec.verb === 'adjust'),
  );
}

export function isTested(now: PieceNow, tasks: ReadonlyMap<string, TaskNow>): boolean {
  const back = now.holes.length > 0 ? now.where === 'tight' : now.where === 'on';
  if (!back || now.holes.some((h) => h.conflict || h.trouble)) return false;
  const tests = testsOf(now.spec.key, tasks);
  return tests.length > 0 && tests.every((task) => task.done !== null && task.done !== 'failed');
}

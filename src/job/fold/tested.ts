/** Whether a piece is tested: back on, nothing in conflict, and each test that hangs on it done. */
import { kept } from '../../model/kept.ts';
import type { PieceNow, TaskNow, TaskSpec } from '../../model/types.ts';

export function taskNow(spec: TaskSpec): TaskNow {
  const open = { done: null, was: null, set: null, result: null, judged: null };
  return { spec, ...open, overruled: false, early: false };
}

/** Tasks that depend on a piece, directly or through other tasks: when it comes off for another round they open again. */
export function reopen(piece: string, tasks: ReadonlyMap<string, TaskNow>): void {
  const steps = [`${piece} off`, `${piece} on`];
  const reached = new Set(steps);
  for (const { spec } of tasks.values()) {
    const said = [...spec.before, ...spec.while];
    if (said.some((step) => steps.includes(step))) reached.add(spec.key);
  }
  for (const key of follow(reached, tasks)) {
    const task = tasks.get(key);
    if (task) Object.assign(task, taskNow(task.spec));
  }
}

/** Tests behind a step that were noted as good before it was done: what they told was of something else. */
export function notedBefore(step: string, tasks: ReadonlyMap<string, TaskNow>): TaskNow[] {
  return [...follow([step], tasks)].flatMap((key) => {
    const task = tasks.get(key);
    const isGood = task?.done != null && task.done !== 'failed';
    return task && key !== step && task.spec.verb === 'test' && isGood ? [task] : [];
  });
}

/** They are open again. */
export function openAgain(tests: readonly TaskNow[]): void {
  for (const task of tests) Object.assign(task, taskNow(task.spec), { early: true });
}

/** What comes after these steps, by way of other tasks too; they themselves among it. */
function follow(from: Iterable<string>, tasks: ReadonlyMap<string, TaskNow>): Set<string> {
  // What they are and what they come after stays, whatever is done of them.
  const behind = kept(tasks, 'behind each step', () => {
    const keys = [...tasks.values()].flatMap(({ spec: { key, after } }) =>
      after.map((step) => ({ step, key })),
    );
    return Map.groupBy(keys, ({ step }) => step);
  });
  const reached = new Set(from);
  // A set is gone through with what is added meanwhile.
  for (const step of reached) for (const { key } of behind.get(step) ?? []) reached.add(key);
  return reached;
}

/** Tests and adjustments that come after a piece is on, directly or by other tasks. */
export function testsOf(piece: string, tasks: ReadonlyMap<string, TaskNow>): TaskNow[] {
  const reached = follow([`${piece} on`], tasks);
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

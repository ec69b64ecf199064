/** What was let out and has to be filled in again, by the words of the job's tasks. */
import type { Standing } from './standing.ts';

export interface Fluid {
  /** As the task says it: `the oil`. */
  what: string;
  /** The task that let it out. */
  drained: string;
  /** The task that fills it in again; null when the file has none. */
  fill: string | null;
  /** Let out, and not in again as far as anybody noted. */
  out: boolean;
}

const DRAIN =
  /^\s*(?:drain|empty|let out|run off)\s+(?:off\s+|out\s+)?(.+?)(?=\s+(?:into|from|out|and|until|by|with|at|through)\b|[,.;()]|$)/i;
const FILL = /\b(?:fill|refill|top up|pour)\b/i;

/** What a task lets out: `the oil`; null when it is no such task. */
export function letOut(say: string): string | null {
  return DRAIN.exec(say)?.[1]?.trim() ?? null;
}

/** It puts a liquid in. */
export function fillsIn(say: string): boolean {
  return FILL.test(say);
}

/** Each task that lets something out and is done, in the order of the file. */
export function fluidsOf({ job, relations, finished, lines }: Standing): Fluid[] {
  const isDone = (key: string) => finished.done[relations.at.get(key) ?? -1] === true;
  const tasks = [...job.tasks.values()].map((task) => task.spec);
  const drains = tasks.filter((t) => letOut(t.say) !== null);
  const fills = tasks.filter((t) => FILL.test(t.say));
  return drains.flatMap((task): Fluid[] => {
    const what = letOut(task.say);
    const out = lines.done.get(task.key);
    if (what === null || !out || !isDone(task.key)) return [];
    const noun = what.split(' ').at(-1)?.toLowerCase() ?? what;
    const named = fills.find((t) => t.say.toLowerCase().includes(noun));
    // `Fill to the middle of the glass`: one thing out, one thing in.
    const fill = named ?? (drains.length === 1 && fills.length === 1 ? fills[0] : undefined);
    const back = fill && isDone(fill.key) ? (lines.done.get(fill.key)?.index ?? -1) : -1;
    return [{ what, drained: task.key, fill: fill?.key ?? null, out: back < out.index }];
  });
}

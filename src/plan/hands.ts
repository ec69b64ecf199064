/**
 * One pair of hands does one thing at a time; what only takes time (a wait, a joint that cures) runs beside. Whenever
 * the hands are free they take, of what can be begun soonest, what the critical path wants begun first: best where all
 * can be begun at once (Jackson 1955) and good otherwise. What comes out can be done as it stands; that no other order
 * is shorter is not claimed, only that none is shorter than `least`.
 */
import { type Activity, schedule } from './schedule.ts';

export interface Handled extends Activity {
  /** It is done by hand; else it runs by itself. */
  hands: boolean;
}

export interface ByHand {
  length: number;
  /** No order is shorter than this. */
  least: number;
  /** What makes it so long, each behind what it waits for: something before it, or the hands. */
  critical: string[];
}

interface Task extends Handled {
  /** Latest start by the critical path. */
  ls: number;
  next: Task[];
  /** How many before it are not finished. */
  waits: number;
  start: number;
  end: number;
  /** What it waited for last; null for nothing, or a date. */
  behind: Task | null;
}

/** When work of so many seconds that begins at `from` is done: hands rest in between, where hours are said. */
export type Done = (from: number, work: number) => number;

/** Activities that wait for each other in a circle are left out, as in `schedule`. */
export function byHand(
  activities: readonly Handled[],
  done: Done = (from, work) => from + work,
): ByHand {
  const { rows, length, critical } = schedule(activities);
  const given = new Map(activities.map((a) => [a.key, a]));
  const tasks = new Map<string, Task>();
  for (const { key, ls } of rows) {
    const activity = given.get(key);
    if (!activity) continue;
    const start = activity.release ?? 0;
    tasks.set(key, { ...activity, ls, next: [], waits: 0, start, end: 0, behind: null });
  }
  for (const task of tasks.values()) {
    for (const key of task.after) {
      tasks.get(key)?.next.push(task);
      task.waits += tasks.has(key) ? 1 : 0;
    }
  }
  const ends = earliest([...tasks.values()], done);
  const last = timeTasks([...tasks.values()], done);
  const chain: string[] = [];
  for (let at = last; at !== null; at = at.behind) chain.unshift(at.key);
  const end = last?.end ?? 0;
  const hands = rows.filter(({ key }) => tasks.get(key)?.hands);
  const head = Math.min(...hands.map((row) => row.es));
  const tail = Math.min(...hands.map((row) => length - row.lf));
  const sum = hands.reduce((all, { key }) => all + (tasks.get(key)?.duration ?? 0), 0);
  const least = Math.max(ends, hands.length === 0 ? 0 : done(head, sum) + tail);
  return { length: end, least, critical: end > length ? chain : critical };
}

const endOf = ({ hands, duration }: Handled, start: number, done: Done): number =>
  hands ? done(start, duration) : start + duration;

/** When the last of them ends if hands could do any number of things at once: nothing ends before. */
function earliest(tasks: readonly Task[], done: Done): number {
  const waits = new Map(tasks.map((task) => [task, task.waits]));
  const starts = new Map(tasks.map((task) => [task, task.release ?? 0]));
  const ready = tasks.filter((task) => task.waits === 0);
  let last = 0;
  for (let task = ready.pop(); task; task = ready.pop()) {
    const end = endOf(task, starts.get(task) ?? 0, done);
    last = Math.max(last, end);
    for (const next of task.next) {
      starts.set(next, Math.max(starts.get(next) ?? 0, end));
      waits.set(next, (waits.get(next) ?? 0) - 1);
      if (waits.get(next) === 0) ready.push(next);
    }
  }
  return last;
}

/** Gives each task its times; answers the one that ends last. */
function timeTasks(tasks: readonly Task[], done: Done): Task | null {
  let last: Task | null = null;
  const ready: Task[] = [];
  const finish = (first: Task) => {
    const finished = [first];
    for (let task = finished.pop(); task; task = finished.pop()) {
      task.end = endOf(task, task.start, done);
      if (last === null || task.end > last.end) last = task;
      for (const next of task.next) {
        if (task.end > next.start) [next.start, next.behind] = [task.end, task];
        next.waits -= 1;
        if (next.waits > 0) continue;
        if (next.hands && next.duration > 0) ready.push(next);
        else finished.push(next);
      }
    }
  };
  for (const task of tasks.filter((t) => t.waits === 0)) {
    if (task.hands && task.duration > 0) ready.push(task);
    else finish(task);
  }
  let free = 0;
  let before: Task | null = null;
  while (ready.length > 0) {
    const begins = (task: Task) => Math.max(task.start, free);
    const chosen = ready.reduce((best, task) => {
      const sooner = begins(task) - begins(best);
      return sooner < 0 || (sooner === 0 && task.ls < best.ls) ? task : best;
    });
    ready.splice(ready.indexOf(chosen), 1);
    if (free > chosen.start) [chosen.start, chosen.behind] = [free, before];
    finish(chosen);
    [free, before] = [chosen.end, chosen];
  }
  return last;
}

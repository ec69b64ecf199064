/** What the counters of the machines of a bench said last, over all its jobs. */

import { secondsOf } from '../model/time.ts';
import type { Job } from '../model/types.ts';
import { readingsIn, type Told } from '../plan/time/due.ts';
import { idOf, type Machine, machineKey, sameMachine } from './machine.ts';

export interface Counters {
  add(job: Job): void;
  /** The latest of all jobs on this one machine; null where none says. */
  of(machine: Machine): Told | null;
}

interface Counted extends Machine {
  last: Told;
  seconds: number;
}

/** Jobs on what their files call alike are one row here, so that ten thousand are asked as quickly as ten. */
export function counters(): Counters {
  const rows = new Map<string, Counted>();
  const byName = new Map<string, Set<Counted>>();
  const add = (key: string, row: Counted) => {
    if (key === '') return;
    const there = byName.get(key);
    if (there) there.add(row);
    else byName.set(key, new Set([row]));
  };
  return {
    add(job) {
      const { machine, machineId, like } = job.upper;
      for (const told of readingsIn(job)) {
        const seconds = told.at === '' ? Number.NEGATIVE_INFINITY : secondsOf(told.at);
        const key = JSON.stringify([idOf(machineId), machineKey(machine), like]);
        const row = rows.get(key);
        // Of one moment the later line counts.
        if (row) {
          if (seconds >= row.seconds) Object.assign(row, { last: told, seconds });
          continue;
        }
        const made: Counted = { machine, machineId, like, last: told, seconds };
        rows.set(key, made);
        add(`id ${idOf(machineId)}`, made);
        add(`name ${machineKey(machine)}`, made);
      }
    },
    of(asked) {
      const near = [`id ${idOf(asked.machineId)}`, `name ${machineKey(asked.machine)}`];
      const found = new Set(near.flatMap((key) => [...(byName.get(key) ?? [])]));
      let best: Counted | null = null;
      for (const row of found) {
        if (isOne(row, asked) && (best === null || row.seconds >= best.seconds)) best = row;
      }
      return best?.last ?? null;
    },
  };
}

/** One machine, not only one model: the same number, or the same text but for what it has run. */
function isOne(a: Machine, b: Machine): boolean {
  const same = sameMachine(a, b);
  if (a.machineId !== null && b.machineId !== null) return same === 'id';
  return same === 'name' || same === 'id';
}

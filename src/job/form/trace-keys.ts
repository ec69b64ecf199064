/** Keys of the tasks that a search for a fault brings, and free ones for what is written in. */
import { keySlug } from '../../model/slug.ts';

/** The test that proves that a suspect was it. */
export const proofKey = (suspect: string): string => `proof-${suspect}`;

/** The task by which what was found is put right. */
export const mendKey = (suspect: string): string => `mend-${suspect}`;

/** The test that the complaint itself is gone, behind what proves what was found. */
const GONE = 'complaint-gone';

export const isGoneKey = (task: string): boolean => new RegExp(`^${GONE}(?:-\\d+)?$`).test(task);

export const freeGoneKey = (tasks: ReadonlyMap<string, unknown>): string => freeKey(GONE, tasks);

/** `Float needle leaks` → `float-needle-leaks`, with a number behind it where that is taken. */
export function freeKey(text: string, taken: ReadonlyMap<string, unknown>): string {
  const key = keySlug(text, 4) || 'it';
  for (let n = 1; ; n += 1) {
    const free = n === 1 ? key : `${key}-${n}`;
    if (!taken.has(free)) return free;
  }
}

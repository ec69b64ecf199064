/**
 * Minimal sets that have something of every conflict: the minimal diagnoses (Reiter, A theory of diagnosis from first
 * principles, AIJ 32, 1987; de Kleer & Williams, Diagnosing multiple faults, same volume).
 *
 * By size: a set that misses a conflict is extended by one member of the first that it misses. So every minimal set
 * is met, and after all that are smaller. O(widthˢⁱᶻᵉ) for conflicts of that width; in the last step only what all
 * missed conflicts have in common is tried.
 */

/** Sets listed, and sets extended; a person looks through far fewer. */
const MOST_SETS = 500;
const MOST_TRIED = 20_000;

export interface Hitting {
  /** Smallest first. */
  sets: string[][];
  /** There may be more: larger ones, or more than are listed. */
  more: boolean;
}

/** Sets of at most `largest` members. None where a conflict is empty. */
export function hittingSets(conflicts: readonly (readonly string[])[], largest: number): Hitting {
  const sets: string[][] = [];
  let more = false;
  let tried: string[][] = [[]];
  for (let size = 0; size <= largest; size += 1) {
    const extended = new Map<string, string[]>();
    for (const set of tried) {
      const missed = conflicts.filter((conflict) => !conflict.some((one) => set.includes(one)));
      const [first] = missed;
      if (!first) {
        sets.push(set);
        continue;
      }
      const fit =
        size + 1 < largest
          ? first
          : first.filter((one) => size < largest && missed.every((other) => other.includes(one)));
      if (fit.length < first.length) more = true;
      for (const one of fit) extended.set([...set, one].sort().join('\n'), [...set, one]);
    }
    tried = [...extended.values()].filter(
      (set) => !sets.some((smaller) => smaller.every((one) => set.includes(one))),
    );
    if (tried.length > MOST_TRIED || sets.length > MOST_SETS) {
      more = true;
      break;
    }
  }
  return { sets: sets.slice(0, MOST_SETS), more };
}

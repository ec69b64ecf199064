/** When nobody on the list fits what the looks say: several faults at once, a misread check, or something else. */
import { hittingSets } from './hitting.ts';
import type { TraceShown } from './read.ts';
import { NOT_LISTED, type TraceConflict } from './types.ts';

/** Faults at once that are thought of. */
const MOST_FAULTS = 3;

export interface Evidence {
  /** In the order in which they are to be named. */
  suspects: readonly string[];
  checks: readonly TraceShown[];
  standing: ReadonlyMap<string, 'good' | 'bad'>;
  /** Checks that speak against each suspect. */
  cleared: ReadonlyMap<string, readonly string[]>;
  weights: ReadonlyMap<string, number>;
  /** Minutes of a check, with what must come off first. */
  minutesOf: (check: string) => number;
}

export function conflictOf(evidence: Evidence): TraceConflict {
  const doubts = doubtsOf(evidence.suspects.map((name) => evidence.cleared.get(name) ?? []));
  const fewest = doubts.filter((doubt) => doubt.length === doubts[0]?.length).flat();
  const soonest = [...new Set(fewest)].sort(
    (one, other) => evidence.minutesOf(one) - evidence.minutesOf(other),
  );
  const { sets, larger } = diagnosesOf(evidence);
  return { diagnoses: [...sets, [NOT_LISTED]], doubts, again: soonest[0] ?? null, larger };
}

/**
 * What a good check would have shown is out, also with several faults. Of what a bad one shows, something is there;
 * that the machine does not do as it should is a bad check for the whole list.
 */
function diagnosesOf({ suspects, checks, standing, weights }: Evidence) {
  const sound = new Set(
    checks.flatMap(({ name, shows }) => (standing.get(name) === 'good' ? [...shows] : [])),
  );
  const bad = checks.filter(({ name }) => standing.get(name) === 'bad');
  const shown = [...bad.map(({ shows }) => shows), new Set(suspects)];
  const { sets, more } = hittingSets(
    shown.map((some) => suspects.filter((name) => some.has(name) && !sound.has(name))),
    MOST_FAULTS,
  );
  const chance = (set: readonly string[]) =>
    set.reduce((product, name) => product * (weights.get(name) ?? 0), 1);
  const place = new Map(suspects.map((name, i) => [name, i]));
  return {
    sets: sets
      .map((set) => set.toSorted((one, other) => (place.get(one) ?? 0) - (place.get(other) ?? 0)))
      .sort((one, other) => one.length - other.length || chance(other) - chance(one)),
    larger: more,
  };
}

/**
 * A suspect is back on the list when every check that speaks against it was misread, and then only: so the smallest
 * sets of such readings are the least of these lists.
 */
function doubtsOf(against: readonly (readonly string[])[]): string[][] {
  const bySize = against.toSorted((one, other) => one.length - other.length);
  const least: string[][] = [];
  for (const list of bySize) {
    if (!least.some((smaller) => smaller.every((check) => list.includes(check)))) {
      least.push([...list]);
    }
  }
  return least;
}

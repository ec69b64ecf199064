/** What the looks made so far say of each suspect, if there is one fault only. */
import type { TraceShown } from './read.ts';
import type { TraceMark } from './types.ts';

/** What each check says now: its last look that came out good or bad. Unclear ones change nothing. */
export function standingMarks(marks: readonly TraceMark[]): Map<string, 'good' | 'bad'> {
  const standing = new Map<string, 'good' | 'bad'>();
  for (const { check, says } of marks) if (says !== 'unclear') standing.set(check, says);
  return standing;
}

/**
 * For each suspect the checks that speak against it, in the order of the checks: a good one that would have shown it,
 * a bad one that it cannot explain. More looks only ever add to these.
 */
export function clearedBy(
  suspects: readonly string[],
  checks: readonly TraceShown[],
  standing: ReadonlyMap<string, 'good' | 'bad'>,
): Map<string, string[]> {
  const against = (suspect: string) =>
    checks.filter(({ name, shows }) => {
      const says = standing.get(name);
      return says !== undefined && shows.has(suspect) !== (says === 'bad');
    });
  return new Map(suspects.map((name) => [name, against(name).map((check) => check.name)]));
}

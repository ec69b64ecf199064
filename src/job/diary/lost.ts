/** Marks that were shown and that the file does not have any more. */
import type { Entry } from '../../model/types.ts';

/**
 * The entries of `shown` that are missing in `now`, in their order. Putback never removes a line, so somebody
 * else did: mostly an editor that saved what it had read before the marks were made. An entry that an undo in
 * `now` names stays away: written again behind that undo, it would count once more.
 *
 * An entry counts by its id alone: a line that somebody corrected by hand is there.
 */
export function lostEntries(shown: readonly Entry[], now: readonly Entry[]): Entry[] {
  const there = new Set(now.flatMap((e) => (e.verb === 'undo' ? [e.id, e.value] : [e.id])));
  const seen = new Set<string>();
  return shown.filter((e) => {
    if (there.has(e.id) || seen.has(e.id)) return false;
    seen.add(e.id);
    return true;
  });
}

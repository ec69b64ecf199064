/** Which entries count: those that no living undo names. */
import type { Entry } from '../../model/types.ts';

/**
 * The entries that count, in the order of the file. An undo takes back the entry whose id it names if that
 * stands before it; undoing an undo is redo. A line that stands twice (two diaries united by plain union)
 * counts once.
 */
export function livingEntries(entries: readonly Entry[]): Entry[] {
  const dead = undoneOf(
    entries.map(({ id, verb, value }) => ({ id, undo: verb === 'undo' ? value : null })),
  );
  const seen = new Set<string>();
  return entries.filter((entry) => {
    if (dead.has(entry.id) || seen.has(entry.id)) return false;
    seen.add(entry.id);
    return true;
  });
}

/** Ids that a living undo names; `undo` is the id that an entry takes back, null for what is no undo. */
export function undoneOf(entries: readonly { id: string; undo: string | null }[]): Set<string> {
  const dead = new Set<string>();
  const later = new Set<string>();
  for (let i = entries.length - 1; i >= 0; i--) {
    const entry = entries[i];
    if (!entry) continue;
    // An undo of something that only follows it would be a circle or a slip: it does nothing.
    if (entry.undo !== null && !dead.has(entry.id) && !later.has(entry.undo)) {
      dead.add(entry.undo);
    }
    later.add(entry.id);
  }
  return dead;
}

/** Which entries count: those that no living undo names, and that came along with none of which that is so. */
import { kept } from '../../model/kept.ts';
import type { Entry } from '../../model/types.ts';

/** What says whether an entry counts: `undo` is the id that it takes back, `came` the one that it came along with. */
export interface Counted {
  id: string;
  undo: string | null;
  came: string | null;
}

/**
 * The entries that count, in the order of the file. An undo takes back the entry whose id it names if that
 * stands before it, and what came along with that; undoing an undo is redo. A line that stands twice (two diaries
 * united by plain union) counts once.
 */
export function livingEntries(entries: readonly Entry[]): readonly Entry[] {
  return countingOf(entries).living;
}

/** Their ids. */
export function livingIds(entries: readonly Entry[]): ReadonlySet<string> {
  return countingOf(entries).ids;
}

interface Counting {
  living: readonly Entry[];
  ids: ReadonlySet<string>;
}

function countingOf(entries: readonly Entry[]): Counting {
  // A diary only grows.
  return kept(entries, 'those that count', () => count(entries), entries.length);
}

function count(entries: readonly Entry[]): Counting {
  const dead = entries.some(({ verb }) => verb === 'undo')
    ? undoneOf(
        entries.map(({ id, verb, value, came }) => ({
          id,
          undo: verb === 'undo' ? value : null,
          came: came ?? null,
        })),
      )
    : new Set<string>();
  const ids = new Set<string>();
  const living = entries.filter(({ id }) => {
    const before = ids.size;
    return !dead.has(id) && ids.add(id).size > before;
  });
  return { living, ids };
}

/** Ids that a living undo names, and what came along with them. */
export function undoneOf(entries: readonly Counted[]): Set<string> {
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
  // An undo stands for itself, whatever it says that it came with: else what it took back could count again.
  for (const { id, undo, came } of entries) {
    if (came !== null && undo === null && dead.has(came)) dead.add(id);
  }
  return dead;
}

/** What is taken back together with this entry: the one that it came along with, if that counts, else itself. */
export function togetherWith(entry: Entry, counts: readonly Entry[]): Entry {
  return counts.find((e) => e.id === entry.came) ?? entry;
}

/** Kinds that got another letter: what the diary said before that, in the letters that count now. */
import type { Entry } from '../../model/types.ts';
import { namesKinds } from '../../model/verbs/verbs.ts';

/** The entries with the letters that the kinds have now; the same array where none was renamed. */
export function inLettersNow(living: readonly Entry[]): readonly Entry[] {
  if (!living.some((entry) => entry.verb === 'renamed')) return living;
  const names = new Map<string, string>();
  const said: Entry[] = [];
  // From the end: what was renamed later holds for what stands before it.
  for (const entry of living.toReversed()) {
    if (entry.verb === 'renamed') {
      const to = names.get(entry.value) ?? entry.value;
      // The new name is free before this, and a kind of another time may have had it.
      names.delete(entry.value);
      if (entry.was !== undefined) names.set(entry.was, to);
    }
    said.push(namesKinds(entry.verb) ? renamed(entry, names) : entry);
  }
  return said.reverse();
}

function renamed(entry: Entry, names: ReadonlyMap<string, string>): Entry {
  const value = entry.value
    .split(' ')
    .map((word) => {
      const [letter = '', ...under] = word.split('+');
      return [names.get(letter) ?? letter, ...under].join('+');
    })
    .join(' ');
  return value === entry.value ? entry : { ...entry, value };
}

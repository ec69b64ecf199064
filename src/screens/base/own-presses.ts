/** Other presses for keys, as a user has set them: what is said of a key goes before what stands in the table. */
import type { OwnPresses, Press } from '../kit/press.ts';
import type { KeyWords } from './key.ts';

/** The keys of one screen. A press that was given to one of them does nothing else there. */
export function withOwn<K extends KeyWords>(keys: readonly K[], own: OwnPresses): readonly K[] {
  const taken = new Set(keys.flatMap((key) => own[key.id] ?? []));
  if (taken.size === 0) return keys;
  return keys.map((key) => ({
    ...key,
    presses: own[key.id] ?? key.presses.filter((press) => !taken.has(press)),
  }));
}

export interface WrongPress {
  id: string;
  press: Press;
  /** The other key of a screen that has both. */
  clash: string;
}

/** Two keys of a screen that were given the same press, and keys that would have none left. */
export function wrongPresses(
  screens: readonly (readonly KeyWords[])[],
  own: OwnPresses,
): WrongPress[] {
  const wrong = new Map<string, WrongPress>();
  for (const keys of screens) {
    const here = keys.filter((key) => own[key.id] !== undefined);
    for (const key of here) {
      for (const press of own[key.id] ?? []) {
        const other = here.find((k) => k.id !== key.id && own[k.id]?.includes(press));
        const robbed = keys.find(
          (k) =>
            own[k.id] === undefined && k.presses.length > 0 && k.presses.every((p) => p === press),
        );
        const clash = other ?? robbed;
        if (clash) wrong.set(`${key.id} ${press}`, { id: key.id, press, clash: clash.id });
      }
    }
  }
  return [...wrong.values()];
}

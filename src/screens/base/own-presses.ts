/** Other presses for keys, as a user has set them: what is said of a key goes before what stands in the table. */
import type { OwnPresses, Press } from '../kit/press.ts';
import { split } from '../kit/text.ts';
import type { HeldKey, KeyWords } from './key.ts';

type MayTake = KeyWords & Partial<Pick<HeldKey, 'takes' | 'holds'>>;

/**
 * The keys of one screen. A press that was given to one of them does nothing else there; where all that were given to
 * one are letters of kinds of this job, it has those of the table besides.
 */
export function withOwn<K extends MayTake>(keys: readonly K[], own: OwnPresses): readonly K[] {
  const given = new Set(keys.flatMap((key) => own[key.id] ?? []));
  if (given.size === 0) return keys;
  const taking = keys.filter((key) => key.takes && (key.holds?.() ?? true));
  const isTaken = (press: Press) => taking.some((key) => key.takes?.(press));
  return keys.map((key) => {
    const rest = key.presses.filter((press) => !given.has(press));
    const mine = own[key.id];
    if (mine === undefined) return { ...key, presses: rest };
    return { ...key, presses: mine.every(isTaken) ? [...mine, ...rest] : mine };
  });
}

export interface WrongPress {
  id: string;
  press: Press;
  /** The other key of a screen that has both. */
  clash: string;
}

const isSign = (press: Press): boolean => press === 'space' || split(press).length === 1;

/** What takes a press before all else, whatever the job: a digit is a hole, and in a text every sign is itself. */
function takes({ shown }: KeyWords, press: Press, all: readonly Press[]): boolean {
  if (shown === 'digits') return /^\d$/.test(press);
  // A key with another press beside it can still be reached from a text.
  return shown === 'text' && all.every(isSign);
}

/** Two keys of a screen that were given the same press, keys that would have none left, and presses that are taken. */
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
        const taker = keys.find((k) => takes(k, press, own[key.id] ?? []));
        const clash = other ?? robbed ?? taker;
        if (clash) wrong.set(`${key.id} ${press}`, { id: key.id, press, clash: clash.id });
      }
    }
  }
  return [...wrong.values()];
}

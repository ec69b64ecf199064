/** Which rows of the table of keys hold just now, and which one a press is. */

import type { State } from '../base/state.ts';
import type { Press } from '../kit/press.ts';
import { KEYS, type Key, type KeyId, type Place } from './keys.ts';

export function placeOf(state: State): Place {
  const { view } = state;
  return view.screen === 'piece' ? view.step.step : view.screen;
}

/** The rows that hold on this screen. */
export function keysOf(state: State): Key<KeyId>[] {
  const place = placeOf(state);
  const all: readonly Key<KeyId>[] = KEYS;
  return all.filter((k) => k.places.includes(place) && (k.holds?.(state) ?? true));
}

/** What takes letters and digits as such comes before all other keys. */
function keyAmong(keys: readonly Key<KeyId>[], state: State, press: Press): KeyId | null {
  const taking = keys.find((k) => k.takes?.(state, press));
  return (taking ?? keys.find((k) => k.presses.includes(press)))?.id ?? null;
}

export function keyOf(state: State, press: Press): KeyId | null {
  return keyAmong(keysOf(state), state, press);
}

export interface Shown {
  key: Key<KeyId>;
  /** The presses that do it just now: a letter that is a kind of this job is no other key beside it. */
  presses: Press[];
}

/** The rows that can be reached, with the presses that reach them. */
export function shownKeys(state: State): Shown[] {
  const keys = keysOf(state);
  return keys.flatMap((key) => {
    const presses = key.presses.filter((p) => keyAmong(keys, state, p) === key.id);
    return presses.length > 0 || key.takes ? [{ key, presses }] : [];
  });
}

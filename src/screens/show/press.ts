/** From a press to what it does. */
import { POINT, withoutDigits } from '../base/digits.ts';
import type { HeldKey } from '../base/key.ts';
import { say, stay } from '../base/moves.ts';
import { isTooSmall } from '../base/page.ts';
import type { State, Updated } from '../base/state.ts';
import { atItsPlace } from '../kit/alphabets.ts';
import { pasteField, tooLong } from '../kit/field.ts';
import type { Press } from '../kit/press.ts';
import { keyOf } from './keys.ts';
import { openOf } from './screens.ts';

/** A press takes the quiet line away first. */
export function unquiet(state: State): State {
  return state.quiet === null ? state : { ...state, quiet: null };
}

/**
 * The key that a press is in this state, and the press that it means: a letter of another alphabet means what stands at
 * its place on a Latin keyboard, where it is not text and not bound itself.
 */
export function meantPress(state: State, press: Press): { key: HeldKey | null; press: Press } {
  const open = openOf(state);
  const key = keyOf(open, press);
  const latin = key === null ? atItsPlace(press) : null;
  return latin === null ? { key, press } : { key: keyOf(open, latin), press: latin };
}

/** The key that a press is in this state. */
export function keyIn(state: State, press: Press): HeldKey | null {
  return meantPress(state, press).key;
}

export function press(state: State, key: HeldKey | null, pressed: Press): Updated {
  if (key === null || (isTooSmall(state) && !key.always)) return stay(state);
  const does = key.does(pressed);
  const done = key.id === POINT ? does : { ...does, state: withoutDigits(does.state) };
  return { ...done, state: openOf(done.state).greeted() };
}

export function paste(state: State, pasted: string): Updated {
  const text = openOf(unquiet(state)).text();
  if (text === null) return say(state, 'A paste counts only where a text is asked for.');
  const no = tooLong(text.field, pasted);
  return no === null ? text.retype(pasteField(text.field, pasted)) : say(state, no);
}

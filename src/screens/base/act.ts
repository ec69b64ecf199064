/** What a key does: state and press in, state and effects out. */
import type { KeyId } from '../show/keys.ts';
import type { Press, State, Updated } from './state.ts';

export type Act = (state: State, press: Press) => Updated;
export type Acts = Partial<Record<KeyId, Act>>;

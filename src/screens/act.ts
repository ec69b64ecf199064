/** What a key does: state and press in, state and effects out. */
import type { KeyId } from './keys.ts';
import type { Press, State, Updated } from './state.ts';

export type Act = (state: State, press: Press) => Updated;
export type Acts = Partial<Record<KeyId, Act>>;

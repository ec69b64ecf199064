/** What a key does: state and press in, state and effects out. */
import type { Press } from '../kit/press.ts';
import type { State, Updated } from './state.ts';

export type Act = (state: State, press: Press) => Updated;
/** By the names of the keys. */
export type Acts = Readonly<Record<string, Act>>;

/** The key that asks how long one has. */
import type { Key } from '../base/key.ts';
import type { State } from '../base/state.ts';
import { ask } from './field.ts';

export const withinKey: Key<{ state: State }> = {
  id: 'within',
  presses: ['m'],
  label: '',
  help: 'what can be done in a given time, and left safe',
  does: ({ state }) => ask(state, { ask: 'minutes', say: null }),
};

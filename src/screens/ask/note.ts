/** A note, on whatever is open. */
import type { Key } from '../base/key.ts';
import { at } from '../base/moves.ts';
import type { State } from '../base/state.ts';
import { ask } from './field.ts';

export const noteKey: Key<{ state: State }> = {
  id: 'note',
  presses: ['n'],
  label: 'note',
  help: 'write a note',
  does: ({ state }) => {
    const here = at(state);
    const step = here?.view.step;
    // On the hole that the person pointed at; on the piece where none was.
    const hole = step && 'typed' in step ? step.here : null;
    return ask(state, { ask: 'note', piece: here?.key ?? null, hole });
  },
};

/** What follows from the jobs of the bench, one key away. */
import type { Key } from '../base/key.ts';
import type { State } from '../base/state.ts';

export const dueKey: Key<{ state: State }> = {
  id: 'due',
  presses: ['d'],
  label: 'due',
  help: 'what follows from jobs that are over, on all machines of the bench',
  does: ({ state }) => ({
    state: { ...state, view: { screen: 'due', due: null, here: null, under: state.view } },
    effects: [{ do: 'due' }],
  }),
};

/** Keys of what is known that other screens have too. */

import type { Of } from '../../plan/known/rows.ts';
import type { Key } from '../base/key.ts';
import { show, stay } from '../base/moves.ts';
import type { State } from '../base/state.ts';

/** All that is known of what is open. */
export function knownKey<H extends { state: State }>(
  of: (here: H) => Of | null,
  label: Key<H>['label'],
): Key<H> {
  return {
    id: 'known',
    presses: ['k'],
    label,
    help: 'all that is known of it, and add to it',
    holds: (here) => of(here) !== null,
    does: (here) => {
      const { state } = here;
      const what = of(here);
      if (what === null) return stay(state);
      return show(state, { screen: 'known', of: what, here: null, first: [], under: state.view });
    },
  };
}

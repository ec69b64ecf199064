/** Keys of what is known that other screens have too. */
import { verbRow } from '../../model/verbs.ts';
import type { Key } from '../base/key.ts';
import { requestMark, show, stay } from '../base/moves.ts';
import type { State } from '../base/state.ts';
import type { Of } from '../now/known-rows.ts';

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

/** Takes back what was just written of what is open. */
export function unsayKey<H extends { state: State }>(of: (here: H) => Of | null): Key<H> {
  return {
    id: 'unsay',
    presses: ['backspace'],
    label: 'back',
    help: 'take back what was just written here',
    holds: (here) => lastSaid(here.state, of(here)) !== null,
    does: (here) => {
      const { state } = here;
      const last = lastSaid(state, of(here));
      return last === null ? stay(state) : requestMark(state, { do: 'undo', id: last });
    },
  };
}

/** Id of the last mark, where it was made in this sitting and said something of what is known of this. */
function lastSaid({ open, mine }: State, of: Of | null): string | null {
  const last = open?.job.entries.findLast((e) => e.verb !== 'undo' && open.job.living.has(e.id));
  if (!last || !of || !mine.includes(last.id)) return null;
  const same = 'piece' in of ? last.piece === of.piece : last.task === of.task;
  return same && verbRow(last.verb).kind === 'known' ? last.id : null;
}

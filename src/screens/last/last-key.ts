/** What was learnt last time, one key away, and the quiet line that says so. */
import { quietOf } from '../../memory/last.ts';
import type { Key } from '../base/key.ts';
import { at, show } from '../base/moves.ts';
import type { State } from '../base/state.ts';
import { type Line, wrap } from '../kit/text.ts';

/** One quiet line of last time, of the job or of one piece; none where nobody had it off before. */
export function quietLast(state: State, piece?: string): Line[] {
  const { open, earlier } = state;
  if (!open || earlier?.file !== open.file) return [];
  const said = quietOf(open.job, earlier.before, state.now, piece);
  return said === null ? [] : wrap(said, state.columns);
}

export const lastKey: Key<{ state: State }> = {
  id: 'last',
  presses: ['e'],
  label: ({ state }) => (quietLast(state, at(state)?.key).length > 0 ? 'last time' : ''),
  help: 'what earlier jobs on this machine know, with job and day',
  holds: ({ state }) => state.earlier !== null && state.earlier.file === state.open?.file,
  does: ({ state }) =>
    show(state, { screen: 'last', piece: at(state)?.key ?? null, here: null, under: state.view }),
};

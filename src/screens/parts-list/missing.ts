/** What is missing, on other screens: the key that leads to it, and what a piece lacks. */
import type { Job } from '../../model/types.ts';
import { buysNow } from '../../plan/buy/list.ts';
import { sayBought } from '../../plan/buy/say.ts';
import type { Key } from '../base/key.ts';
import { show } from '../base/moves.ts';
import type { State } from '../base/state.ts';
import { list, many } from '../kit/words.ts';

export const partsKey: Key<{ state: State; job: Job }> = {
  id: 'parts',
  presses: ['b'],
  // Said where something is missing.
  label: ({ state, job }) => {
    const lacks = buysNow(job, state.now).filter((b) => b.holds.length > 0);
    return lacks.length === 0 ? '' : many(lacks.length, 'part missing', 'parts missing');
  },
  help: 'what must be had, and how far it is',
  does: ({ state }) => show(state, { screen: 'parts', here: null, under: state.view }),
};

/** `Not here yet: cover gasket (not ordered yet).`; null when nothing holds the piece. */
export function lacksSaid(job: Job, piece: string, now: string): string | null {
  const lacks = buysNow(job, now).filter((b) => b.holds.includes(`${piece} on`));
  if (lacks.length === 0) return null;
  return `Not here yet: ${list(lacks.map((b) => `${b.what} (${sayBought(b, now)})`))}.`;
}

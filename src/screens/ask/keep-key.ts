/** The last mark is worth knowing next time; and what the machine's counter says now. */
import type { Job } from '../../model/types.ts';
import { verbRow } from '../../model/verbs/verbs.ts';
import type { Key } from '../base/key.ts';
import { requestMark } from '../base/moves.ts';
import type { State } from '../base/state.ts';
import { ask } from './field.ts';

export const keepKey: Key<{ state: State; job: Job }> = {
  id: 'keep-last',
  presses: ['j'],
  // Said where a note was just written.
  label: ({ state, job }) => {
    const last = job.entries.at(-1);
    const fresh = last?.verb === 'note' && state.mine.includes(last.id);
    return fresh ? 'keep it for next time' : '';
  },
  help: 'the last note, result or mark is worth knowing next time',
  holds: ({ job }) => job.entries.some((e) => job.living.has(e.id) && !verbRow(e.verb).afterwards),
  does: ({ state }) => requestMark(state, { do: 'keep' }),
};

export const readingKey: Key<{ state: State }> = {
  id: 'reading',
  presses: ['r'],
  label: '',
  help: "what the machine's counter says now: what is due by it is told",
  does: ({ state }) => ask(state, { ask: 'counter', say: null }),
};

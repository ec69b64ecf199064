/** The key that leads to the trace of a fault. */
import type { Job } from '../../model/types.ts';
import { faultTask } from '../../plan/trace/found.ts';
import type { Key } from '../base/key.ts';
import { show } from '../base/moves.ts';
import type { State } from '../base/state.ts';
import { hasTrace } from './on-trace.ts';

export const traceKey: Key<{ state: State; job: Job }> = {
  id: 'trace',
  // `k` is all that is known, wherever it is a key: here of the fault.
  presses: ['k'],
  // Said where there is a fault to find, and where nothing was begun yet.
  label: ({ job }) => {
    const found = job.upper.found !== null && job.upper.found !== '' && faultTask(job) === null;
    return (hasTrace(job) && !found) || job.pieces.size + job.tasks.size === 0
      ? 'find the fault'
      : '';
  },
  help: 'what the fault may be, and what to look at next',
  does: ({ state }) => show(state, { screen: 'trace', here: null, under: state.view }),
};

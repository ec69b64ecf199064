/** To a task, from wherever it is named. */
import { openGate } from '../base/enter.ts';
import { stay } from '../base/moves.ts';
import type { State, Updated } from '../base/state.ts';
import { isStartAsked } from '../now/gate-now.ts';
import { runs, taskHere } from '../now/task-now.ts';

/** Before one that makes the machine run, to what is to be seen to first. */
export function openTask(state: State, task: string): Updated {
  const now = state.open && taskHere(state.open.job, task, state.now);
  if (!now || !state.open) return stay(state);
  const opened: State = { ...state, view: { screen: 'task', task, under: state.view } };
  const starts = now.state !== 'done' && runs(now);
  if (starts && isStartAsked(state.open.job, state.now, state.read)) {
    return openGate(opened, 'start', 'back');
  }
  return stay(opened);
}

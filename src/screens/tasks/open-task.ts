/** Opens a task. */

import { isStartAsked } from '../../plan/gates/gate-now.ts';
import { taskHere } from '../../plan/task/task-now.ts';
import { runs } from '../../plan/tests/runs.ts';
import { openGate } from '../base/enter.ts';
import { show, stay } from '../base/moves.ts';
import type { State, Updated } from '../base/state.ts';

/** A task that makes the machine run opens behind the gate of the first start, while that is not passed. */
export function openTask(state: State, task: string): Updated {
  const now = state.open && taskHere(state.open.job, task, state.now);
  if (!now || !state.open) return stay(state);
  // A question with figures opens on what it turns on.
  if (state.open.job.upper.tasks.get(task)?.weigh) {
    return show(state, { screen: 'weigh', task, under: state.view });
  }
  const opened: State = { ...state, view: { screen: 'task', task, under: state.view } };
  const starts = now.state !== 'done' && runs(now);
  if (starts && isStartAsked(state.open.job, state.now, state.read)) {
    return openGate(opened, 'start', 'back');
  }
  return stay(opened);
}

/** The job: its pieces and tasks in the order of taking apart and putting together, where each is, and what is next. */

import { ladder } from '../../plan/ladder.ts';
import { taskOf } from '../../plan/ladder-names.ts';
import { isAllBack } from '../../plan/order/job-now.ts';
import { ask } from '../ask/field.ts';
import { withinKey } from '../ask/how-long.ts';
import { cameOut, goesIn } from '../ask/inside.ts';
import { keepKey, readingKey } from '../ask/keep-key.ts';
import { noteKey } from '../ask/note.ts';
import { enterPiece, openGate } from '../base/enter.ts';
import { toBench } from '../base/from-file.ts';
import { inOrder } from '../base/in-order.ts';
import { GO, type Key } from '../base/key.ts';
import { markedOf } from '../base/marked.ts';
import { onJob, say, show } from '../base/moves.ts';
import { screen } from '../base/screen.ts';
import type { State, Updated } from '../base/state.ts';
import { lastKey } from '../last/last-key.ts';
import { paperKey } from '../paper/paper.ts';
import { partsKey } from '../parts-list/missing.ts';
import { openTask } from '../tasks/open-task.ts';
import { testsKey } from '../tasks/tests-list.ts';
import { traceKey } from '../trace/trace-key.ts';
import { drawJob, type JobView, type OnTheJob } from './job-page.ts';

function onTheJob(state: State, view: JobView): OnTheJob | null {
  const here = onJob(state, view);
  if (!here) return null;
  const rungs = inOrder(view, ladder(here.job, state.now), (r) => r.name);
  return { ...here, rungs, marked: markedOf(here.job, view.here, state.now) };
}

const NOTHING_YET =
  'Nothing is here to open yet: o says what comes off first, + what is to be done.';

function openMarked({ state, view, marked }: OnTheJob): Updated {
  if (marked === null) return say(state, NOTHING_YET);
  const task = taskOf(marked);
  if (task === null) return enterPiece(state, marked);
  return openTask({ ...state, view: { ...view, here: marked } }, task);
}

const hasRows = ({ job }: OnTheJob): boolean => job.pieces.size + job.tasks.size > 0;

const KEYS: readonly Key<OnTheJob>[] = [
  {
    id: 'open-piece',
    presses: GO,
    label: (here) => (hasRows(here) ? 'open' : ''),
    help: 'open the marked piece',
    does: openMarked,
  },
  traceKey,
  keepKey,
  {
    id: 'start-gate',
    presses: ['s'],
    // Said once all is back.
    label: ({ job }) => (isAllBack(job) ? 'before the first start' : ''),
    help: 'what is to be seen to before the first start',
    does: ({ state }) => openGate(state, 'start', 'back'),
  },
  goesIn,
  cameOut,
  partsKey,
  testsKey,
  withinKey,
  paperKey,
  {
    id: 'where',
    presses: ['w'],
    // Nothing stands anywhere yet: what earlier jobs know has its place in the foot.
    label: (here) => (hasRows(here) || here.job.living.size > 0 ? 'where it stands' : ''),
    help: 'where the job stands, in words',
    does: ({ state }) => show(state, { screen: 'note' }),
  },
  {
    id: 'comes-off',
    presses: ['o'],
    label: (here) => (hasRows(here) ? 'another piece' : 'say what comes off first'),
    help: 'a piece that the file does not know yet comes off',
    does: ({ state }) => ask(state, { ask: 'piece' }),
  },
  noteKey,
  lastKey,
  readingKey,
];

export const jobScreen = screen({
  here: onTheJob,
  keys: KEYS,
  draw: drawJob,
  steady: true,
  rows: ({ view, rungs, marked }) => ({
    names: rungs.map((r) => r.name),
    marked,
    mark: (here) => ({ ...view, here }),
  }),
  called: { quit: 'leave' },
  back: toBench,
});

/** The test list, which writes itself from what was disturbed. */

import { ended } from '../../model/safe.ts';
import type { Job } from '../../model/types.ts';
import { taskSaid } from '../../plan/order/say.ts';
import type { TestItem } from '../../plan/tests/testlist.ts';
import { testsNow } from '../../plan/tests/testlist.ts';
import { sayTime } from '../../plan/time/days.ts';
import { inOrder } from '../base/in-order.ts';
import { GO, type Key } from '../base/key.ts';
import { type OnJob, onJob, show, stay } from '../base/moves.ts';
import { listLines, type Page } from '../base/page.ts';
import { screenOver } from '../base/screen.ts';
import type { State, View } from '../base/state.ts';
import { both, corrected, flow } from '../kit/both.ts';
import { bold, type Line, line, pad, span, width, wrap } from '../kit/text.ts';
import { capital, list, many } from '../kit/words.ts';
import { inTask } from '../known/in-question.ts';
import { notSo } from '../known/not-so.ts';
import { openTask } from './open-task.ts';

interface OnTests extends OnJob<Extract<View, { screen: 'tests' }>> {
  tests: readonly TestItem[];
  /** The marked one; null where nothing is to be tested. */
  test: TestItem | null;
}

function onTests(state: State, view: OnTests['view']): OnTests | null {
  const here = onJob(state, view);
  if (!here) return null;
  const tests = inOrder(view, testsNow(here.job, state.now), (t) => t.test);
  const due = tests.find((t) => t.state === 'failed' || t.state === 'due');
  const test = tests.find((t) => t.test === view.here) ?? due ?? tests[0] ?? null;
  return { ...here, tests, test };
}

/** Leads here from other screens. */
export const testsKey: Key<{ state: State; job: Job }> = {
  id: 'tests',
  presses: ['t'],
  // Said where something is due.
  label: ({ state, job }) => {
    const due = testsNow(job, state.now).filter((t) => t.state === 'due' || t.state === 'failed');
    return due.length === 0 ? '' : many(due.length, 'test due', 'tests due');
  },
  help: 'what is to be tested, and what passed',
  does: ({ state }) => show(state, { screen: 'tests', here: null, under: state.view }),
};

export const testsScreen = screenOver({
  here: onTests,
  keys: [
    {
      id: 'open-test',
      presses: GO,
      label: 'open',
      help: 'open the marked test',
      holds: ({ test }) => test !== null,
      does: ({ state, test }) => (test ? openTask(state, test.test) : stay(state)),
    },
    notSo<OnTests>(({ job, test }) => inTask(job, test?.test ?? '')),
  ],
  draw: drawTests,
  steady: true,
  rows: ({ view, tests, test }) => ({
    names: tests.map((t) => t.test),
    marked: test?.test ?? null,
    mark: (here) => ({ ...view, here }),
  }),
});

function stateSaid(test: TestItem, now: string): string {
  switch (test.state) {
    case 'waits':
      return 'not yet';
    case 'later':
      return test.due === null ? (test.when ?? 'later') : sayTime(test.due, now);
    case 'due':
      return test.when === null ? 'now' : `now: ${test.when}`;
    case 'passed':
    case 'failed':
      return test.state;
  }
}

const LOUD = { colour: 'red', bold: true } as const;

function drawTests({ state, job, tests, test }: OnTests): Page {
  const left = tests.filter((t) => t.state !== 'passed').length;
  const longest = Math.max(0, ...tests.map((t) => width(stateSaid(t, state.now))));
  const room = Math.min(longest, stateRoom(state.columns));
  const around = {
    left: line(bold('What is to be tested')),
    right: line(
      tests.length === 0
        ? 'nothing to test yet'
        : left === 0
          ? 'all passed'
          : `${left} of ${tests.length} not passed`,
    ),
    under: line(job.upper.job),
    say: test ? sayTest(job, test, room, state) : [],
  };
  if (tests.length === 0) {
    return { kind: 'plain', ...around, middle: () => [[], line('Nothing was disturbed yet.')] };
  }
  return {
    kind: 'list',
    ...around,
    middle: (columns) =>
      tests.flatMap((t, i) => {
        const marked = t === test;
        const style = t.state === 'failed' ? LOUD : t.state === 'due' ? { bold: true } : {};
        const row = line(
          span(marked ? '> ' : '  ', { bold: true }),
          pad(line(span(stateSaid(t, state.now), style)), room + 2),
          pad(line(marked ? bold(t.say) : t.say), Math.max(0, columns - room - MARGINS)),
        );
        return listLines([row], i, marked);
      }),
  };
}

/** Mark before a row, gap behind what stands before its name. */
const MARGINS = 4;
/** Columns of what stands before a test at most; what is longer is said in full where it is marked. */
function stateRoom(columns: number): number {
  return Math.floor(columns * 0.5);
}

/** `room`: columns of what stands before its name. */
function sayTest(job: Job, test: TestItem, room: number, { columns, now }: State): Line[] {
  const { say } = test;
  const { say: step, limit } = taskSaid(job, { ...test, key: test.test });
  const told = [test.was && `was ${test.was}`, test.set && `set ${test.set}`].filter((t) => t);
  const when = stateSaid(test, now);
  const isCut = width(say) > columns - room - MARGINS || width(when) > room;
  return [
    ...wrap(isCut && step.printed === null ? `${ended(say)} ${ended(capital(when))}` : '', columns),
    ...corrected([{ label: 'Step', ...step }], columns),
    ...(limit === null
      ? []
      : flow(both(`Limit: ${limit.text}.`, limit.printed, { bold: true }), columns)),
    ...wrap(test.stops.length > 0 ? `Not run yet: ${list(test.stops)}.` : '', columns, LOUD),
    ...wrap(told.length > 0 ? `${told.join(', ')}.` : '', columns),
    ...wrap(test.listed ? '' : 'From what was disturbed; what the maker says goes first.', columns),
  ];
}

/** The test list, which writes itself from what was disturbed. */
import { printedOf } from '../../job/truth/corrections.ts';
import type { Job } from '../../model/types.ts';
import { sayTime } from '../../plan/days.ts';
import type { TestItem } from '../../plan/testlist.ts';
import type { Acts } from '../base/act.ts';
import { show, stay } from '../base/moves.ts';
import type { Page } from '../base/page.ts';
import type { State, Updated } from '../base/state.ts';
import { both, corrected, flow } from '../kit/both.ts';
import { neighbour } from '../kit/neighbour.ts';
import { around } from '../kit/scroll.ts';
import { bold, type Line, line, pad, span, width, wrap } from '../kit/text.ts';
import { many } from '../kit/words.ts';
import { testsNow } from '../now/plan-now.ts';
import { openTask } from './task.ts';

function testAt(state: State): TestItem | null {
  const { view, open } = state;
  if (view.screen !== 'tests' || !open) return null;
  const tests = testsNow(open.job, state.now);
  const open1 = tests.find((t) => t.state === 'failed' || t.state === 'due');
  return tests.find((t) => t.test === view.here) ?? open1 ?? tests[0] ?? null;
}

export const testsActs = {
  tests: (state) => show(state, { screen: 'tests', here: null, under: state.view }),
  'open-test': (state) => {
    const test = testAt(state);
    return test ? openTask(state, test.test) : stay(state);
  },
} satisfies Acts;

export function moveTests(state: State, by: number): Updated {
  const { view, open } = state;
  if (view.screen !== 'tests' || !open) return stay(state);
  const names = testsNow(open.job, state.now).map((t) => t.test);
  return show(state, { ...view, here: neighbour(names, testAt(state)?.test ?? null, by) });
}

export function markedTest(state: State): string | null {
  return testAt(state)?.test ?? null;
}

export function hasTest(state: State): boolean {
  return testAt(state) !== null;
}

/** Said on a key where something is due. */
export function testsLabel({ open, now }: State): string {
  const due = open
    ? testsNow(open.job, now).filter((t) => t.state === 'due' || t.state === 'failed')
    : [];
  return due.length === 0 ? '' : many(due.length, 'test due', 'tests due');
}

function stateSaid(test: TestItem, now: string): string {
  switch (test.state) {
    case 'waits':
      return 'not yet';
    case 'later':
      return test.due === null ? (test.when ?? 'later') : sayTime(test.due, now);
    case 'due':
      return test.when === null ? 'now' : `now: ${test.when}`;
    default:
      return test.state;
  }
}

const LOUD = { colour: 'red', bold: true } as const;

export function drawTests(state: State): Page {
  const { open } = state;
  const here = testAt(state);
  if (!open) return { left: [], middle: () => [] };
  const tests = testsNow(open.job, state.now);
  const left = tests.filter((t) => t.state !== 'passed').length;
  const room = Math.max(0, ...tests.map((t) => width(stateSaid(t, state.now))));
  return {
    left: line(bold('What is to be tested')),
    right: line(left === 0 ? 'all passed' : `${left} of ${tests.length} not passed`),
    under: line(open.job.upper.job),
    middle: (columns, rows) => {
      if (tests.length === 0) return [[], line('Nothing was disturbed yet.')];
      const lines = tests.map((t): Line => {
        const marked = t.test === here?.test;
        const style = t.state === 'failed' ? LOUD : t.state === 'due' ? { bold: true } : {};
        return line(
          span(marked ? '> ' : '  ', { bold: true }),
          pad(line(span(stateSaid(t, state.now), style)), room + 2),
          pad(line(marked ? bold(t.say) : t.say), Math.max(0, columns - room - 4)),
        );
      });
      return around(
        lines,
        tests.findIndex((t) => t.test === here?.test),
        rows,
      );
    },
    say: here ? sayTest(open.job, here, state.columns) : [],
  };
}

function sayTest(job: Job, test: TestItem, columns: number): Line[] {
  const of = { task: test.test };
  const { say, limit } = test;
  const printed = limit === null ? null : printedOf(job, of, 'limit', limit);
  const told = [test.was && `was ${test.was}`, test.set && `set ${test.set}`].filter((t) => t);
  return [
    ...corrected([{ label: 'Step', text: say, printed: printedOf(job, of, 'step', say) }], columns),
    ...(limit === null ? [] : flow(both(`Limit: ${limit}.`, printed, { bold: true }), columns)),
    ...wrap(told.length > 0 ? `${told.join(', ')}.` : '', columns),
    ...wrap(test.listed ? '' : 'From what was disturbed; what the maker says goes first.', columns),
  ];
}

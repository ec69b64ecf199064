/** One task or test: what it is, what it waits for, and done in one key or one line. */

import { printedOf } from '../../job/truth/corrections.ts';
import type { Correctable, TaskVerb, Wish } from '../../model/types.ts';
import { ask } from '../ask/field.ts';
import type { Acts } from '../base/act.ts';
import { openGate } from '../base/enter.ts';
import { record, show, stay } from '../base/moves.ts';
import type { Page } from '../base/page.ts';
import type { State, Updated } from '../base/state.ts';
import { hangingBoth } from '../kit/both.ts';
import { bold, type Line, line, pad, type Style, span } from '../kit/text.ts';
import { isStartAsked } from '../now/gate-now.ts';
import { runs, type TaskHere, taskHere } from '../now/task-now.ts';
import { doneWish } from '../now/task-wish.ts';
import { waitsRow } from '../now/waits-for.ts';

export function taskAt(state: State): TaskHere | null {
  const { view, open } = state;
  return view.screen === 'task' && open ? taskHere(open.job, view.task, state.now) : null;
}

/** To the task; before one that makes the machine run, to what is to be seen to first. */
export function openTask(state: State, task: string): Updated {
  const opened: State = { ...state, view: { screen: 'task', task, under: state.view } };
  const now = taskAt(opened);
  if (!now || !state.open) return stay(state);
  const starts = now.state !== 'done' && runs(now);
  if (starts && isStartAsked(state.open.job, state.now, state.read)) {
    return openGate(opened, 'start', 'back');
  }
  return stay(opened);
}

function readMark(task: string): string {
  return `task ${task}`;
}

export function mustReadTask(state: State): boolean {
  const now = taskAt(state);
  return (
    now?.state === 'open' && now.cautions.length > 0 && !state.read.includes(readMark(now.key))
  );
}

/** Kept in one line of text rather than in one key. */
const SAID: readonly TaskVerb[] = ['adjust', 'decide'];

export const taskActs = {
  'read-task': (state) => {
    const now = taskAt(state);
    return stay(now ? { ...state, read: [...state.read, readMark(now.key)] } : state);
  },
  'task-done': (state) => {
    const now = taskAt(state);
    if (!now) return stay(state);
    if (SAID.includes(now.verb)) return ask(state, { ask: 'result', task: now.key, how: 'done' });
    return record(state, doneWish(now, now.verb === 'test' ? { result: 'passed' } : {}));
  },
  'task-said': (state) => {
    const now = taskAt(state);
    return now ? ask(state, { ask: 'result', task: now.key, how: 'done' }) : stay(state);
  },
  'task-failed': (state) => {
    const now = taskAt(state);
    return now ? ask(state, { ask: 'result', task: now.key, how: 'failed' }) : stay(state);
  },
  'next-round-of': (state) => {
    const now = taskAt(state);
    if (!now) return stay(state);
    return show(state, { screen: 'round', test: now.key, top: 0, under: state.view });
  },
} satisfies Acts;

/** After it was noted: back to where it was opened, or to the next round. */
export function afterDone(state: State, wish: Extract<Wish, { do: 'done' }>): Updated {
  const { view } = state;
  if (view.screen !== 'task') return stay({ ...state, quiet: 'Noted.' });
  const now = taskAt(state);
  if (wish.result === 'failed') {
    return show(state, { screen: 'round', test: wish.task, top: 0, under: view.under });
  }
  const told = now?.told ? `, ${now.told}` : '';
  const how = wish.result === 'passed' ? 'passed' : 'done';
  const { under } = view;
  // In a list the mark goes on to what comes next.
  const list =
    under.screen === 'job' || under.screen === 'tests' ? { ...under, here: null } : under;
  return show({ ...state, quiet: now ? `${now.say}: ${how}${told}.` : 'Noted.' }, list);
}

// ---------------------------------------------------------------- keys

const DONE: Readonly<Record<TaskVerb, string>> = {
  do: 'it is done',
  wait: 'it is over',
  adjust: 'was and set',
  test: 'passed',
  decide: 'what is decided',
};

export function doneLabel(state: State): string {
  return DONE[taskAt(state)?.verb ?? 'do'];
}

export function canDone(state: State): boolean {
  const now = taskAt(state);
  return now !== null && now.state !== 'failed' && !mustReadTask(state);
}

export function canFail(state: State): boolean {
  const verb = taskAt(state)?.verb;
  return verb === 'test' || verb === 'adjust';
}

export function hasFailed(state: State): boolean {
  return taskAt(state)?.state === 'failed';
}

// ---------------------------------------------------------------- picture

const KINDS: Readonly<Record<TaskVerb, string>> = {
  do: 'to do',
  wait: 'to wait for',
  adjust: 'to adjust',
  test: 'to test',
  decide: 'to decide',
};
const WHAT: Readonly<Record<string, Correctable>> = {
  Step: 'step',
  Limit: 'limit',
  When: 'when',
  Note: 'note',
};
const LABEL = 10;
const LOUD: Style = { colour: 'red', bold: true };

export function drawTask(state: State): Page {
  const now = taskAt(state);
  if (!now) return { left: [], middle: () => [] };
  const { job } = state.open ?? {};
  const names = (now.test?.pieces ?? []).map((key) => job?.pieces.get(key)?.spec.name ?? key);
  const printed = (label: string, text: string) => {
    const what = WHAT[label];
    return job && what ? printedOf(job, { task: now.key }, what, text) : null;
  };
  const rows: [string, string | null, Style?][] = [
    // The step itself stands at the head.
    ['Step', printed('Step', now.say) === null ? null : now.say],
    ...now.cautions.map((say): [string, string, Style] => ['Caution', say, LOUD]),
    ['Limit', now.limit],
    ['When', now.when],
    ['Of', names.length === 0 ? null : names.join(', ')],
    ['Waits for', waitsRow(now.waits)],
    ['Note', now.note],
    [
      now.state === 'failed' ? 'Failed' : 'Done',
      stateSaid(now),
      now.state === 'failed' ? LOUD : {},
    ],
  ];
  return {
    left: line(bold(now.say)),
    right: line(now.state === 'open' ? KINDS[now.verb] : now.state),
    under: line(job?.upper.job ?? ''),
    middle: (columns) => [
      [],
      ...rows.flatMap(([label, text, style = {}]): Line[] =>
        text === null
          ? []
          : hangingBoth(
              pad(line(span(label, { bold: true, ...style })), LABEL),
              { text, printed: printed(label, text) },
              columns,
              style,
            ),
      ),
    ],
  };
}

function stateSaid(now: TaskHere): string | null {
  if (now.state === 'open') return null;
  return now.told === '' ? 'noted, without a word' : now.told;
}

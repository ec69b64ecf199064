/** One task or test: what it is, what it waits for, and done in one key or one line. */
import { looksLikeLimit } from '../../bolt/read/reading-limit.ts';
import type { Refusal, TaskVerb, TextSaid, Wish } from '../../model/types.ts';
import { holdsTest, notBackAt } from '../../plan/gates/holds-test.ts';
import type { ItemInWords } from '../../plan/gates/items.ts';
import { waitsRow } from '../../plan/next/waits-for.ts';
import { taskSaid } from '../../plan/order/say.ts';
import { type TaskHere, taskHere } from '../../plan/task/task-now.ts';
import { doneWish } from '../../plan/task/task-wish.ts';
import { sayDate } from '../../plan/time/days.ts';
import { ask, askReason } from '../ask/field.ts';
import { noteKey } from '../ask/note.ts';
import { ENTER, GO } from '../base/key.ts';
import { type OnJob, onJob, requestMark, say, show, stay } from '../base/moves.ts';
import type { Page } from '../base/page.ts';
import { type MadeMark, screenOver, type WishTo } from '../base/screen.ts';
import type { State, Updated, View } from '../base/state.ts';
import { hangingBoth } from '../kit/both.ts';
import { stopBox } from '../kit/box.ts';
import { bold, type Line, line, pad, type Style, span, width } from '../kit/text.ts';
import { inTask } from '../known/in-question.ts';
import { knownKey } from '../known/known-keys.ts';
import { notSo } from '../known/not-so.ts';
import { solve, solveSaid } from './way-out.ts';

interface OnTask extends OnJob<Extract<View, { screen: 'task' }>> {
  task: TaskHere;
  /** What is to be seen to before this test counts as passed. */
  stops: readonly ItemInWords[];
}

function onTask(state: State, view: OnTask['view']): OnTask | null {
  const here = onJob(state, view);
  const task = here && taskHere(here.job, view.task, state.now);
  return here && task && { ...here, task, stops: stopsTest({ ...here, task }, state.now) };
}

function readMark(task: string): string {
  return `task ${task}`;
}

/** Its caution is to be read first. */
function mustRead({ state, task }: OnTask): boolean {
  const unread = task.cautions.length > 0 && !state.read.includes(readMark(task.key));
  return task.state === 'open' && unread;
}

function stopsTest({ job, task }: Pick<OnTask, 'job' | 'task'>, now: string): ItemInWords[] {
  if (task.verb !== 'test' || task.state !== 'open') return [];
  return holdsTest(job, task.key, now);
}

function startSeen(item: ItemInWords): Extract<Wish, { do: 'gate' }> {
  return { do: 'gate', moment: 'start', how: 'seen', item: item.key };
}

const wayOut = (item: ItemInWords | undefined): string => (item ? solveSaid(item) : '');

function canDone(here: OnTask): boolean {
  return here.task.state !== 'failed' && !mustRead(here);
}

/** Enter and p are for what its turn has come for; before that it takes a word, as all that is done out of turn does. */
const isEarly = ({ task }: OnTask): boolean => task.state === 'open' && task.waits !== '';

const sayEarly = ({ state, task }: OnTask): Updated =>
  say(state, `Not yet: it waits for ${task.waits}. If it is done all the same, r says how.`);

/** One key says no more than is noted already; a line of text may. */
const isNoted = ({ task }: OnTask): boolean =>
  task.state === 'done' && !SAID.includes(task.verb) && !isRead(task);

const sayNoted = ({ state, task }: OnTask): Updated =>
  say(state, `That is noted already: ${task.verb === 'test' ? 'passed' : 'done'}. r adds a word.`);

/** Done with a line of text rather than with one key; a test whose limit is a figure with its reading. */
const SAID: readonly TaskVerb[] = ['adjust', 'decide'];
const isRead = ({ verb, limit }: TaskHere): boolean =>
  verb === 'test' && limit !== null && looksLikeLimit(limit);

/** A test that eyes and hands judge, without a figure. */
const isSeen = (task: TaskHere): boolean => task.verb === 'test' && !isRead(task);

function askResult({ state, task }: OnTask, how: 'done' | 'failed'): Updated {
  return ask(state, { ask: 'result', task: task.key, how });
}

const DONE: Readonly<Record<TaskVerb, string>> = {
  do: 'it is done',
  wait: 'it is over',
  adjust: 'was and set',
  test: 'passed',
  decide: 'what is decided',
};

export const taskScreen = screenOver({
  here: onTask,
  keys: [
    {
      id: 'read-task',
      presses: GO,
      anew: GO,
      label: 'read, go on',
      help: 'the caution has been read: go on',
      holds: mustRead,
      does: ({ state, task }) => stay({ ...state, read: [...state.read, readMark(task.key)] }),
    },
    {
      id: 'task-done',
      presses: ENTER,
      anew: ENTER,
      label: (here) =>
        isEarly(here) || isNoted(here)
          ? ''
          : isRead(here.task)
            ? 'what it reads'
            : DONE[here.task.verb],
      help: 'it is done, over; or what it was and is now, or what it reads',
      holds: (here) => canDone(here) && !isSeen(here.task) && here.stops.length === 0,
      does: (here) => {
        const { state, task } = here;
        if (isEarly(here)) return sayEarly(here);
        if (isNoted(here)) return sayNoted(here);
        if (SAID.includes(task.verb) || isRead(task)) return askResult(here, 'done');
        return requestMark(state, doneWish(task, {}));
      },
    },
    {
      // Enter opened it, and ended the pass before it: nothing that a hand does once too often passes a test.
      id: 'task-passed',
      presses: ['p'],
      label: (here) => (here.stops.length > 0 || isEarly(here) || isNoted(here) ? '' : 'passed'),
      help: 'the test was made, and it passed',
      holds: (here) => canDone(here) && isSeen(here.task),
      does: (here) => {
        const { state, task, stops } = here;
        if (stops.length > 0) return say(state, 'What stops comes first.');
        if (isEarly(here)) return sayEarly(here);
        if (isNoted(here)) return sayNoted(here);
        return requestMark(state, doneWish(task, { result: 'passed' }));
      },
    },
    {
      id: 'stop-seen',
      presses: ENTER,
      anew: ENTER,
      label: ({ stops: [first] }) => (first?.way?.to === 'tick' ? 'it is so' : wayOut(first)),
      help: 'the way out of what stops before this test: it is so, or to where it is mended',
      holds: (here) => canDone(here) && here.stops.length > 0,
      does: ({ state, stops: [first] }) =>
        first ? solve(state, first, startSeen(first)) : stay(state),
    },
    {
      id: 'past',
      presses: ['w'],
      alone: true,
      label: 'all the same, and why',
      help: 'on in spite of STOP, with a reason',
      holds: (here) => canDone(here) && here.stops.length > 0,
      does: ({ state, stops: [first] }) => {
        if (!first) return stay(state);
        const refused = { code: 'gate', say: first.stop ?? first.say, data: {}, overrulable: true };
        return ask(state, { ask: 'why', wish: startSeen(first), refused });
      },
    },
    {
      id: 'task-how',
      presses: ENTER,
      label: '',
      help: 'on a test: says by which letters it passes and fails',
      holds: (here) => canDone(here) && isSeen(here.task) && here.stops.length === 0,
      does: (here) =>
        isNoted(here)
          ? sayNoted(here)
          : say(here.state, 'Make the test first. Then p: it passed; -: it failed.'),
    },
    {
      id: 'next-round-of',
      presses: ENTER,
      anew: ENTER,
      label: 'round again',
      help: 'it failed: what comes off once more',
      holds: ({ task }) => task.state === 'failed',
      does: ({ state, view, task }) =>
        show(state, { screen: 'round', test: task.key, under: view }),
    },
    {
      id: 'task-failed',
      // As with a bolt: something is wrong.
      presses: ['-', '!'],
      label: 'failed',
      help: 'it failed, and what it showed',
      holds: ({ task }) => task.verb === 'test' || task.verb === 'adjust',
      does: (here) => askResult(here, 'failed'),
    },
    {
      id: 'task-said',
      presses: ['r'],
      label: 'with a word',
      help: 'done, with what it was, what it is set to, what came of it; of a test first passed or failed',
      holds: (here) => canDone(here) && here.stops.length === 0,
      does: (here) => askResult(here, 'done'),
    },
    {
      id: 'weigh-it',
      presses: ['w'],
      label: 'weigh it',
      help: 'what renewing it now costs, and leaving it',
      holds: ({ task }) => task.verb === 'decide' && task.listed,
      does: ({ state, view, task }) =>
        show(state, { screen: 'weigh', task: task.key, under: view }),
    },
    knownKey<OnTask>(
      ({ job, view }) => (job.tasks.has(view.task) ? { task: view.task } : null),
      'what is known',
    ),
    notSo<OnTask>(({ job, view }) => inTask(job, view.task)),
    { ...noteKey, label: '' },
  ],
  draw: drawTask,
  after: { done: afterDone, gate: stay },
  refused: outOfLimit,
});

/** What was measured does not keep to its limit, or nothing was: it counts with a reason, or not at all. */
function outOfLimit(state: State, why: Refusal, wish: Wish): Updated {
  if (!why.overrulable) return say(state, why.say);
  const asked = askReason(state, wish, why);
  return { ...asked, effects: [...asked.effects, { do: 'ring' }] };
}

/** After it was noted: back to where it was opened, or to the next round. */
function afterDone(state: State, { wish }: MadeMark<WishTo<'done'>>): Updated {
  const { view, open } = state;
  if (view.screen !== 'task') return stay(state);
  const now = open && taskHere(open.job, view.task, state.now);
  const { under } = view;
  if (wish.result === 'failed') return show(state, { screen: 'round', test: wish.task, under });
  const told = now?.told ? `, ${now.told}` : '';
  const how = now?.verb === 'test' ? 'passed' : 'done';
  // In a list the next row is marked.
  const list =
    under.screen === 'job' || under.screen === 'tests' ? { ...under, here: null } : under;
  return show({ ...state, quiet: now ? `${now.say}: ${how}${told}.` : 'Noted.' }, list);
}

// ---------------------------------------------------------------- picture

const KINDS: Readonly<Record<TaskVerb, string>> = {
  do: 'to do',
  wait: 'to wait for',
  adjust: 'to adjust',
  test: 'to test',
  decide: 'to decide',
};
const LABEL = 10;
const LOUD: Style = { colour: 'red', bold: true };

function drawTask({ state, job, task: now, stops }: OnTask): Page {
  const names = (now.test?.pieces ?? []).map((key) => job.pieces.get(key)?.spec.name ?? key);
  const { say: step, limit, when } = taskSaid(job, now);
  const right = now.state === 'open' ? KINDS[now.verb] : now.state;
  // The step itself stands at the head, where it fits there and is as printed.
  const atHead = width(now.say) + width(right) + GAP <= state.columns && step.printed === null;
  const rows: [string, string | TextSaid | null, Style?][] = [
    ['Step', atHead ? null : step],
    ...now.cautions.map((say): [string, string, Style] => ['Caution', say, LOUD]),
    ['Limit', limit],
    ['When', when],
    ['Of', names.length === 0 ? null : names.join(', ')],
    ['Waits for', waitsRow(now.waits)],
    ['But', now.state === 'open' ? notBackAt(job, now.key, state.now) : null, LOUD],
    ['Note', job.tasks.get(now.key)?.spec.note ?? null],
    ...now.failedBefore.map(({ at, say }): [string, string] => [
      'Before',
      [`failed ${sayDate(at, state.now)}`, say].filter((t) => t !== '').join(': '),
    ]),
    [
      now.state === 'failed' ? 'Failed' : 'Done',
      stateSaid(now),
      now.state === 'failed' ? LOUD : {},
    ],
  ];
  return {
    kind: 'page',
    left: line(bold(now.say)),
    right: line(right),
    under: line(job.upper.job),
    middle: (columns) => [
      ...(stops.length > 0
        ? stopBox(
            stops.map((item) => item.stop ?? item.say),
            columns,
            0,
          )
        : []),
      [],
      ...rows.flatMap(([label, text, style = {}]): Line[] =>
        text === null
          ? []
          : hangingBoth(
              pad(line(span(label, { bold: true, ...style })), LABEL),
              typeof text === 'string' ? { text, printed: null } : text,
              columns,
              style,
            ),
      ),
    ],
  };
}

/** Columns between what stands at the left of the head and what stands at its right. */
const GAP = 2;

function stateSaid(now: TaskHere): string | null {
  if (now.state === 'open') return null;
  return now.told === '' ? 'noted, without a word' : now.told;
}

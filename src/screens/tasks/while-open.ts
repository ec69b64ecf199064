/** While it is open: what is within reach now, and whether each is looked at, renewed, left or asked about. */

import { partsTold } from '../../memory/last.ts';
import { capital } from '../../model/words.ts';
import { type Chosen, type WithinReach, whileOpen } from '../../plan/trace/while-open.ts';
import { ask } from '../ask/field.ts';
import { ENTER, type Key } from '../base/key.ts';
import { type OnJob, onJob, pieceNamed, requestMark, stay } from '../base/moves.ts';
import { listLines, middleRows, type Page } from '../base/page.ts';
import { screenOver } from '../base/screen.ts';
import type { State, View } from '../base/state.ts';
import { bold, type Line, line, pad, span, width, wrap } from '../kit/text.ts';
import { openTask } from './open-task.ts';

interface OnReach extends OnJob<Extract<View, { screen: 'within-reach' }>> {
  items: readonly WithinReach[];
  item: WithinReach | null;
}

function onReach(state: State, view: OnReach['view']): OnReach | null {
  const here = onJob(state, view);
  if (!here) return null;
  const { earlier, now } = state;
  const before = earlier?.file === state.open?.file ? (earlier?.before ?? []) : [];
  const told = partsTold(here.job, before, view.piece, now);
  const items = whileOpen(here.job, view.piece, now, told);
  const open = items.find((one) => one.chosen === null);
  const item = items.find(({ name }) => name === view.here) ?? open ?? items[0] ?? null;
  return { ...here, items, item };
}

const isThing = ({ item }: OnReach): boolean => item !== null && item.task === null;

function chosen(answer: Chosen): Key<OnReach>['does'] {
  return ({ state, view, item }) =>
    item
      ? requestMark(state, { do: 'choose', piece: view.piece, what: item.what, answer })
      : stay(state);
}

export const reachScreen = screenOver({
  here: onReach,
  keys: [
    {
      id: 'reach-question',
      presses: ENTER,
      label: 'weigh it',
      help: 'the question that the file asks already',
      holds: ({ item }) => item !== null && item.task !== null,
      does: ({ state, item }) => (item?.task ? openTask(state, item.task) : stay(state)),
    },
    {
      id: 'reach-look',
      presses: ENTER,
      anew: ENTER,
      label: 'look at it',
      help: 'to be looked at while it is open: among the tasks',
      holds: isThing,
      does: chosen('look'),
    },
    {
      id: 'reach-renew',
      presses: ['r'],
      label: 'renew it',
      help: 'to be renewed: among the tasks, and on the list',
      holds: isThing,
      does: chosen('renew'),
    },
    {
      id: 'reach-leave',
      presses: ['l'],
      label: 'leave it',
      help: 'it is left, and why',
      holds: isThing,
      does: ({ state, view, item }) =>
        item ? ask(state, { ask: 'left-so', piece: view.piece, what: item.what }) : stay(state),
    },
    {
      id: 'reach-ask',
      presses: ['o'],
      label: 'ask the owner',
      help: 'a question for the owner, among the tasks',
      holds: isThing,
      does: chosen('ask'),
    },
  ],
  draw: drawReach,
  rows: ({ view, items, item }) => ({
    names: items.map(({ name }) => name),
    marked: item?.name ?? null,
    mark: (here) => ({ ...view, here }),
  }),
});

const SAID: Readonly<Record<Chosen, string>> = {
  look: 'to look at',
  renew: 'to renew',
  leave: 'left',
  ask: 'to be asked',
};

function drawReach({ state, job, view, items, item }: OnReach): Page {
  const at = item ? items.indexOf(item) + 1 : 0;
  const around = {
    left: line(bold(`${pieceNamed(job, view.piece).spec.name}: while it is open`)),
    right: line('what is within reach'),
    under: line(
      items.length > middleRows(state.rows) - 1 ? `${at} of ${items.length}` : job.upper.job,
    ),
    above: [[]],
    say: item ? itemLines(item, state.columns) : [],
  };
  if (items.length === 0) {
    const none = 'Nothing that is used once, seals, bears or wears is noted behind it.';
    return { kind: 'plain', ...around, middle: (columns) => wrap(none, columns) };
  }
  const stateOf = ({ chosen: said, task }: WithinReach) =>
    said ? SAID[said] : task ? 'a question' : '';
  const room = Math.max(0, ...items.map((one) => width(stateOf(one))));
  return {
    kind: 'list',
    ...around,
    counted: true,
    middle: (columns) =>
      items.flatMap((one, i) => {
        const is = one === item;
        const texts = wrap(one.what, Math.max(20, columns - room - MARGINS), { bold: is });
        const lines = texts.map((text, k) =>
          line(
            span(is && k === 0 ? '> ' : '  ', { bold: true }),
            pad(line(k === 0 ? stateOf(one) : ''), room + 2),
            text,
          ),
        );
        return listLines(lines, i, is);
      }),
  };
}

const MARGINS = 4;

function itemLines({ from, look }: WithinReach, columns: number): Line[] {
  return [...wrap(look, columns, { bold: true }), ...wrap(`${capital(from)}.`, columns)];
}

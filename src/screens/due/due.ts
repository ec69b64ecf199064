/** What follows from the jobs of the bench: what is due, by the calendar or by a counter, on all its machines. */
import type { Due } from '../../memory/due.ts';
import { list } from '../../model/words.ts';
import { sayDate } from '../../plan/time/days.ts';
import { ENTER } from '../base/key.ts';
import { stay } from '../base/moves.ts';
import { listLines, type Page } from '../base/page.ts';
import { screenOver } from '../base/screen.ts';
import type { State, View } from '../base/state.ts';
import { bold, cutTo, hanging, type Line, line, span, wrap } from '../kit/text.ts';

type DueView = Extract<View, { screen: 'due' }>;

interface OnDue {
  state: State;
  view: DueView;
  rows: readonly Due[];
  row: Due | null;
}

const nameOf = ({ file, task }: Due): string => `${file}:${task}`;

export const dueScreen = screenOver({
  here: (state: State, view: DueView): OnDue => {
    const rows = view.due ?? [];
    return { state, view, rows, row: rows.find((r) => nameOf(r) === view.here) ?? rows[0] ?? null };
  },
  keys: [
    {
      id: 'open-due',
      presses: ENTER,
      label: 'open its job',
      help: 'open the job that it follows from',
      holds: ({ row }) => row !== null,
      does: ({ state, row }) => {
        if (row === null) return stay(state);
        const { file, piece } = row;
        const waiting = { for: 'file', file, piece } as const;
        return { state: { ...state, waiting }, effects: [{ do: 'open', file }] };
      },
    },
  ],
  draw: drawDue,
  rows: ({ view, rows, row }) => ({
    names: rows.map(nameOf),
    marked: row === null ? null : nameOf(row),
    mark: (here) => ({ ...view, here }),
  }),
});

function drawDue({ state, view, rows, row }: OnDue): Page {
  const now = rows.filter((r) => r.state === 'due').length;
  const counted = `${now} due, ${rows.length - now} later`;
  const around = {
    left: line(bold('What follows from jobs')),
    right: line(view.due === null ? 'reading the jobs' : counted),
    say: wrap(unreadSaid(view.unread ?? []), state.columns),
  };
  if (rows.length === 0) {
    const none = view.due === null ? '' : 'Nothing is due.';
    return { kind: 'plain', ...around, middle: () => [[], line(none)] };
  }
  return {
    kind: 'list',
    ...around,
    middle: (columns) =>
      rows.flatMap((r, i) => listLines(rowLines(r, r === row, columns, state.now), i, r === row)),
  };
}

/** So many are named. */
const MOST_NAMED = 3;

/** What could not be asked; empty where all could. */
function unreadSaid(unread: readonly string[]): string {
  if (unread.length === 0) return '';
  const more = unread.length - MOST_NAMED;
  const named = unread.slice(0, MOST_NAMED);
  return `Not all could be read, so more may be due: ${list(more > 0 ? [...named, `${more} more`] : named)}. putback check says why.`;
}

/** When, and what; and of which job. */
function rowLines(due: Due, marked: boolean, columns: number, now: string): Line[] {
  const { say, job, machine, state } = due;
  const mark = span(marked ? '> ' : '  ', { bold: true });
  const when = line(mark, span(`${whenSaid(due, now)}  `, { bold: state === 'due' }));
  const text = marked ? hanging(when, say, columns) : [cutTo([...when, ...line(say)], columns)];
  const of = [machine?.split(',')[0], job].filter((t) => t != null).join(', ');
  return [...text, cutTo(line(`    ${of}`), columns)];
}

function whenSaid({ state, due, at, left, when }: Due, now: string): string {
  if (due !== null) return state === 'due' ? `since ${sayDate(due, now)}` : sayDate(due, now);
  if (at !== null) return state === 'due' ? `since ${at}` : `at ${at}, ${left} left`;
  return state === 'due' ? 'due' : (when ?? 'later');
}

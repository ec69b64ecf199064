/** What is known of a piece or a task, on one page: read it, add to it, say what is not so here. */

import type { KnownRow } from '../../plan/known/rows.ts';
import { ask } from '../ask/field.ts';
import { ENTER } from '../base/key.ts';
import { show, stay } from '../base/moves.ts';
import { screenOver } from '../base/screen.ts';
import type { State, Updated } from '../base/state.ts';
import type { InQuestion } from './in-question.ts';
import { drawKnown } from './known-page.ts';
import { askTruth, notSo } from './not-so.ts';
import { knownHere, type OnKnown } from './on-known.ts';

/** With the row that is shown as marked written down, also where nobody has moved yet. */
function withMark({ state, view, row }: OnKnown): State {
  return { ...state, view: { ...view, here: row?.id ?? null } };
}

/** On a page that was opened to say what is not so, Enter says that of what stands there. */
function writes({ view }: OnKnown, row: KnownRow): boolean {
  return row.write !== null && (row.figure === null || !view.first.includes(row.id));
}

function goOn(here: OnKnown): Updated {
  const { state, view, row } = here;
  if (!row) return stay(state);
  if (!writes(here, row)) return askTruth(withMark(here), row);
  if (row.write === null || !('piece' in view.of)) return stay(state);
  const asks = { ask: 'write', piece: view.of.piece, key: row.write, more: [], say: null } as const;
  return ask(withMark(here), asks);
}

function goOnLabel(here: OnKnown): string {
  const { row } = here;
  if (!row || !writes(here, row)) return 'what is true here';
  return row.said ? 'one more' : 'write it';
}

function inRow({ view, row }: OnKnown): InQuestion {
  return { of: view.of, rows: row?.figure ? [row] : [] };
}

export const knownScreen = screenOver({
  here: knownHere,
  keys: [
    {
      id: 'known-forth',
      presses: ENTER,
      label: goOnLabel,
      help: 'one text more there, or what is true in its place',
      holds: (here) => here.row !== null && (writes(here, here.row) || here.row.figure !== null),
      does: goOn,
    },
    {
      ...notSo<OnKnown>(inRow),
      does: (here) => (here.row ? askTruth(withMark(here), here.row) : stay(here.state)),
    },
    {
      id: 'while-open',
      presses: ['o'],
      label: 'while it is open',
      help: 'what is within reach while it is off: look, renew, leave, ask',
      holds: ({ job, view }) =>
        'piece' in view.of && (job.pieces.get(view.of.piece)?.away ?? 'no') !== 'no',
      does: ({ state, view }) =>
        'piece' in view.of
          ? show(state, { screen: 'within-reach', piece: view.of.piece, here: null, under: view })
          : stay(state),
    },
  ],
  draw: drawKnown,
  rows: ({ view, rows, row }) => ({
    names: rows.map((r) => r.id),
    marked: row?.id ?? null,
    mark: (here) => ({ ...view, here }),
  }),
});

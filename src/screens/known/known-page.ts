/** The page of all that is known of a piece or a task, drawn. */

import { pieceNamed } from '../base/moves.ts';
import type { Page } from '../base/page.ts';
import type { State } from '../base/state.ts';
import { hangingBoth } from '../kit/both.ts';
import { around } from '../kit/scroll.ts';
import { bold, hanging, type Line, line, pad, span, width } from '../kit/text.ts';
import type { KnownRow } from '../now/known-rows.ts';
import { taskHere } from '../now/task-now.ts';
import { rowHere, rowsHere } from './known.ts';

export function drawKnown(state: State): Page {
  const { view, open } = state;
  if (view.screen !== 'known' || !open) return { left: [], middle: () => [] };
  const rows = rowsHere(state);
  const here = rowHere(state);
  const { of } = view;
  const name =
    'piece' in of
      ? pieceNamed(open.job, of.piece).spec.name
      : (taskHere(open.job, of.task, state.now)?.say ?? of.task);
  const asked = view.first.length > 0;
  const drawn = drawRows(rows, here, view.first.length, state.columns);
  return {
    left: line(bold(name)),
    right: line(asked ? 'which is not so here?' : 'what is known of it'),
    // Where not all rows are in sight, how many there are.
    under: line(
      drawn.length > state.rows - AROUND && here
        ? `${rows.indexOf(here) + 1} of ${rows.length}`
        : '',
    ),
    middle: (_, height) => {
      if (rows.length === 0) return [[], line('Nothing is noted of it.')];
      const marked = drawn.findIndex((l) => l.id === here?.id);
      return around(
        drawn.map((l) => l.line),
        marked,
        height,
      );
    },
  };
}

/** Head, its second line, and the foot. */
const AROUND = 3;

/** All lines of the page, those of a row with its name. */
function drawRows(
  rows: readonly KnownRow[],
  here: KnownRow | null,
  first: number,
  columns: number,
) {
  const label = Math.max(0, ...rows.map((r) => width(r.label))) + GAP;
  const lines: { line: Line; id: string | null }[] = [];
  for (const [i, row] of rows.entries()) {
    const before = rows[i - 1];
    if (first > 0 && i === first) lines.push(blank);
    if (!row.said && (before?.said ?? true)) lines.push(...(before ? [blank] : []), NOT_SAID);
    const same = before?.label === row.label && before.said === row.said;
    const drawn = rowLines(row, row.id === here?.id, same, label, columns);
    lines.push(...drawn.map((l) => ({ line: l, id: row.id })));
  }
  return lines;
}

const GAP = 2;
const blank: { line: Line; id: null } = { line: [], id: null };
const NOT_SAID = { line: line('  Not said yet:'), id: null };

function rowLines(
  row: KnownRow,
  marked: boolean,
  same: boolean,
  label: number,
  columns: number,
): Line[] {
  const first = line(
    span(marked ? '> ' : '  ', { bold: true }),
    pad(line(span(same ? '' : row.label, { bold: row.said || marked })), label),
  );
  if (!row.said) return hanging(first, row.text, columns);
  return hangingBoth(first, row, columns, marked ? { bold: true } : {});
}

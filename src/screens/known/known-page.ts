/** The page of all that is known of a piece or a task, drawn. */

import type { KnownRow } from '../../plan/known/rows.ts';
import { taskHere } from '../../plan/task/task-now.ts';
import { pieceNamed } from '../base/moves.ts';
import { AROUND, type ListLine, listLines, type Page } from '../base/page.ts';
import { hangingBoth } from '../kit/both.ts';
import { bold, hanging, type Line, line, pad, span, width } from '../kit/text.ts';
import type { OnKnown } from './on-known.ts';

export function drawKnown({ state, job, view, rows, row }: OnKnown): Page {
  const { of } = view;
  const name =
    'piece' in of
      ? pieceNamed(job, of.piece).spec.name
      : (taskHere(job, of.task, state.now)?.say ?? of.task);
  const asked = view.first.length > 0;
  const drawn = drawRows(rows, row, view.first.length, state.columns);
  const around = {
    left: line(bold(name)),
    right: line(asked ? 'which is not so here?' : 'what is known of it'),
    // Where not all rows are in sight, how many there are.
    under: line(
      drawn.length > state.rows - AROUND && row ? `${rows.indexOf(row) + 1} of ${rows.length}` : '',
    ),
  };
  if (rows.length === 0) {
    return { kind: 'plain', ...around, middle: () => [[], line('Nothing is noted of it.')] };
  }
  return { kind: 'list', ...around, counted: true, middle: () => drawn };
}

/** All lines of the page, each with the row that it belongs to. */
function drawRows(
  rows: readonly KnownRow[],
  here: KnownRow | null,
  first: number,
  columns: number,
): ListLine[] {
  const label = Math.max(0, ...rows.map((r) => width(r.label))) + GAP;
  const lines: ListLine[] = [];
  for (const [i, row] of rows.entries()) {
    const before = rows[i - 1];
    if (first > 0 && i === first) lines.push(between([]));
    if (!row.said && (before?.said ?? true)) {
      lines.push(...(before ? [between([])] : []), between(line('  Not said yet:')));
    }
    const same = before?.label === row.label && before.said === row.said;
    const drawn = rowLines(row, row.id === here?.id, same, label, columns);
    lines.push(...listLines(drawn, i, row.id === here?.id));
  }
  return lines;
}

const GAP = 2;
const between = (what: Line): ListLine => ({ line: what, row: null, marked: false });

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

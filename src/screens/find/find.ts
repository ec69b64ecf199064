/** Words looked for in all jobs of the bench, as they are typed: the lines that answer, and the way there. */
import { type Held, saidOf } from '../../find/question.ts';
import { askedOf } from '../../find/words.ts';
import { quoted } from '../../model/safe.ts';
import { ENTER, type Key } from '../base/key.ts';
import { say, show, stay } from '../base/moves.ts';
import { type ListLine, listLines, type Page } from '../base/page.ts';
import { screenOver } from '../base/screen.ts';
import type { State, Updated, View } from '../base/state.ts';
import { drawField, field, fieldText } from '../kit/field.ts';
import { bold, cutTo, hanging, type Line, line, span } from '../kit/text.ts';
import { many } from '../kit/words.ts';

type FindView = Extract<View, { screen: 'find' }>;

interface OnFind {
  state: State;
  view: FindView;
  rows: readonly Held[];
  row: Held | null;
}

/** So many are drawn: who wants another one types on. */
const MOST = 100;

const nameOf = ({ file, line: at, piece }: Held): string => `${file}:${at}:${piece ?? ''}`;

function onFind(state: State, view: FindView): OnFind {
  const rows = (view.found ?? []).slice(0, MOST);
  const row = rows.find((r) => nameOf(r) === view.here) ?? rows[0] ?? null;
  return { state, view, rows, row };
}

/** On the bench. */
export const findKey: Key<{ state: State }> = {
  id: 'find-words',
  presses: ['/'],
  label: 'find',
  help: 'find words in all jobs: notes, part numbers, sizes, months',
  does: ({ state }) =>
    show(state, {
      screen: 'find',
      field: field(''),
      of: '',
      found: null,
      unread: [],
      reading: null,
      here: null,
      under: state.view,
    }),
};

function openFound({ state, row }: OnFind): Updated {
  if (row === null) return stay(state);
  const { file, piece } = row;
  // A job of another bench is not this folder's to open.
  if (/[\\/]/.test(file)) return say(state, `It lies in another bench: putback ${quoted(file)}`);
  return {
    state: { ...state, waiting: { for: 'file', file, piece } },
    effects: [{ do: 'open', file }],
  };
}

function retype({ state, view }: OnFind, typed: FindView['field']): Updated {
  const text = fieldText(typed).trim();
  const before = fieldText(view.field).trim();
  const next = show(state, { ...view, field: typed, ...(text === '' ? { found: null } : {}) });
  return text === before || text === '' ? next : { ...next, effects: [{ do: 'find', text }] };
}

export const findScreen = screenOver({
  here: onFind,
  keys: [
    {
      id: 'open-found',
      presses: ENTER,
      label: 'go there',
      help: 'open the job of the marked line, at its piece',
      holds: ({ row }) => row !== null,
      does: openFound,
    },
  ],
  text: { field: ({ view }) => view.field, retype },
  // Letters are text here: no single one leaves the program. What was looked for is not worth keeping.
  draft: ({ state }) => state,
  draw: drawFind,
  rows: ({ view, rows, row }) => ({
    names: rows.map(nameOf),
    marked: row === null ? null : nameOf(row),
    mark: (here) => ({ ...view, here }),
  }),
});

const PROMPT = '> ';

function drawFind({ state, view, rows, row }: OnFind): Page {
  const typed = drawField(view.field, state.columns - PROMPT.length);
  const prompt = line(PROMPT, typed.line);
  return {
    kind: 'list',
    left: line(bold('Find')),
    right: line(countSaid(view)),
    above: [prompt, []],
    cursor: { line: prompt, column: PROMPT.length + typed.column },
    say: view.unread.slice(0, 3).map((text) => cutTo(line(`Not read: ${text}`), state.columns)),
    middle: (columns) => rows.flatMap((r, i) => rowLines(r, i, r === row, columns)),
  };
}

function countSaid({ field: typed, found, reading }: FindView): string {
  if (reading && reading.done < reading.of)
    return `reading ${reading.done} of ${many(reading.of, 'job')}`;
  if (found === null) return 'in all jobs of this bench';
  const text = fieldText(typed);
  if (found.length === 0 && text.trim() !== '' && askedOf([text]).length === 0)
    return 'a sign alone is not looked for';
  if (found.length === 0) return 'nothing found';
  return found.length > MOST
    ? `${many(found.length, 'line')}, the best ${MOST}`
    : many(found.length, 'line');
}

/** Where it stands, and the line itself. */
function rowLines(held: Held, i: number, marked: boolean, columns: number): ListLine[] {
  const { job, machine, piece, day } = held;
  const about = [job, machine?.split(',')[0], piece, day].filter((t) => t != null && t !== '');
  const head: Line = cutTo(
    line(span(marked ? '> ' : '  ', { bold: true }), span(about.join(', '), { bold: marked })),
    columns,
  );
  const said = `${held.undone ? 'taken back: ' : ''}${held.said ?? saidOf(held)}`;
  // The marked one says all of it.
  const text = marked
    ? hanging(line('    '), said, columns)
    : [cutTo(line(`    ${said}`), columns)];
  return listLines([head, ...text], i, marked);
}

/** Which page is to be made, from what is open: it is written beside the job, and where it lies is said. */
import type { Job } from '../../model/types.ts';
import type { PaperName } from '../../paper/ask.ts';
import type { Key } from '../base/key.ts';
import { type OnJob, onJob, show, stay } from '../base/moves.ts';
import { listLines, type Page } from '../base/page.ts';
import { screenOver } from '../base/screen.ts';
import type { State, Updated, View } from '../base/state.ts';
import { bold, line, pad, span, wrap } from '../kit/text.ts';

type PaperView = Extract<View, { screen: 'paper' }>;

interface Row {
  name: PaperName;
  say: string;
}

interface OnPaper extends OnJob<PaperView> {
  rows: readonly Row[];
  marked: Row;
}

const LABELS: Row = { name: 'labels', say: 'labels for the bags of what is off' };
const OTHERS: readonly Row[] = [
  { name: 'tag', say: 'to hang on the machine: do not start, and why' },
  { name: 'steps', say: 'the way up, for the wall' },
  { name: 'sheet', say: 'for a second opinion, without names, places and prices' },
  { name: 'report', say: 'for the owner: what was found, done, measured' },
];

function rowsFor(job: Job, key: string | null): [Row, ...Row[]] {
  const piece = key === null ? undefined : job.pieces.get(key);
  const card: Row[] =
    piece && piece.holes.length > 0
      ? [{ name: 'card', say: `${piece.spec.name}: to poke its bolts through` }]
      : [];
  return [...card, LABELS, ...OTHERS] as [Row, ...Row[]];
}

function onPaper(state: State, view: PaperView): OnPaper | null {
  const here = onJob(state, view);
  if (!here) return null;
  const rows = rowsFor(here.job, view.piece);
  return { ...here, rows, marked: rows.find((r) => r.name === view.here) ?? rows[0] };
}

/** Leads here from the job; `marked` is the piece that the card is of. */
export const paperKey: Key<{ state: State; marked: string | null; job: Job }> = {
  id: 'paper',
  presses: ['p'],
  label: '',
  help: 'a page to print: card, labels, tag, the way up, sheet, report',
  does: ({ state, marked, job }) => {
    const piece = marked !== null && job.pieces.has(marked) ? marked : null;
    return show(state, { screen: 'paper', piece, here: null, under: state.view });
  },
};

function print({ state, view, marked }: OnPaper, { open }: { open: boolean }): Updated {
  if (!state.open) return stay(state);
  const { file } = state.open;
  const piece = marked.name === 'card' ? view.piece : null;
  return {
    state: { ...state, view: view.under },
    effects: [{ do: 'print', file, paper: marked.name, piece, open }],
  };
}

export const paperScreen = screenOver({
  here: onPaper,
  keys: [
    {
      id: 'print',
      presses: ['enter'],
      label: 'make it',
      help: 'make the marked page beside the job, and say where it lies',
      does: (here) => print(here, { open: false }),
    },
    {
      id: 'print-open',
      presses: ['o'],
      label: 'and open it',
      help: 'make the marked page, and open it as the desktop opens such files',
      does: (here) => print(here, { open: true }),
    },
  ],
  draw: drawPaper,
  rows: ({ view, rows, marked }) => ({
    names: rows.map((r) => r.name),
    marked: marked.name,
    mark: (here) => ({ ...view, here }),
  }),
});

const NAME = 9;

function drawPaper({ job, rows, marked }: OnPaper): Page {
  return {
    kind: 'list',
    left: line(bold('Paper')),
    under: line(job.upper.job),
    middle: (columns) =>
      rows.flatMap((row, i) => {
        const here = row === marked;
        const [first = [], ...more] = wrap(row.say, Math.max(10, columns - NAME - 2));
        const head = [
          span(here ? '> ' : '  ', { bold: true }),
          ...pad(line(here ? bold(row.name) : row.name), NAME),
          ...first,
        ];
        const lines = [head, ...more.map((l) => [span(' '.repeat(NAME + 2)), ...l])];
        return listLines(lines, i, here);
      }),
  };
}

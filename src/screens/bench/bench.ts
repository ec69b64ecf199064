/** The bench: its jobs, where each stands, and what is next or in the way. */
import { kept } from '../../model/kept.ts';
import { ask } from '../ask/field.ts';
import { GO } from '../base/key.ts';
import { say, show, stay } from '../base/moves.ts';
import { type ListLine, listLines, type Page } from '../base/page.ts';
import { screen } from '../base/screen.ts';
import type { BenchRow, State, View } from '../base/state.ts';
import { dueKey } from '../due/due-key.ts';
import { findKey } from '../find/find.ts';
import { bold, cutTo, type Line, line, pad, span, width } from '../kit/text.ts';
import { many } from '../kit/words.ts';

interface OnBench {
  state: State;
  view: Extract<View, { screen: 'bench' }>;
  folder: string;
  /** Those that are shown. */
  jobs: readonly BenchRow[];
  /** So many are folded away, and so many not read yet. */
  older: number;
  more: number;
  /** The marked one. */
  job: BenchRow | null;
}

function onBench(state: State, view: OnBench['view']): OnBench | null {
  if (!state.bench) return null;
  const all = state.bench.jobs ?? [];
  const jobs = view.older ? all : freshOf(all);
  const older = all.length - jobs.length;
  const more = state.bench.more ?? 0;
  const job = jobs.find((j) => j.file === view.here) ?? jobs[0] ?? null;
  return { state, view, folder: state.bench.folder, jobs, older, more, job };
}

let last: { all: readonly BenchRow[]; fresh: readonly BenchRow[] } | null = null;

/** Without what has been done for a year; a bench of that alone is shown whole. */
function freshOf(all: readonly BenchRow[]): readonly BenchRow[] {
  if (last?.all === all) return last.fresh;
  const some = all.filter((row) => !row.old);
  const fresh = some.length === 0 || some.length === all.length ? all : some;
  last = { all, fresh };
  return fresh;
}

export const benchScreen = screen({
  here: onBench,
  keys: [
    {
      id: 'open',
      presses: GO,
      label: 'open',
      help: 'open the marked job',
      holds: ({ job }) => job !== null,
      does: ({ state, job }) => {
        if (!job) return stay(state);
        const { file } = job;
        return {
          state: { ...state, waiting: { for: 'file', file } },
          effects: [{ do: 'open', file }],
        };
      },
    },
    findKey,
    dueKey,
    {
      id: 'older',
      presses: ['o'],
      label: ({ older, view }) => (view.older ? 'hide older jobs' : older > 0 ? 'older jobs' : ''),
      help: 'jobs that have been done for a year, or without them again',
      holds: ({ older, view }) => older > 0 || view.older === true,
      does: ({ state, view }) => {
        const { older: shown, ...rest } = view;
        return show(state, shown ? rest : { ...rest, older: true });
      },
    },
    {
      id: 'new-job',
      presses: ['+', '='],
      label: ({ state }) =>
        state.bench?.begun === undefined ? 'a new job' : 'on with the new job',
      help: 'start a job: what is wrong, and with what machine',
      does: ({ state }) => ask(state, { ask: 'job', say: null }),
    },
  ],
  draw: drawBench,
  rows: ({ view, jobs, job }) => ({
    names: jobs.map((j) => j.file),
    marked: job?.file ?? null,
    mark: (here) => ({ ...view, here }),
  }),
  called: { quit: 'leave' },
  back: (state) => say(state, 'This is the bench. Every mark is on disk.'),
});

/** Before the first answer. */
export const waitScreen = screen({
  here: (state: State, _: Extract<View, { screen: 'wait' }>) => ({ state }),
  keys: [],
  draw: () => ({ kind: 'plain', left: line('putback'), middle: () => [] }),
  back: (state) => stay(state),
});

function drawBench({ folder, jobs, older, more, job }: OnBench): Page {
  const counts = [
    many(jobs.length, 'job'),
    ...(older > 0 ? [`${older} older`] : []),
    ...(more > 0 ? [`${more} to be read`] : []),
  ];
  const around = { left: line(bold(nameOfFolder(folder))), right: line(counts.join(', ')) };
  if (jobs.length === 0 && more === 0) {
    const none = line('No job file here yet. + starts one.');
    return { kind: 'plain', ...around, middle: () => [[], none] };
  }
  return {
    kind: 'list',
    ...around,
    middle: (columns) => jobs.flatMap((j, i) => linesOf(j, i, j === job, columns)),
  };
}

const LOUD = { colour: 'red', bold: true } as const;
const MARK = 2;
const GAP = 2;

/** Rows that are not marked are kept as they were drawn last: a bench of ten thousand is drawn at each key. */
function linesOf(job: BenchRow, row: number, marked: boolean, columns: number): ListLine[] {
  const draw = () => listLines(rowOf(job, marked, columns), row, marked);
  return marked ? draw() : kept(job, 'drawn', draw, `${columns} ${row}`);
}

/** What it is and where it stands; what may not be forgotten; what is next; a blank. */
function rowOf(row: BenchRow, marked: boolean, columns: number): Line[] {
  const mark = line(span(marked ? '> ' : '  ', { bold: true }));
  const stands = line(row.stands);
  const room = columns - MARK - width(stands) - GAP;
  const name = Math.max(12, Math.floor(room * 0.55));
  const job = pad(line(marked ? bold(row.job) : row.job), name);
  const machine = pad(line(row.machine.split(',')[0] ?? ''), room - name - GAP);
  return [
    [...mark, ...job, ...line('  '), ...machine, ...line('  '), ...stands],
    ...(row.loud === '' ? [] : [line('    ', span(`! ${row.loud}`, LOUD))]),
    [...line('    '), ...cutTo(line(row.next), columns - 4)],
    [],
  ];
}

function nameOfFolder(folder: string): string {
  const name = folder.split(/[\\/]/).findLast((part) => part !== '' && part !== '.');
  return name ?? 'Bench';
}

/** The bench: its jobs, where each stands, and what is next or in the way. */
import { ask } from '../ask/field.ts';
import { GO } from '../base/key.ts';
import { say, stay } from '../base/moves.ts';
import { listLines, type Page } from '../base/page.ts';
import { screen } from '../base/screen.ts';
import type { BenchRow, State, View } from '../base/state.ts';
import { bold, cutTo, type Line, line, pad, span, width } from '../kit/text.ts';
import { many } from '../kit/words.ts';

interface OnBench {
  state: State;
  view: Extract<View, { screen: 'bench' }>;
  folder: string;
  jobs: readonly BenchRow[];
  /** The marked one. */
  job: BenchRow | null;
}

function onBench(state: State, view: OnBench['view']): OnBench | null {
  if (!state.bench) return null;
  const jobs = state.bench.jobs ?? [];
  const job = jobs.find((j) => j.file === view.here) ?? jobs[0] ?? null;
  return { state, view, folder: state.bench.folder, jobs, job };
}

export const benchScreen = screen({
  here: onBench,
  keys: [
    {
      id: 'open',
      presses: GO,
      label: 'open',
      help: 'open the marked job',
      does: ({ state, job }) => {
        if (!job) return stay(state);
        const { file } = job;
        return {
          state: { ...state, waiting: { for: 'file', file } },
          effects: [{ do: 'open', file }],
        };
      },
    },
    {
      id: 'new-job',
      presses: ['+', '='],
      label: 'a new job',
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

function drawBench({ folder, jobs, job }: OnBench): Page {
  const around = { left: line(bold(nameOfFolder(folder))), right: line(many(jobs.length, 'job')) };
  if (jobs.length === 0) {
    const none = line('No job file here yet. + starts one.');
    return { kind: 'plain', ...around, middle: () => [[], none] };
  }
  return {
    kind: 'list',
    ...around,
    middle: (columns) =>
      jobs.flatMap((j, i) => listLines(rowOf(j, j === job, columns), i, j === job)),
  };
}

const LOUD = { colour: 'red', bold: true } as const;
const MARK = 2;
const GAP = 2;

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

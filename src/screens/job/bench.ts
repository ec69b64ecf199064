/** The bench: its jobs, where each stands, and what is next or in the way. */
import type { Acts } from '../base/act.ts';
import { stay } from '../base/moves.ts';
import type { Page } from '../base/page.ts';
import type { BenchRow, State } from '../base/state.ts';
import { around } from '../kit/scroll.ts';
import { bold, cut, type Line, line, pad, span, width } from '../kit/text.ts';
import { many } from '../kit/words.ts';

export const benchActs = {
  open: (state) => {
    const { view } = state;
    const file = view.screen === 'bench' ? hereOn(state) : null;
    if (file === null) return stay(state);
    return {
      state: { ...state, waiting: { for: 'file', file } },
      effects: [{ do: 'open', file }],
    };
  },
} satisfies Acts;

function hereOn(state: State): string | null {
  const jobs = state.bench?.jobs ?? [];
  const here = state.view.screen === 'bench' ? state.view.here : null;
  return (jobs.find((j) => j.file === here) ?? jobs[0])?.file ?? null;
}

export function drawBench(state: State): Page {
  const jobs = state.bench?.jobs ?? [];
  const here = hereOn(state);
  return {
    left: line(bold(nameOfFolder(state.bench?.folder ?? ''))),
    right: line(many(jobs.length, 'job')),
    middle: (columns, rows) => {
      if (jobs.length === 0) {
        return [[], line('No job file here yet. putback new FILE starts one.')];
      }
      const blocks = jobs.map((j) => rowOf(j, j.file === here, columns));
      const marked = jobs.findIndex((j) => j.file === here);
      return around(blocks.flat(), blocks.slice(0, marked).flat().length, rows);
    },
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
    [...line('    '), ...cut(line(row.next), columns - 4)],
    [],
  ];
}

function nameOfFolder(folder: string): string {
  const name = folder.split(/[\\/]/).findLast((part) => part !== '' && part !== '.');
  return name ?? 'Bench';
}

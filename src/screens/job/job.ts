/** The job as a way down and up again: its pieces and tasks in their order, where each is, and what is next. */
import { printedOf } from '../../job/truth/corrections.ts';
import type { Job, PieceNow, TaskNow } from '../../model/types.ts';
import { ask } from '../ask/field.ts';
import type { Acts } from '../base/act.ts';
import { enterPiece } from '../base/enter.ts';
import { markedRung } from '../base/marked.ts';
import { show, stay } from '../base/moves.ts';
import { middleRows, type Page } from '../base/page.ts';
import type { State, Updated } from '../base/state.ts';
import { neighbour } from '../kit/neighbour.ts';
import { around } from '../kit/scroll.ts';
import { bold, cut, type Line, line, pad, type Span, span, width, wrap } from '../kit/text.ts';
import { wrapStruck } from '../now/corrections-said.ts';
import { troubles } from '../now/job-now.ts';
import { ladder, type Rung } from '../now/ladder.ts';
import { taskOf } from '../now/ladder-names.ts';
import { nextNow } from '../now/next-now.ts';
import { sayTrouble, sayWhere } from '../now/say-piece.ts';
import { curesSaid } from '../now/sealant.ts';
import { taskHere } from '../now/task-now.ts';
import { waitsSaid } from '../now/waits-for.ts';
import { insideSaid } from '../piece/inside.ts';
import { openTask } from '../tasks/task.ts';

export const jobActs = {
  'open-piece': (state) => {
    const here = markedRung(state);
    if (here === null) return stay(state);
    const task = taskOf(here);
    const marked: State = { ...state, view: { screen: 'job', here } };
    return task === null ? enterPiece(state, here) : openTask(marked, task);
  },
  where: (state) => show(state, { screen: 'note', top: 0 }),
  add: (state) => ask(state, { ask: 'piece' }),
} satisfies Acts;

export function moveJob(state: State, by: number): Updated {
  const job = state.open?.job;
  if (!job) return stay(state);
  const names = ladder(job, state.now).map((r) => r.name);
  return show(state, { screen: 'job', here: neighbour(names, markedRung(state), by) });
}

export function drawJob(state: State): Page {
  const job = state.open?.job;
  if (!job) return { left: [], middle: () => [] };
  const rungs = ladder(job, state.now);
  const here = markedRung(state);
  const next = nextNow(job, state.now);
  const marked = rungs.findIndex((r) => r.name === here);
  return {
    left: line(bold(job.upper.job)),
    right: line(job.upper.machine ?? ''),
    // Where not all rows are in sight, how many there are.
    under: line(
      rungs.length > middleRows(state.rows) - ABOVE ? `${marked + 1} of ${rungs.length}` : '',
    ),
    middle: (columns, rows) => {
      if (rungs.length === 0) return [[], line('No piece is noted yet: taking one off writes it.')];
      const name = Math.min(Math.max(...rungs.map((r) => width(nameOf(r)))), columns * 0.45);
      const lines: { line: Line; name: string | null }[] = [];
      for (const [i, rung] of rungs.entries()) {
        if (rung.up && !rungs[i - 1]?.up) {
          lines.push({ line: [], name: null }, { line: line('  and on the way up'), name: null });
        }
        const drawn = rowOf(job, rung, rung.name === here, Math.floor(name), columns, state.now);
        lines.push({ line: drawn, name: rung.name });
      }
      const at = lines.findIndex((l) => l.name === here);
      return [
        [],
        ...around(
          lines.map((l) => l.line),
          at,
          rows - 1,
        ),
      ];
    },
    say: [
      ...wrap(insideSaid(job) ?? '', state.columns, LOUD),
      ...curesSaid(job, state.now).flatMap((text) => wrap(text, state.columns)),
      ...wrapStruck(job, next ? `Next: ${next.say}` : '', state.columns, { bold: true }),
    ],
  };
}

/** Mark before a name, gap behind it. */
const MARGINS = 5;
/** Lines that are no rows: a blank, and what stands before the way up. */
const ABOVE = 3;
const LOUD = { colour: 'red', bold: true } as const;
/** Deeper than this nothing is moved in any further. */
const DEEPEST = 5;

/** Moved in by what lies over it. */
function nameOf({ piece, task, depth }: Rung): string {
  const indent = '  '.repeat(Math.min(depth, DEEPEST));
  return `${indent}${piece?.spec.name ?? task?.spec.say ?? ''}`;
}

/** A longer name takes what room its own row leaves. */
function rowOf(job: Job, rung: Rung, marked: boolean, name: number, columns: number, now: string) {
  const text = nameOf(rung);
  const told = rung.piece
    ? sayPiece(job, rung.piece)
    : rung.task
      ? sayTask(job, rung.task, now)
      : [];
  const room = Math.max(name, columns - MARGINS - width(told));
  return line(
    span(marked ? '> ' : '  ', { bold: true }),
    pad(
      cut(line(marked ? bold(text) : text), room),
      Math.max(name, Math.min(room, width(text))) + 3,
    ),
    ...told,
  );
}

function sayPiece(job: Job, piece: PieceNow): Span[] {
  const bad = troubles(piece).map((h) => `${h.name} ${h.trouble ? sayTrouble(h.trouble) : ''}`);
  const shout = bad.length > 0 ? [span('   '), span(`! ${bad.join(', ')}`, LOUD)] : [];
  return [span(sayWhere(piece, job)), ...shout];
}

function sayTask(job: Job, { spec }: TaskNow, now: string): Span[] {
  const task = taskHere(job, spec.key, now);
  if (!task) return [];
  const told = task.told === '' ? '' : `: ${task.told}`;
  if (task.state === 'failed') return [span(`failed${told}`, LOUD)];
  if (task.state === 'done') return [span(`done${told}`)];
  if (task.waits !== '') return [span(waitsSaid(task.waits))];
  const printed =
    task.limit !== null && printedOf(job, { task: spec.key }, 'limit', task.limit) !== null;
  const limit = task.limit === null ? '' : ` (${task.limit}${printed ? ', not as printed' : ''})`;
  return [span(`${TO[spec.verb]}${limit}`, { bold: true })];
}

const TO: Readonly<Record<TaskNow['spec']['verb'], string>> = {
  do: 'to do',
  wait: 'runs',
  adjust: 'to adjust',
  test: 'to test',
  decide: 'to decide',
};

/** The job, drawn: a row for each piece and task, and what is next. */

import { otherFigure, otherFigureSaid } from '../../job/fold/other-figure.ts';
import { sayTrouble } from '../../job/fold/say-hole.ts';
import { unreadSaid } from '../../job/fold/unread.ts';
import type { Job, PieceNow, TaskNow } from '../../model/types.ts';
import { wheelsOff } from '../../plan/care/still-off.ts';
import type { Rung } from '../../plan/ladder.ts';
import { nextNow } from '../../plan/next/next-now.ts';
import { waitsSaid } from '../../plan/next/waits-for.ts';
import { troubles } from '../../plan/order/job-now.ts';
import { isBack } from '../../plan/order/needed.ts';
import { sayWhere } from '../../plan/piece/say-piece.ts';
import { torqueUnknown } from '../../plan/piece/torque-unknown.ts';
import { curesSaid } from '../../plan/seal/sealant.ts';
import { taskHere } from '../../plan/task/task-now.ts';
import type { OnJob } from '../base/moves.ts';
import { insideSaid } from '../base/noted.ts';
import { type ListLine, listLines, middleRows, type Page } from '../base/page.ts';
import type { View } from '../base/state.ts';
import { wrapStruck } from '../base/struck.ts';
import { bold, cutTo, type Line, line, pad, type Span, span, width, wrap } from '../kit/text.ts';
import { quietLast } from '../last/last-key.ts';

export type JobView = Extract<View, { screen: 'job' }>;

export interface OnTheJob extends OnJob<JobView> {
  rungs: readonly Rung[];
  /** The name of the marked one. */
  marked: string | null;
}

export function drawJob({ state, job, rungs, marked }: OnTheJob): Page {
  const next = nextNow(job, state.now);
  const at = rungs.findIndex((r) => r.name === marked);
  const around = {
    left: line(bold(job.upper.job)),
    right: line(job.upper.machine ?? ''),
    // Where not all rows are in sight, how many there are.
    under: line(
      rungs.length > middleRows(state.rows) - ABOVE ? `${at + 1} of ${rungs.length}` : '',
    ),
    above: [[]],
    say: [
      ...wrap(unreadSaid(job) ?? '', state.columns, LOUD),
      ...wrap(insideSaid(job) ?? '', state.columns, LOUD),
      ...curesSaid(job, state.now).flatMap((text) => wrap(text, state.columns)),
      ...wrapStruck(next ? ['Next: ', ...next.words] : [], state.columns, { bold: true }),
      // Told where one begins; from the first mark of a sitting the key alone leads there.
      ...(state.mine.length === 0 ? quietLast(state) : []),
    ],
  };
  if (rungs.length === 0) {
    const none = line('No piece is noted yet: taking one off writes it.');
    return { kind: 'plain', ...around, middle: () => [none] };
  }
  return {
    kind: 'list',
    ...around,
    counted: true,
    middle: (columns) => {
      const longest = Math.max(...rungs.map((r) => width(nameOf(r))));
      const name = Math.floor(Math.min(longest, columns * 0.45));
      return rungs.flatMap((rung, i) => {
        const turns = i === rungs.findIndex((r) => r.up);
        const row = rowOf(job, rung, i === at, name, columns, state.now);
        return [
          ...(turns ? [between([]), between(line('  and on the way up'))] : []),
          ...listLines([row], i, i === at),
        ];
      });
    },
  };
}

const between = (what: Line): ListLine => ({ line: what, row: null, marked: false });

/** Mark before a name, gap behind it. */
const MARGINS = 5;
/** Lines that are no rows: a blank, and what stands before the way up. */
const ABOVE = 3;
const LOUD = { colour: 'red', bold: true } as const;
/** Rows that lie deeper are indented no further. */
const DEEPEST = 5;

/** Moved in by what lies over it. */
function nameOf({ piece, task, depth }: Rung): string {
  const indent = '  '.repeat(Math.min(depth, DEEPEST));
  return `${indent}${piece?.spec.name ?? task?.spec.say.text ?? ''}`;
}

/** A longer name may take the room that the rest of its row leaves. */
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
      cutTo(line(marked ? bold(text) : text), room),
      Math.max(name, Math.min(room, width(text))) + 3,
    ),
    ...told,
  );
}

function sayPiece(job: Job, piece: PieceNow): Span[] {
  const bad = troubles(piece).map((h) => `${h.name} ${h.trouble ? sayTrouble(h.trouble) : ''}`);
  const unknown = torqueUnknown(job, piece).length > 0 ? ['torque not known'] : [];
  const other = otherFigureSaid(otherFigure(job, piece));
  const early = isBack(piece) ? wheelsOff(job, piece).map((w) => `${w.spec.name} is off`) : [];
  const loud = [...bad, ...early, ...unknown, ...(other === null ? [] : [other])];
  const shout = loud.length > 0 ? [span('   '), span(`! ${loud.join(', ')}`, LOUD)] : [];
  return [span(sayWhere(piece, job)), ...shout];
}

function sayTask(job: Job, { spec }: TaskNow, now: string): Span[] {
  const task = taskHere(job, spec.key, now);
  if (!task) return [];
  const told = task.told === '' ? '' : `: ${task.told}`;
  if (task.state === 'failed') return [span(`failed${told}`, LOUD)];
  if (task.state === 'done') return [span(`done${told}`)];
  if (task.waits !== '') return [span(waitsSaid(task.waits))];
  const said = spec.limit;
  const limit = said ? ` (${said.text}${said.printed === null ? '' : ', not as printed'})` : '';
  return [span(`${TO[spec.verb]}${limit}`, { bold: true })];
}

const TO: Readonly<Record<TaskNow['spec']['verb'], string>> = {
  do: 'to do',
  wait: 'runs',
  adjust: 'to adjust',
  test: 'to test',
  decide: 'to decide',
};

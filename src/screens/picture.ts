/** The whole screen as lines of spans: pure, so that a picture can be looked at without a terminal. */
import { drawAnswer } from './answer.ts';
import { drawBench } from './bench.ts';
import { drawCount } from './count.ts';
import { drawDraw } from './draw.ts';
import { drawFaults, drawUnsaved } from './faults.ts';
import { drawAsked } from './field.ts';
import { drawGate } from './gate.ts';
import { drawKeys } from './help.ts';
import { drawJob } from './job.ts';
import { drawKnown } from './known-page.ts';
import { drawLook } from './look.ts';
import { drawNote } from './note.ts';
import { drawOff } from './off.ts';
import { drawOn } from './on.ts';
import { isTooSmall, LEAST, layPage, type Page, type Picture } from './page.ts';
import { paint } from './parts/paint.ts';
import { cut, line } from './parts/text.ts';
import { drawParts } from './parts-list.ts';
import { drawRead } from './read.ts';
import { drawRound } from './round.ts';
import { drawRow } from './row.ts';
import { drawSettle } from './settle.ts';
import type { State, Step, View } from './state.ts';
import { drawStop, drawSure } from './stop.ts';
import { drawTask } from './task.ts';
import { drawTests } from './tests-list.ts';
import { drawTight } from './tight.ts';
import { drawAdvice, drawTrouble } from './trouble.ts';
import { drawWithin } from './within.ts';

type Draw = (state: State) => Page;

const STEPS: Readonly<Record<Step['step'], Draw>> = {
  look: drawLook,
  read: drawRead,
  off: drawOff,
  'off-row': drawRow,
  'off-count': drawCount,
  settle: drawSettle,
  on: drawOn,
  tight: drawTight,
  trouble: drawTrouble,
  advice: drawAdvice,
  answer: drawAnswer,
  stop: drawStop,
  sure: drawSure,
};

const VIEWS: Readonly<Record<Exclude<View['screen'], 'piece'>, Draw>> = {
  wait: () => ({ left: line('putback'), middle: () => [] }),
  bench: drawBench,
  faults: drawFaults,
  unsaved: drawUnsaved,
  note: drawNote,
  gate: drawGate,
  job: drawJob,
  parts: drawParts,
  task: drawTask,
  tests: drawTests,
  round: drawRound,
  within: drawWithin,
  draw: drawDraw,
  known: drawKnown,
  field: drawAsked,
  keys: drawKeys,
};

export function picture(state: State): Picture {
  if (isTooSmall(state)) return tooSmall(state);
  const { view } = state;
  const draw = view.screen === 'piece' ? STEPS[view.step.step] : VIEWS[view.screen];
  return layPage(state, draw(state));
}

/** One line, and nothing that could be cut in a way that misleads. */
function tooSmall({ columns, rows }: State): Picture {
  const text = `${columns}x${rows}: too small, ${LEAST.columns}x${LEAST.rows} is enough`;
  const lines = Array.from({ length: Math.max(1, rows) }, (_, i) =>
    i === 0 ? cut(line(text), columns) : [],
  );
  return { lines, cursor: null };
}

/** The rows of the screen as a terminal takes them. */
export function rowsOf(state: State): string[] {
  return picture(state).lines.map((l) => paint(l, state));
}

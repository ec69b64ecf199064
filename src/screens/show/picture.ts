/** The whole screen as lines of spans: pure, so that a picture can be looked at without a terminal. */

import { drawAsked } from '../ask/field.ts';
import { isTooSmall, LEAST, type Page } from '../base/page.ts';
import type { State, Step, View } from '../base/state.ts';
import { drawDraw } from '../draw/draw.ts';
import { drawGate } from '../gate/gate.ts';
import { drawBench } from '../job/bench.ts';
import { drawJob } from '../job/job.ts';
import { drawNote } from '../job/note.ts';
import { drawWithin } from '../job/within.ts';
import { paint } from '../kit/paint.ts';
import { cut, line } from '../kit/text.ts';
import { drawKnown } from '../known/known-page.ts';
import { drawParts } from '../parts-list/parts-list.ts';
import { drawAnswer } from '../piece/answer.ts';
import { drawCount } from '../piece/count.ts';
import { drawLook } from '../piece/look.ts';
import { drawOff } from '../piece/off.ts';
import { drawOn } from '../piece/on.ts';
import { drawRead } from '../piece/read.ts';
import { drawRow } from '../piece/row.ts';
import { drawSettle } from '../piece/settle.ts';
import { drawStop, drawSure } from '../piece/stop.ts';
import { drawTight } from '../piece/tight.ts';
import { drawAdvice, drawTrouble } from '../piece/trouble.ts';
import { drawRound } from '../tasks/round.ts';
import { drawTask } from '../tasks/task.ts';
import { drawTests } from '../tasks/tests-list.ts';
import { drawFaults, drawUnsaved } from './faults.ts';
import { drawKeys } from './help.ts';
import { layPage, type Picture } from './lay.ts';

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

/** Refused: STOP for what would break something, a plain question for the rest. */
import { sayEntry } from '../../job/fold/say-entry.ts';
import type { Refusal } from '../../model/types.ts';
import { sayDate } from '../../plan/days.ts';
import { ask } from '../ask/field.ts';
import type { Acts } from '../base/act.ts';
import { ON } from '../base/enter.ts';
import { at, record, stay, stepOf, toStep } from '../base/moves.ts';
import type { Page } from '../base/page.ts';
import type { State, Step } from '../base/state.ts';
import { sentences, stopBox } from '../kit/box.ts';
import { bold, type Line, line, wrap } from '../kit/text.ts';

/** Breaks a casting, a thread, a bolt or what turns. Nothing else rings. */
const BREAKS: readonly string[] = ['wrong-bolt', 'still-in', 'inside', 'out-of-limit'];

export function breaks(refused: Refusal): boolean {
  return BREAKS.includes(refused.code);
}

export const stopActs = {
  drop: (state) => {
    const step = stepOf(state, 'stop') ?? stepOf(state, 'sure');
    return step ? toStep(state, emptied(step)) : stay(state);
  },
  force: (state) => {
    const step = stepOf(state, 'stop');
    return step ? ask(state, { ask: 'why', wish: step.wish, refused: step.refused }) : stay(state);
  },
  yes: (state) => {
    const step = stepOf(state, 'sure');
    if (!step) return stay(state);
    return record(toStep(state, step.back).state, { do: 'undo', id: step.id });
  },
} satisfies Acts;

/** Another bolt: the hand is empty again. */
function emptied(step: Extract<Step, { step: 'stop' | 'sure' }>): Step {
  const { back } = step;
  if (step.step === 'stop' && step.refused.code === 'wrong-bolt' && back.step === 'on') {
    return ON;
  }
  return back;
}

export function drawStop(state: State): Page {
  const here = at(state);
  const step = stepOf(state, 'stop');
  if (!here || !step) return { left: [], middle: () => [] };
  const said = sentences(step.refused.say);
  return {
    left: line(bold(here.piece.spec.name)),
    middle: (columns) =>
      breaks(step.refused)
        ? [[], ...stopBox(said, columns)]
        : [[], ...said.flatMap((s, i) => wrap(s, columns, i === 0 ? { bold: true } : {}))],
  };
}

export function drawSure(state: State): Page {
  const here = at(state);
  const step = stepOf(state, 'sure');
  const entry = here?.job.entries.find((e) => e.id === step?.id);
  if (!here || !entry) return { left: [], middle: () => [] };
  const lines: Line[] = [
    [],
    line(bold('Take back a mark of an earlier day?')),
    [],
    ...wrap(`${sayDate(entry.at, state.now)}: ${sayEntry(entry, here.job)}.`, state.columns),
  ];
  return { left: line(bold(here.piece.spec.name)), middle: () => lines };
}

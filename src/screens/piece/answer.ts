/** What is left in the tray, or how high the heads stand: asked for, and what it says of the holes. */

import { ask } from '../ask/field.ts';
import type { Acts } from '../base/act.ts';
import { at, stay, stepOf } from '../base/moves.ts';
import type { Page } from '../base/page.ts';
import { piecePage } from '../base/piece-page.ts';
import type { State, Updated } from '../base/state.ts';
import { scrolled } from '../kit/scroll.ts';
import { type Line, line, wrap } from '../kit/text.ts';
import { sayItem } from '../kit/words.ts';
import type { About } from '../now/answers.ts';
import { answerTo } from '../now/answers.ts';

function asked(state: State, about: About, text = ''): Updated {
  const here = at(state);
  return here ? ask(state, { ask: about, piece: here.key, say: null }, text) : stay(state);
}

export const answerActs = {
  left: (state) => asked(state, 'left'),
  heights: (state) => asked(state, 'heights'),
  correct: (state) => {
    const step = stepOf(state, 'answer');
    const { view } = state;
    if (!step || view.screen !== 'piece') return stay(state);
    // The question stands over the screen that it was asked on, not over its answer.
    return asked({ ...state, view: { ...view, step: step.back } }, step.about, step.text);
  },
} satisfies Acts;

const ABOUT: Readonly<Record<About, string>> = {
  left: 'what is left over',
  heights: 'heights of the heads',
};
/** Lines of an answer in sight, the rest by going down. */
const LINES = 6;
const HIGH_LINES = 9;
const HIGH = 30;

export function drawAnswer(state: State): Page {
  const here = at(state);
  const step = stepOf(state, 'answer');
  const found = here && step ? answerTo(here.job, here.piece, step.about, step.text) : null;
  if (!here || !step || !found || 'fault' in found) return { left: [], middle: () => [] };
  const { says, look, labels } = found;
  const lines = says.flatMap((text, i): Line[] =>
    wrap(text, state.columns, i === 0 ? { bold: true } : {}),
  );
  const most = state.rows < HIGH ? LINES : HIGH_LINES;
  return piecePage(
    here.piece,
    (h) => ({
      lit: look.has(h.name),
      label: labels.get(h.name) ?? (h.belongs ? sayItem(h.belongs) : ''),
      short: labels.get(h.name) ?? h.belongs?.kind ?? '',
    }),
    {
      right: line(ABOUT[step.about]),
      under: line(
        step.about === 'left' ? `left: ${step.text === '' ? 'nothing' : step.text}` : 'mm',
      ),
      say: scrolled(lines, step.top, most),
      most,
    },
  );
}

/** What is left in the tray, or how high the heads stand: what it says of the holes. */

import { type AnswerKind, type AnswerNow, answerTo } from '../../plan/piece/answers.ts';
import { atStep, requestMark, say, toStep } from '../base/moves.ts';
import type { Page } from '../base/page.ts';
import { piecePage } from '../base/piece-page.ts';
import type { State, Updated } from '../base/state.ts';
import { type Line, line, wrap } from '../kit/text.ts';
import { sayItem } from '../kit/words.ts';
import { type OnPiece, onPiece, type StepView, stepScreen } from './step.ts';
import { askAbout } from './step-keys.ts';
import { goOnKey } from './trouble.ts';

interface OnAnswer extends OnPiece<'answer'> {
  answer: AnswerNow;
}

function onAnswer(state: State, view: StepView<'answer'>): OnAnswer | null {
  const here = onPiece(state, view);
  const found = here && answerTo(here.job, here.piece, here.step.about, here.step.text);
  return here && found && !('fault' in found) ? { ...here, answer: found } : null;
}

export const answerScreen = stepScreen({
  here: onAnswer,
  keys: [
    { ...goOnKey, does: ({ state, view }) => leave(state, view as StepView<'answer'>) },
    {
      id: 'note-over',
      presses: ['n'],
      label: 'note it',
      help: 'what is left over is put among the tasks: where it belongs is still to be found',
      holds: ({ answer }) => answer.over !== null,
      does: ({ state, piece, answer }) => {
        const text = findText(answer.over ?? '', piece.spec.name);
        return requestMark(state, { do: 'add', as: 'do', text });
      },
    },
    {
      id: 'correct',
      presses: ['r'],
      label: 'type it again',
      help: 'type it again, with what was typed',
      does: (here) => {
        const { state, view, step } = here;
        // The question stands over the screen that it was asked on, not over its answer.
        const below = { ...state, view: atStep(view, step.back) };
        return askAbout({ ...here, state: below }, step.about, step.text);
      },
    },
  ],
  draw: drawAnswer,
  back: leave,
});

/** What is left over and was only said is not noted: that is told. */
function leave(state: State, view: StepView<'answer'>): Updated {
  const under = toStep(state, view.step.back);
  const over = onAnswer(state, view)?.answer.over ?? null;
  if (over === null || isNoted(state, view)) return under;
  return say(under.state, `Left over, not noted: ${over}. l, then n puts it among the tasks.`);
}

const findText = (over: string, piece: string): string =>
  `Find where ${over} belongs, left over at ${piece}`;

function isNoted(state: State, view: StepView<'answer'>): boolean {
  const here = onAnswer(state, view);
  if (!here || here.answer.over === null) return false;
  const text = findText(here.answer.over, here.piece.spec.name);
  return [...here.job.upper.tasks.values()].some((task) => task.say.text === text);
}

const ABOUT: Readonly<Record<AnswerKind, string>> = {
  left: 'what is left over',
  heights: 'heights of the heads',
};
/** Lines of an answer in sight; Down shows the rest. */
const LINES = 6;
const HIGH_LINES = 9;
const HIGH = 30;

function drawAnswer(here: OnAnswer): Page {
  const {
    state,
    step,
    answer: { says, look, labels },
  } = here;
  return piecePage(
    here,
    (h) => ({
      lit: look.has(h.name),
      litSaid: 'to be looked at',
      label: labels.get(h.name) ?? (h.belongs ? sayItem(h.belongs) : ''),
      short: labels.get(h.name) ?? h.belongs?.kind ?? '',
    }),
    {
      right: line(ABOUT[step.about]),
      under: line(
        step.about === 'left' ? `left: ${step.text === '' ? 'nothing' : step.text}` : 'mm',
      ),
      say: says.flatMap((text, i): Line[] =>
        wrap(text, state.columns, i === 0 ? { bold: true } : {}),
      ),
      most: state.rows < HIGH ? LINES : HIGH_LINES,
      kind: 'page',
    },
  );
}

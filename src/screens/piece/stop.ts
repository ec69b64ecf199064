/** Refused: STOP for what would break something, a plain question for the rest. */
import { sayEntry } from '../../job/fold/say-entry.ts';
import type { Entry } from '../../model/types.ts';
import { sayDate } from '../../plan/time/days.ts';
import { ask } from '../ask/field.ts';
import { noteKey } from '../ask/note.ts';
import { ON } from '../base/enter.ts';
import type { Key } from '../base/key.ts';
import { requestMark, toStep } from '../base/moves.ts';
import type { Page } from '../base/page.ts';
import type { PieceStep, State } from '../base/state.ts';
import { sentences, stopBox } from '../kit/box.ts';
import { bold, line, wrap } from '../kit/text.ts';
import { breaks } from './after.ts';
import { type OnPiece, onPiece, type StepView, stepScreen } from './step.ts';

type OnStop = OnPiece<'stop'>;

/** Nothing is written. */
const dropKey: Key<OnPiece<'stop' | 'sure'>> = {
  id: 'drop',
  presses: ['backspace'],
  label: ({ step }) =>
    step.step === 'stop' && step.refused.code === 'wrong-bolt' ? 'another bolt' : 'leave it',
  help: 'leave it: nothing is written',
  does: ({ state, step }) => toStep(state, emptied(step)),
};

/** Another bolt: the hand is empty again. */
function emptied(step: Extract<PieceStep, { step: 'stop' | 'sure' }>): PieceStep {
  const { back } = step;
  const other = step.step === 'stop' && step.refused.code === 'wrong-bolt' && back.step === 'on';
  return other ? ON : back;
}

export const stopScreen = stepScreen({
  here: onPiece<'stop'>,
  keys: [
    dropKey,
    {
      id: 'force',
      presses: ['w'],
      alone: true,
      label: 'all the same, and why',
      help: 'overrule this, with a reason that is written down',
      holds: ({ step }) => step.refused.overrulable,
      does: ({ state, step }) => ask(state, { ask: 'why', wish: step.wish, refused: step.refused }),
    },
    {
      ...noteKey,
      label: '',
      // On the hole that it is about.
      does: ({ state, key, step: { wish } }) => {
        const [hole = null, ...more] = 'holes' in wish ? (wish.holes ?? []) : [];
        return ask(state, { ask: 'note', piece: key, hole: more.length > 0 ? null : hole });
      },
    },
  ],
  draw: drawStop,
});

function drawStop({ job, piece, step: { refused } }: OnStop): Page {
  const said = sentences(refused.say);
  return {
    kind: 'plain',
    left: line(bold(piece.spec.name)),
    middle: (columns) =>
      breaks(refused, job)
        ? [[], ...stopBox(said, columns)]
        : [[], ...said.flatMap((s, i) => wrap(s, columns, i === 0 ? { bold: true } : {}))],
  };
}

// ---------------------------------------------------------------- a mark of an earlier day

interface OnSure extends OnPiece<'sure'> {
  entry: Entry;
}

function onSure(state: State, view: StepView<'sure'>): OnSure | null {
  const here = onPiece(state, view);
  const entry = here?.job.entries.find((e) => e.id === here.step.id);
  return here && entry ? { ...here, entry } : null;
}

export const sureScreen = stepScreen({
  here: onSure,
  keys: [
    {
      id: 'yes',
      presses: ['t'],
      label: 'take it back',
      help: 'take back that earlier mark',
      does: ({ state, step }) =>
        requestMark(toStep(state, step.back).state, { do: 'undo', id: step.id }),
    },
    dropKey,
  ],
  draw: drawSure,
});

function drawSure({ state, job, piece, entry }: OnSure): Page {
  const isToday = entry.at.slice(0, 10) === state.now.slice(0, 10);
  return {
    kind: 'plain',
    left: line(bold(piece.spec.name)),
    middle: (columns) => [
      [],
      line(bold(`Take back a mark of an earlier ${isToday ? 'sitting' : 'day'}?`)),
      [],
      ...wrap(`${sayDate(entry.at, state.now)}: ${sayEntry(entry, job)}.`, columns),
    ],
  };
}

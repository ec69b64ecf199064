/** What is wrong with a hole or its bolt: a choice; and what to do now. */
import { sayTrouble } from '../../job/fold/say-hole.ts';
import type { Job, PieceNow, Trouble } from '../../model/types.ts';
import { passesOf } from '../../piece/passes.ts';
import { adviceOf, waysOut } from '../../plan/care/trouble-advice.ts';
import { ENTER, GO, type Key } from '../base/key.ts';
import { atStep, holeNamed, requestMark, say, stay, toStep } from '../base/moves.ts';
import { listLines, type Page } from '../base/page.ts';
import type { PieceStep, State, Updated } from '../base/state.ts';
import { stopBox } from '../kit/box.ts';
import { keyName } from '../kit/press.ts';
import { bold, hanging, line, span, wrap } from '../kit/text.ts';
import { type OnPiece, onPiece, type StepView, stepScreen } from './step.ts';
import { mend, mendedKey } from './step-keys.ts';
import { CHOICES } from './troubles.ts';
import { redoKey, undoKey } from './undo.ts';

type OnTrouble = OnPiece<'trouble'>;

function note({ state, key, step }: OnTrouble, trouble: Trouble | undefined): Updated {
  if (trouble === undefined) return stay(state);
  return requestMark(state, { do: 'state', piece: key, hole: step.hole, state: trouble });
}

/** What is noted of the hole already. */
function notedAt({ piece, step }: OnTrouble): Trouble | null {
  return holeNamed(piece, step.hole)?.trouble ?? null;
}

export const troubleScreen = stepScreen({
  here: onPiece<'trouble'>,
  keys: [
    {
      id: 'choose',
      presses: [],
      label: '',
      help: 'what is wrong, by its letter',
      shown: 'letters',
      takes: (_, press) => CHOICES.some((c) => c.letter === press),
      does: (here, press) => {
        const choice = CHOICES.findIndex((c) => c.letter === press);
        const trouble = CHOICES[choice]?.trouble;
        const now = notedAt(here);
        if (now === null || now === trouble) return note(here, trouble);
        // What is noted already does not go by a slip of the finger.
        const { state, step } = here;
        const marked = toStep(state, { ...step, choice }).state;
        return say(
          marked,
          `${step.hole}: ${sayTrouble(now)} is noted. Enter puts this in its place.`,
        );
      },
    },
    {
      id: 'note-it',
      presses: ENTER,
      anew: ENTER,
      label: 'note it',
      help: 'note the marked trouble',
      does: (here) => note(here, CHOICES[here.step.choice]?.trouble),
    },
    {
      id: 'advice',
      presses: ['h', '`'],
      label: 'what to do',
      help: 'what to do about the trouble of the lit hole, step by step',
      holds: (here) => notedAt(here) !== null,
      does: ({ state, step }) =>
        toStep(state, { step: 'advice', hole: step.hole, back: step.back }),
    },
  ],
  draw: drawTrouble,
  rows: ({ view, step }) => ({
    names: CHOICES.map((c) => c.letter),
    marked: CHOICES[step.choice]?.letter ?? null,
    mark: (letter) => {
      const choice = CHOICES.findIndex((c) => c.letter === letter);
      return atStep(view, { ...step, choice });
    },
  }),
});

function drawTrouble(here: OnTrouble): Page {
  const { piece, step } = here;
  const noted = notedAt(here);
  return {
    kind: 'list',
    left: line(bold(piece.spec.name)),
    right: line(`hole ${step.hole}`),
    above: [
      [],
      line(bold(`What is wrong with ${step.hole}?`)),
      noted === null ? [] : line(`Noted: ${sayTrouble(noted)}.`),
    ],
    middle: () =>
      CHOICES.flatMap((c, i) => {
        const marked = i === step.choice;
        const text = `${keyName(c.letter)}   ${c.say}`;
        const row = line(span(marked ? '> ' : '  ', { bold: true }), marked ? bold(text) : text);
        return listLines([row], i, marked);
      }),
  };
}

// ---------------------------------------------------------------- what to do now

interface OnAdvice extends OnPiece<'advice'> {
  trouble: Trouble;
}

function onAdvice(state: State, view: StepView<'advice'>): OnAdvice | null {
  const here = onPiece(state, view);
  const found = here && holeNamed(here.piece, here.step.hole)?.trouble;
  return here && found ? { ...here, trouble: found } : null;
}

/** What was said has been read. */
export const goOnKey: Key<OnPiece<'advice' | 'answer'>> = {
  id: 'go-on',
  presses: GO,
  label: 'go on',
  help: 'read: go on with the other bolts',
  does: ({ state, step, piece }) => {
    const { back } = step;
    const pulled = step.step === 'advice' && holeNamed(piece, step.hole)?.trouble === 'pulled';
    // The others are left as they are: one does not go on tightening.
    return toStep(state, pulled && back.step === 'tight' ? atHole(step.hole) : back);
  },
};

/** The way on from the page that says how a thread is mended: till its bolt is out one is led to that. */
const mendedHere: Key<OnAdvice> = {
  id: 'mended',
  presses: ['m', ';'],
  label: ({ piece, step }) =>
    holeNamed(piece, step.hole)?.state === 'out' ? 'it is mended' : 'mend it',
  help: mendedKey.help,
  holds: ({ trouble }) => trouble === 'pulled',
  does: (here) => {
    const hole = holeNamed(here.piece, here.step.hole);
    return hole === null ? stay(here.state) : mend(here, hole);
  },
};

function atHole(here: string): PieceStep {
  return { step: 'look', here, typed: '' };
}

export const adviceScreen = stepScreen({
  here: onAdvice,
  keys: [goOnKey, mendedHere, undoKey, redoKey],
  draw: drawAdvice,
});

/** A pulled thread has a list of its own, in the order in which it is mended; the rest is said in the box. */
function wayOut({ job, piece }: { job: Job; piece: PieceNow }, name: string, trouble: Trouble) {
  const hole = holeNamed(piece, name);
  if (trouble !== 'pulled' || !hole) return [];
  return waysOut(piece, hole, job.upper.kinds).map((step) => step.do);
}

/** Bolts beside it that were turned by angle would only have to come out again. */
function comesOffFirst(job: Job, piece: PieceNow): boolean {
  return passesOf(piece.spec, job.upper.kinds).some((pass) => pass.name.startsWith('angle'));
}

function drawAdvice({ job, piece, step, trouble: found }: OnAdvice): Page {
  return {
    kind: 'plain',
    left: line(bold(piece.spec.name)),
    right: line(`hole ${step.hole}`),
    middle: (columns) => [
      ...stopBox([`${step.hole}: ${sayTrouble(found)}.`, ...adviceOf(piece.spec, found)], columns),
      ...(found === 'pulled' && comesOffFirst(job, piece)
        ? [
            ...wrap(
              'It has to come off for the mend: leave the others as they are, and turn none by angle.',
              columns,
              { bold: true },
            ),
            [],
          ]
        : []),
      ...wayOut({ job, piece }, step.hole, found).flatMap((said) =>
        hanging(line('[ ] '), said, columns),
      ),
    ],
  };
}

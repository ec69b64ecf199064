/** What is wrong with a hole or its bolt: a choice; and what to do now. */
import { repair } from '../../bolt/repair.ts';
import { placeOf } from '../../job/fold/place.ts';
import type { Job, PieceNow, Trouble } from '../../model/types.ts';
import type { Acts } from '../base/act.ts';
import { litHole } from '../base/lit.ts';
import { at, hereOf, holeNamed, record, say, stay, stepOf, toStep } from '../base/moves.ts';
import type { Page } from '../base/page.ts';
import type { State, Updated } from '../base/state.ts';
import { CHOICES } from '../base/takes.ts';
import { stopBox } from '../kit/box.ts';
import { keyName } from '../kit/press.ts';
import { bold, hanging, type Line, line, span } from '../kit/text.ts';
import { sayTrouble } from '../now/say-piece.ts';

/** Offered first: while tightening it is the thread, on the way off it is the bolt. */
function likely(state: State): number {
  const wanted: Trouble = stepOf(state, 'tight') ? 'pulled' : 'stuck';
  return Math.max(
    0,
    CHOICES.findIndex((c) => c.trouble === wanted),
  );
}

function note(state: State, trouble: Trouble | undefined): Updated {
  const here = at(state);
  const step = stepOf(state, 'trouble');
  if (!here || !step || trouble === undefined) return stay(state);
  return record(state, { do: 'state', piece: here.key, hole: step.hole, state: trouble });
}

export const troubleActs = {
  trouble: (state) => {
    const here = at(state);
    const hole = here ? (litHole(here) ?? hereOf(here.view.step)) : null;
    if (!here || hole === null) return say(state, 'Which hole? Its number first.');
    return toStep(state, { step: 'trouble', hole, choice: likely(state), back: here.view.step });
  },
  choose: (state, press) => note(state, CHOICES.find((c) => c.letter === press)?.trouble),
  'note-it': (state) => note(state, CHOICES[stepOf(state, 'trouble')?.choice ?? 0]?.trouble),
  'go-on': (state) => {
    const step = stepOf(state, 'advice') ?? stepOf(state, 'answer');
    return step ? toStep(state, step.back) : stay(state);
  },
} satisfies Acts;

/** What to do now. Common practice, no source. */
export const ADVICE: Readonly<Record<Trouble, readonly string[]>> = {
  stuck: ['Leave it for now: penetrating oil, time, heat. Go on with the others.'],
  rounded: ['Leave it for now. A six-point socket that is driven on, or grips, before the drill.'],
  sheared: [
    'What is left holds nothing: the piece can come off over it, and the rest can be got out then.',
  ],
  stud: ['Keep stud and nut together. The stud goes back into its own hole first.'],
  pulled: [
    'Turn no further: it holds nothing, and more turns take the rest of the thread.',
    'Go on with the others. The piece is not tight until this hole is mended.',
  ],
  empty: ['Noted as found empty. Was it always so? The piece may have been apart before.'],
};

/** A pulled thread has a list of its own, in the order in which it is mended; the rest is said in the box. */
function wayOut({ job, piece }: { job: Job; piece: PieceNow }, name: string, trouble: Trouble) {
  const hole = holeNamed(piece, name);
  if (trouble !== 'pulled' || !hole) return [];
  const place = placeOf(piece, hole, job.upper.kinds);
  return repair({ place }).map((step) => step.do);
}

export function drawTrouble(state: State): Page {
  const here = at(state);
  const step = stepOf(state, 'trouble');
  if (!here || !step) return { left: [], middle: () => [] };
  const rows = CHOICES.map((c, i): Line => {
    const marked = i === step.choice;
    const text = `${keyName(c.letter)}   ${c.say}`;
    return line(span(marked ? '> ' : '  ', { bold: true }), marked ? bold(text) : text);
  });
  return {
    left: line(bold(here.piece.spec.name)),
    right: line(`hole ${step.hole}`),
    middle: () => [[], line(bold(`What is wrong with ${step.hole}?`)), [], ...rows],
  };
}

export function drawAdvice(state: State): Page {
  const here = at(state);
  const step = stepOf(state, 'advice');
  const trouble = holeNamed(here?.piece ?? null, step?.hole ?? null)?.trouble ?? null;
  if (!here || !step || trouble === null) return { left: [], middle: () => [] };
  return {
    left: line(bold(here.piece.spec.name)),
    right: line(`hole ${step.hole}`),
    middle: (columns) => [
      ...stopBox([`${step.hole}: ${sayTrouble(trouble)}.`, ...ADVICE[trouble]], columns),
      ...wayOut(here, step.hole, trouble).flatMap((said) => hanging(line('[ ] '), said, columns)),
    ],
  };
}

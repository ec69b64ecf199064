/** The wrong hole was marked: which of its marks goes, and what goes or stands with it. */
import { sayEntry } from '../../job/fold/say-entry.ts';
import type { Entry } from '../../model/types.ts';
import { marksOn, type Unmark, unmark } from '../../plan/piece/unmark.ts';
import { sayDate } from '../../plan/time/days.ts';
import { ENTER, type Key } from '../base/key.ts';
import { atStep, requestMark, say, stay, toStep } from '../base/moves.ts';
import { listLines, type Page } from '../base/page.ts';
import type { State, Updated } from '../base/state.ts';
import { bold, hanging, type Line, line, span, wrap } from '../kit/text.ts';
import { list } from '../kit/words.ts';
import { type OnHoles, type OnPiece, onPiece, type StepView, stepScreen } from './step.ts';

interface OnUnmark extends OnPiece<'unmark'> {
  marks: readonly Entry[];
  /** The marked one. */
  mark: Entry | null;
  takes: Unmark | null;
}

function onUnmark(state: State, view: StepView<'unmark'>): OnUnmark | null {
  const here = onPiece(state, view);
  if (!here) return null;
  const { job, piece, step } = here;
  const marks = marksOn(job, piece, step.hole);
  const mark = marks.find((e) => e.id === step.mark) ?? marks[0] ?? null;
  return { ...here, marks, mark, takes: mark && unmark(job, piece, step.hole, mark) };
}

/** A letter that is a kind of this job is in the hand first. */
export const unmarkKey: Key<OnHoles<'look' | 'off' | 'on' | 'tight'>> = {
  id: 'not-this-one',
  presses: ['u', '/'],
  label: ({ step }) => (step.here === null ? '' : 'not this one'),
  help: 'the wrong hole was marked: its mark goes, wherever it stands',
  does: ({ state, job, piece, step }) => {
    const hole = step.here;
    if (hole === null) return say(state, 'Which hole? Its number first.');
    const [first] = marksOn(job, piece, hole);
    if (!first) return say(state, `Nothing is marked on ${hole} in this round.`);
    return toStep(state, { step: 'unmark', hole, mark: first.id, rest: [], back: step });
  },
};

function takeBack({ state, step, takes }: OnUnmark): Updated {
  const [first, ...rest] = takes?.wishes ?? [];
  return first ? requestMark(toStep(state, { ...step, rest }).state, first) : stay(state);
}

export const unmarkScreen = stepScreen({
  here: onUnmark,
  keys: [
    {
      id: 'unmark',
      presses: ENTER,
      anew: ENTER,
      label: 'take it back',
      help: 'the marked one is taken back, with what rests on it',
      holds: ({ mark }) => mark !== null,
      does: takeBack,
    },
  ],
  draw: drawUnmark,
  rows: ({ view, step, marks, mark }) => ({
    names: marks.map((e) => e.id),
    marked: mark?.id ?? null,
    mark: (id) => atStep(view, { ...step, mark: id ?? step.mark }),
  }),
});

function drawUnmark({ state, job, piece, step, marks, mark, takes }: OnUnmark): Page {
  return {
    kind: 'list',
    left: line(bold(piece.spec.name)),
    right: line(`hole ${step.hole}`),
    above: [[], line(bold(`Not ${step.hole}: which mark is wrong?`)), []],
    middle: (columns) =>
      marks.flatMap((e, i) => {
        const here = e === mark;
        const first = line(
          span(here ? '> ' : '  ', { bold: true }),
          `${sayDate(e.at, state.now)}   `,
        );
        const row = hanging(first, sayEntry(e, job), columns, here ? { bold: true } : {});
        return listLines(row, i, here);
      }),
    say: takes ? goesSaid(takes, mark, (e) => sayEntry(e, job), state.columns) : [],
  };
}

function goesSaid(
  { gone, again }: Unmark,
  mark: Entry | null,
  told: (entry: Entry) => string,
  columns: number,
): Line[] {
  const with_ = gone.filter((e) => e !== mark).map(told);
  const stands = again.flatMap(({ entry, holes }) =>
    holes.length === 0
      ? []
      : [`${list(holes)} ${entry.verb === 'tight' ? entry.value : entry.verb}`],
  );
  return [
    ...wrap(with_.length === 0 ? '' : `With it goes: ${list(with_)}.`, columns, { bold: true }),
    ...wrap(stands.length === 0 ? '' : `Stands again: ${list(stands)}.`, columns),
  ];
}

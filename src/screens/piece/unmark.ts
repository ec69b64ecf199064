/** The wrong hole was marked: which of its marks goes, and what goes or stands with it. */
import { sayEntry } from '../../job/fold/say-entry.ts';
import type { Entry, Wish } from '../../model/types.ts';
import { marksOn, type Unmark, unmark } from '../../plan/piece/unmark.ts';
import { sayDate } from '../../plan/time/days.ts';
import { ENTER, type Key } from '../base/key.ts';
import { atStep, requestMark, say, stay, toStep } from '../base/moves.ts';
import { listLines, type Page } from '../base/page.ts';
import type { PieceStep, State, Updated } from '../base/state.ts';
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

type Pointing = OnHoles<'look' | 'off' | 'on' | 'tight'>;

/** The last mark on the hole that is pointed at, and what goes or stands with it; null where none is. */
function lastOn({ job, piece, step: { here } }: Pointing): { mark: Entry; takes: Unmark } | null {
  const mark = here === null ? undefined : marksOn(job, piece, here)[0];
  return here !== null && mark ? { mark, takes: unmark(job, piece, here, mark) } : null;
}

/** Before the key that takes it back: what rests on the mark of the hole that is pointed at. */
export function restsSaid(here: Pointing): Line[] {
  const { job, state, step } = here;
  // With a bolt in the hand the hole is pointed at to put it in.
  const inHand = 'hand' in step && step.hand !== '';
  const on = inHand ? null : lastOn(here);
  const last = on && staysTight(here, on) ? null : on;
  if (last && isMuch(last))
    return wrap(`Not ${step.here}: u names what goes with it.`, state.columns);
  const said = last ? goesSaid(last.takes, last.mark, (e) => sayEntry(e, job)) : [];
  return wrap(said.length === 0 ? '' : `Not ${step.here}: u. ${said.join(' ')}`, state.columns);
}

/** More goes with a mark than anybody takes in at a glance beside the map: it has a page of its own. */
const MUCH = 3;
const isMuch = ({ takes }: NonNullable<ReturnType<typeof lastOn>>): boolean =>
  takes.gone.length - 1 > MUCH;

/** Where bolts are tightened the key takes passes back: that a bolt is in at all goes by the page of its marks. */
function staysTight({ step }: Pointing, { mark }: NonNullable<ReturnType<typeof lastOn>>): boolean {
  return step.step === 'tight' && (mark.verb === 'in' || mark.verb === 'out');
}

function nothingOn({ state, step }: Pointing): Updated {
  if (step.here === null) return say(state, 'Which hole? Its number first.');
  return say(state, `Nothing is marked on ${step.here} in this round.`);
}

/** A letter that is a kind of this job is in the hand first: then by the list of marks. */
export const unmarkKey: Key<Pointing> = {
  id: 'not-this-one',
  presses: ['u', '/'],
  label: (here) => {
    const last = lastOn(here);
    const offers = here.step.here !== null && !(last && staysTight(here, last));
    return offers ? 'not this one' : '';
  },
  help: 'the wrong hole was marked: its last mark goes, wherever it stands, with what rests on it',
  does: (here) => {
    const { state, step } = here;
    const last = lastOn(here);
    if (!last || step.here === null) return nothingOn(here);
    if (staysTight(here, last)) {
      const told = `${step.here} has had no pass yet: nothing is taken back.`;
      return say(
        state,
        `${told} ] has its other marks, ${sayEntry(last.mark, here.job)} the last.`,
      );
    }
    const asked = { step: 'unmark', hole: step.here, mark: last.mark.id, back: step } as const;
    if (isMuch(last)) return toStep(state, { ...asked, run: null });
    return takeBack(state, asked, last.takes.wishes);
  },
};

/** An older one of its marks. */
export const marksKey: Key<Pointing> = {
  id: 'which-mark',
  presses: [']'],
  label: '',
  help: 'the marks of the hole that is pointed at: which of them is wrong',
  does: (here) => {
    const { state, step } = here;
    const last = lastOn(here);
    if (!last || step.here === null) return nothingOn(here);
    const { id } = last.mark;
    return toStep(state, { step: 'unmark', hole: step.here, mark: id, run: null, back: step });
  },
};

type Asked = Omit<Extract<PieceStep, { step: 'unmark' }>, 'run'>;

function takeBack(state: State, asked: Asked, wishes: readonly Wish[]): Updated {
  const says = `${asked.hole}: that mark is taken back.`;
  return carryOut(state, asked, wishes, { takes: true, says });
}

function carryOut(
  state: State,
  asked: Asked,
  [first, ...rest]: readonly Wish[],
  of: { takes: boolean; says: string },
): Updated {
  if (!first) return stay(state);
  const run = { rest, from: state.mine.length, ...of };
  return requestMark(toStep(state, { ...asked, run }).state, first);
}

/** What "not this one" took back of this piece stands again, whole; null where that was not the last thing done. */
export function giveBack({ state, job, key, step }: OnPiece): Updated | null {
  const { unmarked } = state;
  const ids = unmarked?.ids ?? [];
  if (!unmarked || unmarked.piece !== key || job.entries.at(-1)?.id !== ids.at(-1)) return null;
  const { hole } = unmarked;
  const wishes = ids.toReversed().map((id): Wish => ({ do: 'undo', id }));
  const says = `${hole}: its mark stands again.`;
  return carryOut(state, { step: 'unmark', hole, mark: '', back: step }, wishes, {
    takes: false,
    says,
  });
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
      does: ({ state, step, takes }) => takeBack(state, step, takes?.wishes ?? []),
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
    say: (takes ? goesSaid(takes, mark, (e) => sayEntry(e, job)) : []).flatMap((text, i) =>
      wrap(text, state.columns, i === 0 ? { bold: true } : {}),
    ),
  };
}

function goesSaid(
  { gone, again }: Unmark,
  mark: Entry | null,
  told: (entry: Entry) => string,
): string[] {
  const with_ = gone.filter((e) => e !== mark).map(told);
  const stands = again.flatMap(({ entry, holes }) =>
    holes.length === 0
      ? []
      : [`${list(holes)} ${entry.verb === 'tight' ? entry.value : entry.verb}`],
  );
  return [
    ...(with_.length === 0 ? [] : [`With it goes: ${list(with_)}.`]),
    ...(stands.length === 0 ? [] : [`Stands again: ${list(stands)}.`]),
  ];
}

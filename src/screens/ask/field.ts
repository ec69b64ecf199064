/** The field: a text that is asked for. A reason, a note, a tray, what lay under a head, a piece's name. */
import { withRightReading } from '../../job/judge/right-reading.ts';
import { slipOf } from '../../model/nearword.ts';
import type { PieceNow, Refusal, Wish } from '../../model/types.ts';
import { isBlank } from '../../model/words.ts';
import { type AnswerKind, answerTo, shouldSaid } from '../../plan/piece/answers.ts';
import { typedPiece } from '../../plan/typed/piece.ts';
import type { Asks, JobAsks, KnownAsks, TraceAsks } from '../base/asks.ts';
import {
  ADD_DRAFT,
  draftOf,
  dropDraft,
  JOB_DRAFT,
  keepDraft,
  PIECE_DRAFT,
} from '../base/drafts.ts';
import { enterPiece } from '../base/enter.ts';
import { ENTER } from '../base/key.ts';
import { at, requestMark, say, show, stay, toStep } from '../base/moves.ts';
import type { Page } from '../base/page.ts';
import { screenOver } from '../base/screen.ts';
import type { State, Updated, View } from '../base/state.ts';
import { drawField, field, fieldText } from '../kit/field.ts';
import { bold, type Line, line, wrap } from '../kit/text.ts';
import { doneOfJob, questionOfJob } from './field-job.ts';
import { afterText, doneKnown, questionKnown, withFault } from './field-known.ts';
import { afterListed, afterReading, doneTrace, questionTrace, tracedFault } from './field-trace.ts';
import { questionMended } from './mended.ts';
import { isOfReading, measuredAnew } from './reason.ts';
import { askedAt, claimUnder, nextAsked, rowWish, takeUnder } from './row-under.ts';

type FieldView = Extract<View, { screen: 'field' }>;

interface Asked {
  state: State;
  view: FieldView;
}

/** What a text is for, as the name of its draft: all that is asked, without what was wrong with an answer. */
function draftName(asks: Asks): string {
  if (asks.ask === 'why') return 'why';
  // A line to be added is kept wherever it was begun.
  if (asks.ask === 'add') return ADD_DRAFT;
  if (asks.ask === 'job') return JOB_DRAFT;
  if (asks.ask === 'piece') return PIECE_DRAFT;
  return JSON.stringify(asks, (name, value) => (name === 'say' ? undefined : value));
}

export function ask(state: State, asks: Asks, text = ''): Updated {
  const draft = draftOf(state, draftName(asks));
  return show(state, { screen: 'field', asks, field: field(draft ?? text), under: state.view });
}

export const fieldScreen = screenOver({
  here: (state: State, view: FieldView): Asked => ({ state, view }),
  keys: [
    {
      id: 'done',
      presses: ENTER,
      anew: ENTER,
      label: 'keep it',
      help: 'keep what is written',
      does: ({ state, view }) => {
        const kept = dropDraft(state, draftName(view.asks));
        return done(kept, view, fieldText(view.field).trim());
      },
    },
    {
      id: 'meant',
      presses: ['up'],
      label: (here) => meantPiece(here)?.spec.name ?? '',
      help: 'the piece that was meant, whose name is like the one that was typed',
      holds: (here) => meantPiece(here) !== null,
      does: (here) => {
        const { state, view } = here;
        const meant = meantPiece(here)?.spec.key;
        const below = { ...dropDraft(state, PIECE_DRAFT), view: view.under };
        const { row } = typedPiece(fieldText(view.field).trim());
        return meant === undefined ? stay(state) : namePiece(below, meant, row);
      },
    },
  ],
  draw: drawAsked,
  text: {
    field: ({ view }) => view.field,
    retype: ({ state, view }, typed) => show(state, { ...view, field: typed }),
  },
  // What was not touched is no draft, nor is what was taken out again.
  draft: ({ state, view: { asks, field: typed } }) =>
    typed.past.length === 0 ? state : keepDraft(state, draftName(asks), fieldText(typed)),
  after: {
    write: afterText,
    correct: afterText,
    list: afterListed,
    look: afterReading,
    reading: afterCounter,
  },
  // What was typed stays where it can be mended.
  refused: (state, why, wish) =>
    wish.do === 'look' || wish.do === 'reading'
      ? readingRefused(state, why, wish)
      : withFault(state, why.say),
});

/** What the counter says is noted; one is where one was. */
function afterCounter(state: State): Updated {
  return state.view.screen === 'field' ? show(state, state.view.under) : stay(state);
}

/** Why it counts all the same; a figure that was given there before is the reading that is asked about. */
export function askReason(state: State, wish: Wish, refused: Refusal): Updated {
  const asked = state.open ? withRightReading(state.open.job, wish) : wish;
  return ask(state, { ask: 'why', wish: asked, refused });
}

/** A reading against its limit, or back on the counter, counts with a reason; what cannot be judged is asked for again. */
function readingRefused(state: State, why: Refusal, wish: Wish): Updated {
  if (!why.overrulable || state.view.screen !== 'field') return tracedFault(state, why.say);
  return askReason({ ...state, view: state.view.under }, wish, why);
}

/** Questions that have a file of their own, which asks them and takes the answer. */
const OF_JOB: Readonly<Record<JobAsks['ask'], true>> = {
  inside: true,
  cleared: true,
  covered: true,
  add: true,
  promised: true,
  number: true,
  misfit: true,
  result: true,
  minutes: true,
  counter: true,
  job: true,
};
const OF_TRACE: Readonly<Record<TraceAsks['ask'], true>> = {
  listed: true,
  reading: true,
  put: true,
  went: true,
  leaving: true,
  'left-so': true,
  figures: true,
};
const KNOWN: Readonly<Record<KnownAsks['ask'], true>> = {
  truth: true,
  write: true,
};
const isOfJob = (asks: Asks): asks is JobAsks => asks.ask in OF_JOB;
const isOfTrace = (asks: Asks): asks is TraceAsks => asks.ask in OF_TRACE;
const isKnown = (asks: Asks): asks is KnownAsks => asks.ask in KNOWN;

function done(state: State, view: FieldView, text: string): Updated {
  const { asks } = view;
  const below: State = { ...state, view: view.under };
  if (isOfJob(asks)) return doneOfJob(state, below, asks, text);
  if (isOfTrace(asks)) return doneTrace(state, below, asks, text);
  if (isKnown(asks)) return doneKnown(state, below, asks, text);
  switch (asks.ask) {
    case 'why':
      if (isBlank(text))
        return say(state, 'A reason is needed: it stands in the diary beside the mark.');
      return requestMark(
        below,
        measuredAnew(asks.wish, asks.refused, text) ?? { ...asks.wish, because: text },
      );
    case 'note': {
      if (text === '') return stay(below);
      const piece = asks.piece === null ? {} : { piece: asks.piece };
      const hole = asks.hole === null ? {} : { hole: asks.hole };
      return requestMark(below, { do: 'note', ...piece, ...hole, text });
    }
    case 'tray':
      return requestMark(below, {
        do: asks.how,
        piece: asks.piece,
        ...(text === '' ? {} : { tray: text }),
      });
    case 'piece':
      return pieceTyped(state, below, asks, text);
    case 'under':
      return under(below, asks, text);
    case 'left':
    case 'heights':
      return answered(state, below, asks, text);
    case 'mended': {
      const { piece, hole } = asks;
      if (text === '') return say(state, 'How it was mended stands in the diary: write it.');
      return requestMark(below, { do: 'state', piece, hole, state: 'mended', says: text });
    }
    case 'belongs': {
      const here = at(below);
      if (!here || text === '') return stay(below);
      const [, to] = /^=\s*(\S.*)$/.exec(text) ?? [];
      if (to !== undefined && asks.kind !== null)
        return requestMark(below, { do: 'rename', kind: asks.kind, to });
      return requestMark(below, { do: 'settle', piece: here.key, hole: asks.hole, kind: text });
    }
  }
}

/** A name that is most likely a slip of one that is there is asked about once; typed so again, it is another piece. */
function pieceTyped(
  state: State,
  below: State,
  { slip }: Extract<Asks, { ask: 'piece' }>,
  text: string,
): Updated {
  const { view } = state;
  const { key, row } = typedPiece(text);
  if (key === '') return stay(below);
  const known = below.open?.job.pieces;
  const meant = known?.has(key) ? null : slipOf(key, known?.keys() ?? []);
  if (meant === null || slip?.text === text || view.screen !== 'field') {
    return namePiece(below, key, row);
  }
  const asked = keepDraft(state, PIECE_DRAFT, text);
  return show(asked, { ...view, asks: { ask: 'piece', slip: { text, meant } } });
}

/** The piece that was meant; null where nothing is asked of the name as it stands. */
function meantPiece({ state, view: { asks, field: typed } }: Asked): PieceNow | null {
  if (asks.ask !== 'piece' || asks.slip?.text !== fieldText(typed).trim()) return null;
  return state.open?.job.pieces.get(asks.slip.meant) ?? null;
}

/** Opens the piece. Where its bolts were said too, they are written down: not one of them is out by that. */
function namePiece(below: State, key: string, row: string | null): Updated {
  const entered = enterPiece(below, key);
  const piece = at(entered.state)?.piece;
  // What the file knows of a piece is not typed over.
  if (row === null || !piece || piece.holes.length > 0) return entered;
  return requestMark(entered.state, { do: 'write', piece: key, key: 'bolts', text: row });
}

/** Shows the answer; where the text cannot be read, the question again with what is wrong. */
function answered(
  state: State,
  below: State,
  asks: Extract<Asks, { ask: AnswerKind }>,
  text: string,
): Updated {
  const here = at(below);
  const { view } = state;
  if (!here || view.screen !== 'field') return stay(below);
  const found = answerTo(here.job, here.piece, asks.ask, text);
  if ('fault' in found) return show(state, { ...view, asks: { ...asks, say: found.fault } });
  const { step } = here.view;
  return toStep(below, { step: 'answer', about: asks.ask, text, back: step });
}

/** Asks about the next word that ends in `+`; records the row when there is none. */
function under(below: State, asks: Extract<Asks, { ask: 'under' }>, text: string): Updated {
  const here = at(below);
  if (!here) return stay(below);
  const words = takeUnder(asks.words, asks.at, text);
  const next = nextAsked(words);
  if (next === null) return requestMark(below, rowWish(here.piece, words));
  const claim = claimUnder(here.piece, next);
  return ask(below, { ask: 'under', words, at: next }, claim);
}

// ---------------------------------------------------------------- picture

function drawAsked({ state, view }: Asked): Page {
  const { columns } = state;
  const typed = drawField(view.field, columns - PROMPT.length);
  const asked = question(state, view.asks).flatMap((text, i): Line[] =>
    wrap(text, columns, i === 0 ? { bold: true } : {}),
  );
  const prompt = line(PROMPT, typed.line);
  return {
    kind: 'plain',
    left: line(bold(aboutSaid(state, view))),
    above: [[]],
    middle: () => asked,
    below: [[], prompt],
    cursor: { line: prompt, column: PROMPT.length + typed.column },
  };
}

const PROMPT = '> ';

/** What the question is about: the piece or the task underneath, else the job. */
function aboutSaid(state: State, { asks, under }: FieldView): string {
  if (asks.ask === 'job') return 'A new job';
  const job = state.open?.job;
  const of =
    asks.ask === 'truth' ? asks.figure : asks.ask === 'write' || asks.ask === 'add' ? asks : null;
  const piece = job?.pieces.get(of?.piece ?? '');
  const task = of && 'task' in of && of.task !== undefined ? job?.tasks.get(of.task) : null;
  const below = at({ ...state, view: under })?.piece;
  return (piece ?? below)?.spec.name ?? task?.spec.say.text ?? job?.upper.job ?? '';
}

/** What the empty holes of the piece under the question take. */
function shouldLie(state: State): string | null {
  const { view } = state;
  const here = view.screen === 'field' ? at({ ...state, view: view.under }) : null;
  return here ? shouldSaid(here.job, here.piece) : null;
}

/** What is asked, and what it is for. */
function question(state: State, asks: Asks): string[] {
  if (isOfJob(asks)) return questionOfJob(state, asks);
  if (isOfTrace(asks)) return questionTrace(state, asks);
  if (isKnown(asks)) return questionKnown(state, asks);
  switch (asks.ask) {
    case 'why':
      return [
        'Why all the same?',
        asks.refused.say,
        isOfReading(asks.refused)
          ? 'The right figure, or the reason: that stands in the diary beside the mark.'
          : 'The reason stands in the diary beside the mark.',
      ];
    case 'note':
      return [asks.hole === null ? 'A note' : `A note on ${asks.hole}`];
    case 'tray':
      return ['Where do its bolts lie?', 'cup 2, card on the shelf. It may stay empty.'];
    case 'piece': {
      const meant = asks.slip && state.open?.job.pieces.get(asks.slip.meant)?.spec.name;
      if (meant) {
        return [
          `Did you mean ${meant}?`,
          `Up: that one. Enter once more: another piece, called ${asks.slip?.text}.`,
        ];
      }
      return [
        'What comes off?',
        'Its name, and how many bolts: left cover 10. Or which: left cover s s m.',
        'Without bolts its name alone: fuel pipe.',
      ];
    }
    case 'under':
      return [
        `What was under the head of ${askedAt(state, asks)}?`,
        'From the head down, with + between: copper washer, clip + washer.',
      ];
    case 'left':
      return [
        'What is left in the tray?',
        shouldLie(state) ?? 'No hole is empty: nothing should be.',
        'How many and which: 2 S, M. Nothing left: Enter alone.',
        asks.say ?? '',
      ];
    case 'heights':
      return [
        'How high do the heads stand?',
        'Bolts dropped in and not turned; mm from seat to head, one for each hole in its order.',
        '12.5 12 - 12.5, with - where it was not measured.',
        asks.say ?? '',
      ];
    case 'mended':
      return questionMended(state, asks.piece, asks.hole);
    case 'belongs':
      return [
        `What belongs in ${asks.hole}? What is really there?`,
        'The letter of its kind, and what is under its head: M+clip; or its length: .35.',
        asks.kind === null
          ? ''
          : `Or another letter for ${asks.kind}, everywhere, in what was noted too: = L20.`,
      ];
  }
}

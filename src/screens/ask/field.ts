/** A text that is asked for: a reason, a note, a tray, what lay under a head, a piece's name. */
import type { Acts } from '../base/act.ts';
import { draftFor, dropDraft } from '../base/drafts.ts';
import { enterPiece } from '../base/enter.ts';
import { at, record, say, show, stay, toStep } from '../base/moves.ts';
import type { Page } from '../base/page.ts';
import type { Asks, State, Updated, View } from '../base/state.ts';
import { typing } from '../base/takes.ts';
import { drawField, type Field, field, fieldText, pressField } from '../kit/field.ts';
import type { Press } from '../kit/press.ts';
import { bold, type Line, line, wrap } from '../kit/text.ts';
import type { About } from '../now/answers.ts';
import { answerTo, shouldSaid } from '../now/answers.ts';
import { typedPiece } from '../now/typed-piece.ts';
import { doneOfJob, questionOfJob } from './field-job.ts';
import { doneKnown, questionKnown } from './field-known.ts';
import { askedAt, claimUnder, nextAsked, takeUnder } from './row-under.ts';

type FieldView = Extract<View, { screen: 'field' }>;

export function ask(state: State, asks: Asks, text = ''): Updated {
  return show(state, {
    screen: 'field',
    asks,
    field: field(draftFor(state, asks) ?? text),
    under: state.view,
  });
}

/** The field that is open, with other text in it. */
export function retype(state: State, typed: Field): Updated {
  const { view } = state;
  if (view.screen === 'field') return show(state, { ...view, field: typed });
  if (view.screen === 'piece' && view.step.step === 'off-row') {
    return show(state, { ...view, step: { ...view.step, field: typed, say: null } });
  }
  return stay(state);
}

export const fieldActs = {
  type: (state: State, press: Press) => {
    const now = typing(state);
    return now ? retype(state, pressField(now, press) ?? now) : stay(state);
  },
  done: (state) => {
    const { view } = state;
    return view.screen === 'field'
      ? done(dropDraft(state), view, fieldText(view.field).trim())
      : stay(state);
  },
} satisfies Acts;

function done(state: State, view: FieldView, text: string): Updated {
  const { asks } = view;
  const below: State = { ...state, view: view.under };
  switch (asks.ask) {
    case 'why':
      if (text === '')
        return say(state, 'A reason is needed: it stands in the diary beside the mark.');
      return record(below, { ...asks.wish, because: text });
    case 'note': {
      if (text === '') return stay(below);
      const piece = asks.piece === null ? {} : { piece: asks.piece };
      const hole = asks.hole === null ? {} : { hole: asks.hole };
      return record(below, { do: 'note', ...piece, ...hole, text });
    }
    case 'tray':
      return record(below, {
        do: asks.how,
        piece: asks.piece,
        ...(text === '' ? {} : { tray: text }),
      });
    case 'piece': {
      const { key, row } = typedPiece(text);
      return key === '' ? stay(below) : namePiece(below, key, row);
    }
    case 'under':
      return under(below, asks, text);
    case 'left':
    case 'heights':
      return answered(state, below, asks, text);
    case 'truth':
    case 'write':
      return doneKnown(state, below, asks, text);
    case 'inside':
    case 'cleared':
    case 'item':
    case 'promised':
    case 'number':
    case 'result':
    case 'minutes':
      return doneOfJob(state, below, asks, text);
    case 'belongs': {
      const here = at(below);
      if (!here || text === '') return stay(below);
      return record(below, { do: 'settle', piece: here.key, hole: asks.hole, kind: text });
    }
  }
}

/** To the piece; with its bolts said they are out, and are counted next. */
function namePiece(below: State, key: string, row: string | null): Updated {
  const entered = enterPiece(below, key);
  const piece = at(entered.state)?.piece;
  // What the file knows of a piece is not typed over.
  if (row === null || !piece || piece.holes.length > 0) return entered;
  return record(entered.state, { do: 'out', piece: key, row });
}

/** To the answer, or the question again with what is wrong. */
function answered(
  state: State,
  below: State,
  asks: Extract<Asks, { ask: About }>,
  text: string,
): Updated {
  const here = at(below);
  const { view } = state;
  if (!here || view.screen !== 'field') return stay(below);
  const found = answerTo(here.job, here.piece, asks.ask, text);
  if ('fault' in found) return show(state, { ...view, asks: { ...asks, say: found.fault } });
  const { step } = here.view;
  return toStep(below, { step: 'answer', about: asks.ask, text, top: 0, back: step });
}

/** The next word that ends in `+`, or the whole row once all are answered. */
function under(below: State, asks: Extract<Asks, { ask: 'under' }>, text: string): Updated {
  const here = at(below);
  if (!here) return stay(below);
  const words = takeUnder(asks.words, asks.at, text);
  const next = nextAsked(words);
  if (next === null) return record(below, { do: 'out', piece: here.key, row: words.join(' ') });
  const claim = claimUnder(here.piece, next);
  return ask(below, { ask: 'under', words, at: next }, claim);
}

// ---------------------------------------------------------------- picture

export function drawAsked(state: State): Page {
  const { view } = state;
  if (view.screen !== 'field') return { left: [], middle: () => [] };
  const { columns } = state;
  const typed = drawField(view.field, columns - PROMPT.length);
  const above = question(state, view.asks);
  const lines: Line[] = above.flatMap((text, i) =>
    wrap(text, columns, i === 0 ? { bold: true } : {}),
  );
  const name = aboutSaid(state, view);
  const middle = [[], ...lines, [], line(PROMPT, typed.line)];
  return {
    left: line(bold(name)),
    middle: () => middle,
    cursor: { part: 'middle', line: middle.length - 1, column: PROMPT.length + typed.column },
  };
}

const PROMPT = '> ';

/** What the question is about: the piece or the task underneath, else the job. */
function aboutSaid(state: State, { asks, under }: FieldView): string {
  const job = state.open?.job;
  const of = asks.ask === 'truth' ? asks.figure : asks.ask === 'write' ? asks : null;
  const piece = of?.piece === undefined ? null : job?.pieces.get(of.piece);
  const task = of && 'task' in of && of.task !== undefined ? job?.tasks.get(of.task) : null;
  const below = at({ ...state, view: under })?.piece;
  return (piece ?? below)?.spec.name ?? task?.spec.say ?? job?.upper.job ?? '';
}

/** What the empty holes of the piece under the question take. */
function shouldLie(state: State): string | null {
  const { view } = state;
  const here = view.screen === 'field' ? at({ ...state, view: view.under }) : null;
  return here ? shouldSaid(here.job, here.piece) : null;
}

/** What is asked, and what it is for. */
function question(state: State, asks: Asks): string[] {
  switch (asks.ask) {
    case 'why':
      return [
        'Why all the same?',
        asks.refused.say,
        'The reason stands in the diary beside the mark.',
      ];
    case 'note':
      return [asks.hole === null ? 'A note' : `A note on ${asks.hole}`];
    case 'tray':
      return ['Where do its bolts lie?', 'cup 2, card on the shelf. Nothing is an answer too.'];
    case 'piece':
      return [
        'What comes off?',
        'Its name, and how many bolts: left cover 10. Or which: left cover s s m.',
        'Without bolts its name alone: fuel pipe.',
      ];
    case 'under':
      return [
        `What was under the head of ${askedAt(state, asks)}?`,
        'From the head down, with + between: copper washer, clip + washer.',
      ];
    case 'left':
      return [
        'What is left in the tray?',
        shouldLie(state) ?? 'No hole is empty: nothing should be.',
        'How many and which: 2 S, M. Nothing is an answer too.',
        asks.say ?? '',
      ];
    case 'heights':
      return [
        'How high do the heads stand?',
        'Bolts dropped in and not turned; mm from seat to head, one for each hole in its order.',
        '12.5 12 - 12.5, with - where it was not measured.',
        asks.say ?? '',
      ];
    case 'truth':
    case 'write':
      return questionKnown(state, asks);
    case 'inside':
    case 'cleared':
    case 'item':
    case 'promised':
    case 'number':
    case 'result':
    case 'minutes':
      return questionOfJob(state, asks);
    case 'belongs':
      return [
        `What belongs in ${asks.hole}? What is really there?`,
        'The letter of its kind, and what is under its head: M+clip.',
      ];
  }
}

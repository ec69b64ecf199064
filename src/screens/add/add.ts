/** What the line is that was just typed: the guess with one key, everything else by its letter. */
import { fullOf, readStages } from '../../bolt/torque/stages.ts';
import { readCheckLine, readSuspectLine } from '../../job/form/typed-trace.ts';
import type { Addable, Job, Moment } from '../../model/types.ts';
import { buysNow } from '../../plan/buy/list.ts';
import { buyWish } from '../../plan/buy/wish.ts';
import { boughtTyped } from '../../plan/typed/bought.ts';
import { lineIs } from '../../plan/typed/line-is.ts';
import { ask } from '../ask/field.ts';
import { ADD_DRAFT, keepDraft } from '../base/drafts.ts';
import { ENTER } from '../base/key.ts';
import { pieceNamed, requestMark, say, show, stay } from '../base/moves.ts';
import { NOTED } from '../base/noted.ts';
import type { Page } from '../base/page.ts';
import { type MadeMark, screen, type WishTo } from '../base/screen.ts';
import type { State, Updated, View } from '../base/state.ts';
import { keyName, type Press } from '../kit/press.ts';
import { bold, type Line, line, wrap } from '../kit/text.ts';

type AddView = Extract<View, { screen: 'add' }>;

/** At a gate a line can also be one thing more to be seen to there, and where a fault is traced what it may be. */
type What = Addable | 'item' | 'suspect' | 'torque';

interface Choice {
  as: What;
  letter: Press;
  /** As it is offered first, and at the foot. */
  say: string;
  short: string;
  /** In the list. */
  help: string;
}

const CHOICES: readonly Choice[] = [
  {
    as: 'item',
    letter: 'g',
    say: 'to be seen to at this gate',
    short: 'seen to here',
    help: 'one thing more to be seen to here',
  },
  {
    as: 'suspect',
    letter: 'f',
    say: 'one thing that the fault may be',
    short: 'the fault may be this',
    help: 'one thing more that the fault may be: Coil open, rarely',
  },
  {
    as: 'torque',
    letter: 'r',
    say: 'its torque, as the manual prints it',
    short: 'its torque',
    help: 'the torque of the piece, as the manual prints it',
  },
  { as: 'buy', letter: 'b', say: 'to buy', short: 'to buy', help: 'a part, something to buy' },
  { as: 'do', letter: 'd', say: 'to do', short: 'to do', help: 'something to do' },
  {
    as: 'test',
    letter: 'm',
    say: 'to test or to measure',
    short: 'to measure',
    help: 'a test; a figure at its end is the limit: 0.8..1.2 ohm, at least 3 bar',
  },
  {
    as: 'check',
    letter: 'k',
    say: 'a check that finds the fault',
    short: 'a check',
    help: 'a check on the way to the fault',
  },
  {
    as: 'adjust',
    letter: 's',
    say: 'to set',
    short: 'to set',
    help: 'an adjustment: what it was and what it is set to are asked for then',
  },
  {
    as: 'wait',
    letter: 'w',
    say: 'to wait for',
    short: 'to wait for',
    help: 'something to wait for',
  },
  { as: 'decide', letter: 'e', say: 'to decide', short: 'to decide', help: 'a decision to take' },
  {
    as: 'caution',
    letter: 'c',
    say: 'a caution, read before its bolts',
    short: 'caution',
    help: 'a caution: read before the bolts of the piece',
  },
  { as: 'tip', letter: 't', say: 'a tip', short: 'tip', help: 'a tip, shown beside its step' },
  { as: 'note', letter: 'n', say: 'a note', short: 'note', help: 'a note in the diary' },
];

interface OnAdd {
  state: State;
  view: AddView;
  /** Offered first. */
  guess: Choice;
  /** What it can be here. */
  choices: readonly Choice[];
}

function onAdd(state: State, view: AddView): OnAdd | null {
  if (!state.open) return null;
  const choices = CHOICES.filter((c) => {
    if (c.as === 'item') return view.moment !== null;
    if (c.as === 'suspect') return isTraced(view);
    if (c.as === 'torque') return view.piece !== null && torqueIn(view.text) !== null;
    return view.piece !== null || (c.as !== 'caution' && c.as !== 'tip');
  });
  const likely = likelyOf(state.open.job, view);
  const guess = choices.find((c) => c.as === likely) ?? choices.find((c) => c.as === 'note');
  return guess ? { state, view, guess, choices } : null;
}

/** The fault is being traced on the screen underneath. */
const isTraced = ({ under }: AddView): boolean => under.screen === 'trace';

function likelyOf(job: Job, view: AddView): What {
  if (view.moment !== null) return 'item';
  if (view.piece !== null && torqueIn(view.text) !== null) return 'torque';
  const line = lineIs(view.text);
  // A word before it says what it is, wherever it is typed.
  if (!isTraced(view) || line.text !== view.text.trim()) return line.as;
  return 'say' in readCheckLine(view.text, job.upper, numbered(job)) ? 'suspect' : 'check';
}

/** `torque 12 N·m`, `20 N·m + 90°`: the figure as it is printed; null where the line is about something else. */
function torqueIn(text: string): string | null {
  const said = text.trim().replace(/^(?:torque|tighten(?:ed)? to)\b[\s:]*/i, '');
  return /^\d/.test(said) && fullOf(readStages(said)) !== null ? said : null;
}

/** Suspects as their list numbers them. */
const numbered = ({ upper }: Job): string[] => [...upper.suspects.keys()];

function add({ state, view }: OnAdd, as: What): Updated {
  const { piece, hole, moment, text } = view;
  if (as === 'suspect') {
    const read = state.open ? readSuspectLine(text, state.open.job.upper) : { say: '' };
    if ('say' in read) return say(state, read.say);
    return requestMark(state, { do: 'list', section: 'suspects', ...read });
  }
  const at = piece === null ? {} : { piece };
  if (as === 'torque') {
    const figure = torqueIn(text);
    if (piece === null || figure === null) return stay(state);
    return requestMark(state, { do: 'write', piece, key: 'torque', text: figure });
  }
  if (as === 'item') return moment === null ? stay(state) : addItem(state, moment, at, text);
  const line = lineIs(text);
  const said = line.as === as ? line.text : text;
  const place = hole === null ? at : { ...at, hole };
  const { what } = (as === 'buy' ? boughtTyped(said, state.now) : null) ?? { what: said };
  return requestMark(state, { do: 'add', as, text: what, ...place });
}

function addItem(state: State, moment: Moment, at: { piece?: string }, item: string): Updated {
  return requestMark(state, { do: 'gate', moment, ...at, how: 'added', item });
}

/** The letters: the guess has its own too. */
const LETTERS = CHOICES.map((choice) => ({
  id: `as-${choice.as}`,
  presses: [choice.letter],
  label: ({ guess }: OnAdd) => (guess.as === choice.as ? '' : choice.short),
  help: choice.help,
  holds: ({ choices }: OnAdd) => choices.includes(choice),
  does: (here: OnAdd) => add(here, choice.as),
}));

export const addScreen = screen({
  here: onAdd,
  keys: [
    {
      id: 'as-guess',
      presses: ENTER,
      label: ({ guess }) => `yes, ${guess.short}`,
      help: 'what is offered first',
      does: (here) => add(here, here.guess.as),
    },
    ...LETTERS,
    {
      id: 'of-the-job',
      presses: ['0'],
      label: ({ view }) => (view.hole === null ? 'not of this piece' : 'of the whole piece'),
      help: 'it is not of this hole, then not of this piece, but of the whole job',
      holds: ({ view }) => view.piece !== null && view.moment === null,
      does: ({ state, view }) =>
        show(state, view.hole === null ? { ...view, piece: null } : { ...view, hole: null }),
    },
  ],
  draw: drawAdd,
  // It is a draft as it was typed, touched again or not.
  back: (state, { text, piece, hole, moment, under }) =>
    ask(
      keepDraft({ ...state, view: under }, ADD_DRAFT, text),
      { ask: 'add', piece, hole, moment },
      text,
    ),
  after: {
    add: afterAdd,
    note: (state, made) => NOTED.note(below(state), made),
    write: (state, { wish }) => say(below(state), `Its torque: ${wish.text}.`),
    gate: (state) => stay(below(state)),
    list: (state, made) => NOTED.list(below(state), made),
  },
  // What was typed stays where it can be kept as something else.
  refused: (state, why) => say(state, why.say),
});

/** What was said behind the name of a part, `gasket, ordered`, is noted of it. */
function afterAdd(state: State, made: MadeMark<WishTo<'add'>>): Updated {
  const { view, open } = state;
  const noted = NOTED.add(below(state), made);
  if (view.screen !== 'add' || !open || made.wish.as !== 'buy') return noted;
  const bought = boughtTyped(lineIs(view.text).text, state.now);
  const buy = buysNow(open.job, state.now).findLast(({ what }) => what === made.wish.text);
  if (!bought || !buy) return noted;
  const { promised } = bought;
  const wish = buyWish(buy, bought.state, promised === null ? {} : { promised });
  return requestMark(below(state), wish);
}

function below(state: State): State {
  return state.view.screen === 'add' ? { ...state, view: state.view.under } : state;
}

function drawAdd({ state, view, guess, choices }: OnAdd): Page {
  const { job } = state.open ?? {};
  const name = job && view.piece !== null ? pieceNamed(job, view.piece).spec.name : null;
  const where = view.hole === null ? (name ?? 'The whole job') : `${name}, hole ${view.hole}`;
  return {
    kind: 'page',
    left: line(bold(name ?? job?.upper.job ?? '')),
    above: [[]],
    middle: (columns) => [
      ...wrap(`+ ${view.text}`, columns, { bold: true }),
      [],
      ...wrap(`${where}: ${guess.say}?`, columns, { bold: true }),
      [],
      ...choices
        .filter((c) => c !== guess)
        .map((c): Line => line('  ', bold(keyName(c.letter)), `   ${c.say}`)),
    ],
  };
}

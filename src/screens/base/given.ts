/** The keys that every screen has: moving what does not fit, back, leave, the list of keys. */
import { EDITING, field, pressField, type TextField } from '../kit/field.ts';
import { neighbour } from '../kit/neighbour.ts';
import { landsOn } from './at-hand.ts';
import { ADD_DRAFT, draftOf } from './drafts.ts';
import type { Key, KeyWords } from './key.ts';
import type { Laid } from './lay.ts';
import { say, show, stay } from './moves.ts';
import type { State, Updated, View } from './state.ts';
import { canUndo, undoLast } from './undo.ts';

/** The rows of a list by their names. */
export interface Rows {
  names: readonly string[];
  marked: string | null;
  /** The screen with this row marked. */
  mark: (name: string | null) => View;
}

/** A text that is typed on a screen. */
export interface Text {
  field: TextField;
  retype: (field: TextField) => Updated;
}

/** What these keys need to know. */
export interface Given {
  state: State;
  view: View;
  laid: () => Laid;
  /** It is a page to be read. */
  isText: () => boolean;
  /** Null where it is no list. */
  rows: (() => Rows | null) | null;
  text: () => Text | null;
  back: () => Updated;
  /** What is asked before the program is left from here; null: nothing is. */
  asked: () => Updated | null;
}

/** What of a screen decides which of them it gets. */
interface Has {
  /** A text is typed on it. */
  text: boolean;
  /** What is half made on it is kept as a draft. */
  draft: boolean;
  /** Up and Down have no other meaning on it. */
  arrows: boolean;
  /** Backspace has no other meaning on it. */
  undo: boolean;
  called: Called;
}

/** What the given keys are called here. */
export interface Called {
  /** At the foot. */
  back?: string;
  quit?: string;
  /** Their names and what the list of keys says of them, where they do something else. */
  insteadOf?: Readonly<Record<'back' | 'quit' | 'leave', Pick<KeyWords, 'id' | 'help'>>>;
}

/** Those that come before the screen's own, and those behind. */
export function givenKeys(has: Has): { first: Key<Given>[]; last: Key<Given>[] } {
  const { called } = has;
  return {
    first: has.text ? [TYPE] : [],
    last: [
      ...(has.arrows ? [UP, DOWN] : []),
      PAGE_UP,
      PAGE_DOWN,
      ...(has.text || has.draft ? [] : [...(has.undo ? [UNDO] : []), ADD]),
      {
        ...BACK,
        label: ({ state, view }) => (isTop(state, view) ? '' : (called.back ?? 'back')),
        ...called.insteadOf?.back,
      },
      ...(has.draft ? [] : [{ ...QUIT, label: called.quit ?? '', ...called.insteadOf?.quit }]),
      { ...LEAVE, ...called.insteadOf?.leave },
      ...(has.text ? [KEYS_WHILE_TYPING] : [NO_HINTS, KEYS]),
    ],
  };
}

const TYPE: Key<Given> = {
  id: 'type',
  presses: EDITING,
  label: '',
  help: 'write; arrows, Ctrl-A, -E, -W, -U, -K and -Z correct it, as in a shell',
  shown: 'text',
  takes: ({ text }, press) => {
    const field = text()?.field;
    return field !== undefined && pressField(field, press) !== null;
  },
  does: (given, press) => {
    const text = given.text();
    const typed = text && pressField(text.field, press);
    return text && typed ? text.retype(typed) : stay(given.state);
  },
};

// ---------------------------------------------------------------- moving

function movedTo({ state, view, laid }: Given, top: number): Updated {
  const to = Math.max(0, Math.min(laid().over, top));
  // At its end it is the same state again: nothing is drawn anew.
  return to === laid().top ? stay(state) : show(state, { ...view, top: to });
}

function move(given: Given, by: number): Updated {
  const { state } = given;
  const rows = given.rows?.();
  if (!rows) return movedTo(given, given.laid().top + by);
  const { names, marked, mark } = rows;
  const next = neighbour(names, marked, by);
  // Pressed on at the end of the list, the mark stays, and so does how far its row was moved.
  return show(state, { ...mark(next), top: next === marked ? given.laid().top : 0 });
}

const fits = ({ laid }: Given): boolean => laid().over === 0;

const UP: Key<Given> = {
  id: 'up',
  presses: ['up'],
  label: '',
  help: 'the one above, or the lines above',
  holds: (given) => given.rows !== null || given.isText() || !fits(given),
  does: (given) => move(given, -1),
};
const DOWN: Key<Given> = {
  ...UP,
  id: 'down',
  presses: ['down'],
  help: 'the one below, or the lines below',
  does: (given) => move(given, 1),
};
const PAGE_UP: Key<Given> = {
  id: 'page-up',
  presses: ['pageup'],
  label: '',
  help: 'what does not fit, a screen of lines up',
  holds: (given) => !fits(given),
  does: (given) => movedTo(given, given.laid().paged(-1)),
};
const PAGE_DOWN: Key<Given> = {
  ...PAGE_UP,
  id: 'page-down',
  presses: ['pagedown'],
  help: 'what does not fit, a screen of lines down',
  does: (given) => movedTo(given, given.laid().paged(1)),
};

// ---------------------------------------------------------------- taking back, adding

/** Screens that are of no job, or ask something that comes first. */
const NOT_OF_A_JOB: readonly View['screen'][] = [
  'wait',
  'bench',
  'faults',
  'unsaved',
  'keys',
  'add',
];

function isOfJob({ state, view }: Given): boolean {
  return state.open !== null && !NOT_OF_A_JOB.includes(view.screen);
}

const UNDO: Key<Given> = {
  id: 'undo-last',
  presses: ['backspace'],
  label: ({ state }) => (canUndo(state) ? 'undo' : ''),
  help: 'take the last mark back, or say where it stands',
  holds: isOfJob,
  does: ({ state }) => undoLast(state),
};

/** Behind a kind in the hand, + is what lies under its head. */
function isInHand(view: View): boolean {
  return view.screen === 'piece' && 'hand' in view.step && view.step.hand !== '';
}

const TAKEN_UP = 'This was left half written. A letter begins anew; an arrow goes on with it.';

/** `=` is `+` without Shift. */
const ADD: Key<Given> = {
  id: 'add',
  presses: ['+', '='],
  label: 'add',
  help: 'add anything in one line: a part, something to do or to measure, a caution, a note',
  holds: (given) => isOfJob(given) && !isInHand(given.view),
  does: ({ state }) => {
    const text = draftOf(state, ADD_DRAFT);
    const asks = { ask: 'add', ...landsOn(state) } as const;
    const typed = text === null ? field() : ({ ...field(text), again: true } as const);
    const opened = show(state, { screen: 'field', asks, field: typed, under: state.view });
    return text === null ? opened : say(opened.state, TAKEN_UP);
  },
};

// ---------------------------------------------------------------- leaving

const quit = ({ state, asked }: Given): Updated => asked() ?? { state, effects: [{ do: 'quit' }] };

/** Nothing lies over it that one could go back to. */
function isTop({ bench }: State, { screen }: View): boolean {
  return screen === 'bench' || screen === 'wait' || (screen === 'job' && bench === null);
}

const BACK: Key<Given> = {
  id: 'back',
  presses: ['escape'],
  label: '',
  help: 'back one step; nothing is lost',
  does: ({ back }) => back(),
};
const QUIT: Key<Given> = {
  id: 'quit',
  presses: ['q'],
  label: '',
  help: 'leave; every mark is on disk already',
  always: true,
  does: quit,
};
const LEAVE: Key<Given> = {
  id: 'leave',
  presses: ['ctrl-c'],
  label: '',
  help: 'leave at once; every mark is on disk already',
  always: true,
  atOnce: true,
  does: quit,
};

// ---------------------------------------------------------------- the list of keys

const NO_HINTS: Key<Given> = {
  id: 'no-hints',
  presses: ['['],
  label: '',
  help: 'no more hints of the practice',
  holds: ({ state }) => state.guide !== null,
  does: ({ state }) => say({ ...state, guide: null }, 'No more hints.'),
};
const KEYS: Key<Given> = {
  id: 'keys',
  presses: ['?', 'h'],
  label: 'keys',
  help: 'this list',
  leadsOn: true,
  does: ({ state, view }) =>
    // One list over another would be one too many.
    show(state, view.screen === 'keys' ? view.under : { screen: 'keys', under: view }),
};
const KEYS_WHILE_TYPING: Key<Given> = { ...KEYS, id: 'keys-typing', presses: ['tab'] };

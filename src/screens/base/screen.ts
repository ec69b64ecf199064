/**
 * What a screen is: its keys with what they do, its page, its rows where it is a list, where its marks lead. Back,
 * leave, the list of keys and moving what does not fit are given to each, so that none can be without them.
 */
import type { Entry, Refusal, Wish } from '../../model/types.ts';
import type { TextField } from '../kit/field.ts';
import type { Line } from '../kit/text.ts';
import { type Called, type Given, givenKeys, type Rows, type Text } from './given.ts';
import { bindKey, type HeldKey, type Key, type KeyWords } from './key.ts';
import { type Laid, layPage, readPage } from './lay.ts';
import { show } from './moves.ts';
import { withOwn } from './own-presses.ts';
import { EMPTY_PAGE, type Page } from './page.ts';
import type { State, Updated, View } from './state.ts';

/** A mark that is on disk. */
export interface MadeMark<W extends Wish = Wish> {
  wish: W;
  /** Null where it was so already. */
  entry: Entry | null;
  /** The state in which it was asked for. */
  before: State;
}

/** The wishes that do this. */
export type WishTo<D extends Wish['do'], W extends Wish = Wish> = W extends unknown
  ? D extends W['do']
    ? W
    : never
  : never;

/** Where marks lead that were made on a screen, by what was wished. */
export type After = {
  readonly [D in Wish['do']]?: (state: State, made: MadeMark<WishTo<D>>) => Updated;
};

type Refused = (state: State, why: Refusal, wish: Wish) => Updated;

/** A screen on which `H` is known. */
export interface Spec<V extends View, H> {
  /** What its keys and its page need to know, worked out once a state; null where there is nothing to show. */
  here: (state: State, view: V) => H | null;
  /** The earlier ones stay longest at the foot. */
  keys: readonly Key<H>[];
  draw: (here: H) => Page;
  /** Of a list: Up and Down mark another one. */
  rows?: (here: H) => Rows;
  /** What becomes of a row may change where it would stand: while one is in the list it stays. */
  steady?: true;
  /** A text that is typed here. */
  text?: { field: (here: H) => TextField; retype: (here: H, field: TextField) => Updated };
  /** Keeps what is half made here as a draft, on the way back. No single key leaves the program from such a screen. */
  draft?: (here: H) => State;
  called?: Called;
  /** What is asked before the program is left from here; null: nothing. */
  asks?: (here: H) => Updated | null;
  /** Names what must have been looked at here: what was typed before it came in sight is dropped. */
  mustSee?: (here: H) => string;
  /** Said once, when a key leads here. */
  greeting?: (here: H) => State;
  /** Left out: it is noted, and one stays. */
  after?: After;
  /** Left out: why not is said, and one stays. */
  refused?: Refused;
}

/** As all screens look from outside, whatever they know. */
export interface Screen<V extends View = View> {
  /** All its keys, for the table. */
  readonly keys: readonly KeyWords[];
  open(state: State, view: V): Open;
}

/** A screen in one state. */
export interface Open {
  readonly state: State;
  /** All its keys; whether each holds, it says itself. */
  keys(): readonly HeldKey[];
  /** Its page as it stands on the rows of the screen. */
  laid(): Laid;
  /** The whole page, to be read out. */
  read(): readonly Line[];
  /** The text that is typed here. */
  text(): Text | null;
  mustSee(): string | null;
  greeted(): State;
  /** With the places of its rows and of the marked one, where those are to stay. */
  steadied(): State;
  /** With what is half made here kept as a draft. */
  kept(): State;
  /** What is asked before the program is left from here; null: nothing. */
  asked(): Updated | null;
  readonly after: After;
  readonly refused: Refused | null;
}

/** A screen that lies over no other one says itself where back leads. */
export function screen<V extends View, H>(
  spec: Spec<V, H> & { back: (state: State, view: V) => Updated },
): Screen<V> {
  const arrows = !spec.keys.some((key) => key.presses.includes('up'));
  const undo = !spec.keys.some((key) => key.presses.includes('backspace'));
  const given = givenKeys({
    text: spec.text !== undefined,
    draft: spec.draft !== undefined,
    arrows,
    undo,
    called: spec.called ?? {},
  });
  function open(state: State, view: V): Open {
    const here = once(() => spec.here(state, view));
    /** What a part of the screen says here, where it has that part. */
    function said<T>(part: ((here: H) => T) | undefined): T | null {
      if (part === undefined) return null;
      const now = here();
      return now === null ? null : part(now);
    }
    const page = once(() => said(spec.draw) ?? EMPTY_PAGE);
    const laid = once(() => layPage(state, page(), view.top ?? 0, arrows ? 'arrows' : 'pages'));
    const { rows, text: typed } = spec;
    const text = once(() =>
      said(
        typed &&
          ((now): Text => ({
            field: typed.field(now),
            retype: (field) => typed.retype(now, field),
          })),
      ),
    );
    const base: Given = {
      state,
      view,
      laid,
      text,
      rows: rows ? () => said(rows) : null,
      isText: () => page().kind === 'page',
      back: () => spec.back(said(spec.draft) ?? state, view),
      asked: () => said(spec.asks),
    };
    const bound = (keys: readonly Key<Given>[]) => keys.map((key) => bindKey(key, base));
    const own = () => said((now) => spec.keys.map((key) => bindKey(key, now))) ?? [];
    return {
      state,
      keys: once(() =>
        withOwn([...bound(given.first), ...own(), ...bound(given.last)], state.presses),
      ),
      laid,
      read: () => readPage(state, page()),
      text,
      mustSee: () => said(spec.mustSee),
      steadied: () => {
        const list = spec.steady && rows ? said(rows) : null;
        const held = view.order !== undefined && 'here' in view && view.here === list?.marked;
        if (list === null || held) return state;
        const { order = list.names } = view;
        return { ...state, view: { ...list.mark(list.marked), order } };
      },
      greeted: () => said(spec.greeting) ?? state,
      kept: () => said(spec.draft) ?? state,
      asked: () => said(spec.asks),
      after: spec.after ?? {},
      refused: spec.refused ?? null,
    };
  }
  return { keys: [...given.first, ...spec.keys, ...given.last], open };
}

/** A screen that lies over another one: back leads there. */
export function screenOver<V extends View & { under: View }, H>(spec: Spec<V, H>): Screen<V> {
  return screen({ ...spec, back: (state, view) => show(state, view.under) });
}

/** Worked out when it is first asked for. */
function once<T>(make: () => T): () => T {
  let made: { value: T } | null = null;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

/** A row of the table of keys: its presses, its words, when it holds, and what it does. */
import type { Press } from '../kit/press.ts';
import type { Updated } from './state.ts';

export interface KeyWords {
  /** Its name: rows of two screens that are called the same are the same key. */
  id: string;
  /** Presses that do it; the first is the one at the foot. */
  presses: readonly Press[];
  /** In the list of keys. */
  help: string;
  /** As written in the list of keys, where `presses` alone do not say it. */
  shown?: string;
  /** Works where nothing can be shown. */
  always?: true;
  /** Does not wait for what was asked for before. */
  atOnce?: true;
  /** Overrules what stops: it does not count as a letter of a text that is typed blind. */
  alone?: true;
  /** Says that the press does nothing here: what comes right behind it does nothing either. */
  dropsRest?: true;
  /** Never left out at the foot: all other keys are found from there. */
  leadsOn?: true;
}

/** `H` is what is known where it is pressed. */
export interface Key<H> extends KeyWords {
  /** At the foot; empty: only in the list of keys. */
  label: string | ((here: H) => string);
  /** Whether it holds just now. */
  holds?: (here: H) => boolean;
  /** Presses that count only once the key was let go: a key that is held down answers no question. */
  anew?: readonly Press[] | ((here: H) => readonly Press[]);
  /** Takes other presses as well: letters of kinds, digits, text. These come before all plain presses. */
  takes?: (here: H, press: Press) => boolean;
  does: (here: H, press: Press) => Updated;
}

/** A row in one state. */
export interface HeldKey extends KeyWords {
  label(): string;
  holds(): boolean;
  anew: readonly Press[];
  takes: ((press: Press) => boolean) | null;
  does(press: Press): Updated;
}

export function bindKey<H>(key: Key<H>, here: H): HeldKey {
  const { label, holds, anew, takes, does, ...words } = key;
  return {
    ...words,
    label: () => (typeof label === 'string' ? label : label(here)),
    holds: () => holds?.(here) ?? true,
    get anew() {
      return typeof anew === 'function' ? anew(here) : (anew ?? []);
    },
    takes: takes ? (press) => takes(here, press) : null,
    does: (press) => does(here, press),
  };
}

/** Marks the bolt in the hand, or leaves a page that only tells: the most that one press of a pedal too many can do. */
export const GO: readonly Press[] = ['space', 'enter'];
/** Answers, ticks, passes, goes on to the next thing. Not by Space, which may be held down. */
export const ENTER: readonly Press[] = ['enter'];

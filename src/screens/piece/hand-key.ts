/** What is typed about the bolt in the hand, on the way off and on the way on. */

import { type HandRead, lettersOf, typedHand } from '../../plan/typed/hand.ts';
import type { Key } from '../base/key.ts';
import { say, stay, toStep } from '../base/moves.ts';
import type { State } from '../base/state.ts';
import { pressHand } from './hand-press.ts';
import { type OnPiece, onPiece, type StepOf, type StepView } from './step.ts';

export type OnHand<S extends 'off' | 'on' = 'off' | 'on'> = OnPiece<S> & {
  /** Letters of kinds in this job. */
  letters: readonly string[];
  /** What is in the hand. */
  hand: HandRead;
};

export function onHand<S extends 'off' | 'on'>(state: State, view: StepView<S>): OnHand<S> | null {
  const here = onPiece(state, view);
  if (!here) return null;
  const letters = lettersOf(here.job);
  const typed: StepOf<'off' | 'on'> = view.step;
  return { ...here, letters, hand: typedHand(typed.hand, here.job, letters) };
}

/** What lies under the head is being typed; a hand that was marked already says it. */
function isOpen(step: StepOf<'off' | 'on'>): boolean {
  return step.hand.includes('+') && (step.step === 'off' || step.fresh);
}

function pressed({ step, job, letters }: OnHand, press: string): string | null {
  return pressHand(step.hand, press, job, letters, isOpen(step));
}

export const handKey: Key<OnHand> = {
  id: 'hand',
  presses: [],
  label: '',
  help: 'what is in the hand: the letter of its kind, or its length',
  shown: 'letters, + and .25',
  takes: (here, press) => pressed(here, press) !== null,
  does: (here, press) => {
    const { state, step } = here;
    const hand = pressed(here, press);
    if (hand === null) return stay(state);
    const typed = { ...step, hand, typed: '' };
    return toStep(state, typed.step === 'on' ? { ...typed, fresh: true } : typed);
  },
};

/** No unit begins so, and where two digits stand `o` is no slip for a nought: the keys that a hole offers go on. */
function goesOn(hand: string, press: string): boolean {
  return press === 'u' || (press === 'o' && /\d\d$/.test(hand));
}

/** A dot opens a length: a letter behind it is no kind and no key, but for the one that marks all of that length. */
export const noLengthKey: Key<OnHand> = {
  id: 'no-length',
  presses: [],
  label: '',
  help: 'no length: it marks nothing',
  shown: 'a letter behind .',
  dropsRest: true,
  takes: ({ state, step, hand }, press) => {
    const typed = step.hand.startsWith('.') && (step.step === 'off' || step.fresh);
    // Once a hole is pointed at, a letter is behind its number.
    if (!typed || step.typed !== '' || step.hand.includes('+') || !/^\p{L}$/u.test(press))
      return false;
    if (hand.is === 'length' && goesOn(step.hand, press)) return false;
    // Behind a whole length it may be the next thing that somebody says, but not in one breath: `.25mm`.
    if (hand.is === 'length' && !state.soon) return press === 'a' && step.step === 'off';
    return !(press === 'a' && step.step === 'on' && hand.is === 'length');
  },
  does: ({ state, step }, press) =>
    say(
      state,
      `${step.hand}${press} is no length: digits stand behind the dot, and " makes them inches. Backspace takes it out.`,
    ),
};

/** A letter that is neither a kind nor a key is not passed over. */
export const noKindKey: Key<OnHand> = {
  id: 'no-kind',
  // Without those that every screen has, and those that are never another key.
  presses: [...'bcdegijklmnoprstuvwxy'],
  label: '',
  help: 'a letter that is no kind of this job: says how it becomes one',
  shown: 'a letter',
  dropsRest: true,
  does: ({ state, step }, press) => {
    const how =
      step.step === 'off'
        ? 'Tab types the row: a new letter there makes its kind'
        : 'Esc, then . at its hole says what belongs there';
    return say(
      state,
      `${press.toUpperCase()} is no kind of this job yet. ${how}; a length is said as .25`,
    );
  },
};

/** Which presses a step takes by what they are: text, letters of kinds, digits of holes. */
import type { Trouble } from '../../model/types.ts';
import { pressDigit } from '../kit/digits.ts';
import { type Field, pressField } from '../kit/field.ts';
import type { Press } from '../kit/press.ts';
import { pressHand } from '../now/hand.ts';
import { names } from '../now/piece-now.ts';
import { at } from './moves.ts';
import type { State } from './state.ts';

/** The field that is being typed in. */
export function typing(state: State): Field | null {
  const { view } = state;
  if (view.screen === 'field') return view.field;
  return view.screen === 'piece' && view.step.step === 'off-row' ? view.step.field : null;
}

export function takesText(state: State, press: Press): boolean {
  const field = typing(state);
  return field !== null && pressField(field, press) !== null;
}

export function takesHand(state: State, press: Press): boolean {
  const here = at(state);
  const step = here?.view.step;
  if (!here || (step?.step !== 'off' && step?.step !== 'on')) return false;
  return pressHand(step.hand, press, here.job) !== null;
}

export function takesDigit(state: State, press: Press): boolean {
  const here = at(state);
  const step = here?.view.step;
  if (!here || !step || !('typed' in step)) return false;
  return pressDigit(step.typed, press, names(here.piece.holes)) !== null;
}

/** What can be wrong with a hole or its bolt, in the order in which it is offered, each with its letter. */
export const CHOICES: readonly { letter: Press; trouble: Trouble; say: string }[] = [
  { letter: 's', trouble: 'stuck', say: 'stuck, will not come' },
  { letter: 'r', trouble: 'rounded', say: 'head rounded' },
  { letter: 'b', trouble: 'sheared', say: 'broken off: sheared' },
  { letter: 'd', trouble: 'stud', say: 'the stud came out with it' },
  { letter: 'p', trouble: 'pulled', say: 'thread pulled: turns without tightening' },
  { letter: 'e', trouble: 'empty', say: 'empty: there was no bolt in it' },
];

export function takesChoice(_state: State, press: Press): boolean {
  return CHOICES.some((c) => c.letter === press);
}

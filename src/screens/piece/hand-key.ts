/** What is typed about the bolt in the hand, on the way off and on the way on. */
import type { Key } from '../base/key.ts';
import { stay, toStep } from '../base/moves.ts';
import { pressHand } from '../now/hand.ts';
import type { OnPiece } from './step.ts';

export const handKey: Key<OnPiece<'off' | 'on'>> = {
  id: 'hand',
  presses: [],
  label: '',
  help: 'what is in the hand: the letter of its kind, or its length',
  shown: 'letters, + and .25',
  takes: ({ step, job }, press) => pressHand(step.hand, press, job) !== null,
  does: ({ state, step, job }, press) => {
    const hand = pressHand(step.hand, press, job);
    if (hand === null) return stay(state);
    const typed = { ...step, hand, typed: '' };
    return toStep(state, typed.step === 'on' ? { ...typed, fresh: true } : typed);
  },
};

/** A screen of a piece: one step, what is known there, and what all steps have in common. */
import { LOOK } from '../base/enter.ts';
import { type At, at, toStep } from '../base/moves.ts';
import { type Screen, type Spec, screen } from '../base/screen.ts';
import type { PieceStep, PieceView, State, Updated } from '../base/state.ts';
import { ON_A_PIECE, refusedOnPiece } from './after.ts';

export type StepName = PieceStep['step'];
export type StepOf<S extends StepName> = Extract<PieceStep, { step: S }>;
export type StepView<S extends StepName> = PieceView & { step: StepOf<S> };

interface OnStep<T extends PieceStep> extends At {
  state: State;
  step: T;
}
export type OnPiece<S extends StepName = StepName> = OnStep<StepOf<S>>;

export function onPiece<S extends StepName>(state: State, view: StepView<S>): OnPiece<S> | null {
  const here = at(state);
  return here && { ...here, state, step: view.step };
}

/** Where the holes are shown, and one is lit: what the next key is about. */
interface OnLit<T extends PieceStep> extends OnStep<T> {
  lit: string | null;
}
export type OnHoles<S extends StepName = StepName> = OnLit<StepOf<S>>;

/** Out of a question where it was asked, else to the piece as it stands. */
function back(state: State, { step }: PieceView): Updated {
  return toStep(state, 'back' in step ? step.back : LOOK);
}

export function stepScreen<V extends PieceView, H>(
  spec: Spec<V, H> & { back?: (state: State, view: V) => Updated },
): Screen<V> {
  return screen({ back, after: ON_A_PIECE, refused: refusedOnPiece, ...spec });
}

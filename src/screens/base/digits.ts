/** Digits of a hole go on with the very next press; once anything else is pressed, a number begins anew. */
import type { PieceStep, State, View } from './state.ts';

/** The key that takes them. */
export const POINT = 'point';

export function withoutDigits(state: State): State {
  const view = plainView(state.view);
  return view === state.view ? state : { ...state, view };
}

/** With what lies under it, which one comes back to. */
function plainView(view: View): View {
  if (view.screen === 'piece') {
    const step = plainStep(view.step);
    return step === view.step ? view : { ...view, step };
  }
  if (!('under' in view)) return view;
  const under = plainView(view.under);
  return under === view.under ? view : ({ ...view, under } as View);
}

function plainStep(step: PieceStep): PieceStep {
  if ('typed' in step) return step.typed === '' ? step : { ...step, typed: '' };
  if (!('back' in step)) return step;
  const back = plainStep(step.back);
  return back === step.back ? step : { ...step, back };
}

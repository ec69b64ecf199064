/** A piece: the screen of each of its steps. */
import type { Screen } from '../base/screen.ts';
import type { PieceView } from '../base/state.ts';
import { answerScreen } from './answer.ts';
import { countScreen } from './count.ts';
import { lookScreen } from './look.ts';
import { offScreen } from './off.ts';
import { onScreen } from './on.ts';
import { readScreen } from './read.ts';
import { rowScreen } from './row.ts';
import { settleScreen } from './settle.ts';
import type { StepName, StepView } from './step.ts';
import { stopScreen, sureScreen } from './stop.ts';
import { tightScreen } from './tight.ts';
import { adviceScreen, troubleScreen } from './trouble.ts';
import { unmarkScreen } from './unmark.ts';

const STEPS: { readonly [S in StepName]: Screen<StepView<S>> } = {
  look: lookScreen,
  read: readScreen,
  off: offScreen,
  'off-row': rowScreen,
  'off-count': countScreen,
  settle: settleScreen,
  on: onScreen,
  tight: tightScreen,
  trouble: troubleScreen,
  advice: adviceScreen,
  unmark: unmarkScreen,
  answer: answerScreen,
  stop: stopScreen,
  sure: sureScreen,
};

/** The keys of each step: those of two steps never meet. */
export const STEP_KEYS = Object.values(STEPS).map((step) => step.keys);

export const pieceScreen: Screen<PieceView> = {
  keys: STEP_KEYS.flat(),
  // The types of the record say that this screen is for this step.
  open: (state, view) => (STEPS[view.step.step] as Screen<PieceView>).open(state, view),
};

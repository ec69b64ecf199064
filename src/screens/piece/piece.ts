/** A piece: the screen of each of its steps. */
import type { Screen } from '../base/screen.ts';
import type { PieceView } from '../base/state.ts';
import { answer } from './answer.ts';
import { count } from './count.ts';
import { look } from './look.ts';
import { off } from './off.ts';
import { on } from './on.ts';
import { read } from './read.ts';
import { row } from './row.ts';
import { settle } from './settle.ts';
import type { StepName, StepView } from './step.ts';
import { stop, sure } from './stop.ts';
import { tight } from './tight.ts';
import { advice, trouble } from './trouble.ts';

const STEPS: { readonly [S in StepName]: Screen<StepView<S>> } = {
  look,
  read,
  off,
  'off-row': row,
  'off-count': count,
  settle,
  on,
  tight,
  trouble,
  advice,
  answer,
  stop,
  sure,
};

export const piece: Screen<PieceView> = {
  keys: Object.values(STEPS).flatMap((step) => step.keys),
  // Each step has the screen that is made for it.
  open: (state, view) => (STEPS[view.step.step] as Screen<PieceView>).open(state, view),
};

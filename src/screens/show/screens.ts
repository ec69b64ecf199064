/** The list of screens: one line each. The table of keys, presses, pictures and what marks lead to come from it. */
import { fieldScreen } from '../ask/field.ts';
import type { KeyWords } from '../base/key.ts';
import type { Open, Screen } from '../base/screen.ts';
import type { State, View } from '../base/state.ts';
import { bench, wait } from '../bench/bench.ts';
import { draw } from '../draw/draw.ts';
import { faults, unsaved } from '../file/faults.ts';
import { gate } from '../gate/gate.ts';
import { jobScreen } from '../job/job.ts';
import { within } from '../job/within.ts';
import { known } from '../known/known.ts';
import { note } from '../note/note.ts';
import { parts } from '../parts-list/parts-list.ts';
import { piece } from '../piece/piece.ts';
import { round } from '../tasks/round.ts';
import { taskScreen } from '../tasks/task.ts';
import { testsList } from '../tasks/tests-list.ts';
import { listOfKeys } from './help.ts';

const SCREENS: { readonly [S in View['screen']]: Screen<Extract<View, { screen: S }>> } = {
  wait,
  bench,
  faults,
  unsaved,
  note,
  job: jobScreen,
  piece,
  gate,
  parts,
  task: taskScreen,
  tests: testsList,
  round,
  within,
  draw,
  known,
  field: fieldScreen,
  keys: listOfKeys(openOf),
};

/** The one table of keys: all rows of all screens, each once. */
export const KEYS: readonly KeyWords[] = [
  ...new Map(
    Object.values(SCREENS)
      .flatMap((screen) => screen.keys)
      .map((key) => [key.id, key]),
  ).values(),
];

let last: Open | null = null;

/**
 * The screen of this state. Kept until another state comes: so what is asked of a state is worked out once, for its
 * picture and for the key that is pressed on it.
 */
export function openOf(state: State): Open {
  if (last?.state !== state) {
    // Each view has the screen that is made for it.
    last = (SCREENS[state.view.screen] as Screen).open(state, state.view);
  }
  return last;
}

/** The list of screens: one line each. The table of keys, presses, pictures and what marks lead to come from it. */
import { addScreen } from '../add/add.ts';
import { fieldScreen } from '../ask/field.ts';
import type { KeyWords } from '../base/key.ts';
import type { Open, Screen } from '../base/screen.ts';
import type { State, View } from '../base/state.ts';
import { benchScreen, waitScreen } from '../bench/bench.ts';
import { drawScreen } from '../draw/draw.ts';
import { dueScreen } from '../due/due.ts';
import { faultsScreen, unsavedScreen } from '../file/faults.ts';
import { findScreen } from '../find/find.ts';
import { gateScreen } from '../gate/gate.ts';
import { jobScreen } from '../job/job.ts';
import { withinScreen } from '../job/within.ts';
import { knownScreen } from '../known/known.ts';
import { lastScreen } from '../last/last.ts';
import { noteScreen } from '../note/note.ts';
import { paperScreen } from '../paper/paper.ts';
import { photosScreen } from '../paper/photos.ts';
import { partsScreen } from '../parts-list/parts-list.ts';
import { pieceScreen, STEP_KEYS } from '../piece/piece.ts';
import { roundScreen } from '../tasks/round.ts';
import { taskScreen } from '../tasks/task.ts';
import { testsScreen } from '../tasks/tests-list.ts';
import { reachScreen } from '../tasks/while-open.ts';
import { startsScreen } from '../trace/starts.ts';
import { traceScreen } from '../trace/trace.ts';
import { weighScreen } from '../trace/weigh.ts';
import { listOfKeys } from './help.ts';

const SCREENS: { readonly [S in View['screen']]: Screen<Extract<View, { screen: S }>> } = {
  wait: waitScreen,
  bench: benchScreen,
  find: findScreen,
  last: lastScreen,
  due: dueScreen,
  faults: faultsScreen,
  unsaved: unsavedScreen,
  note: noteScreen,
  job: jobScreen,
  piece: pieceScreen,
  gate: gateScreen,
  parts: partsScreen,
  task: taskScreen,
  tests: testsScreen,
  round: roundScreen,
  within: withinScreen,
  paper: paperScreen,
  photos: photosScreen,
  draw: drawScreen,
  known: knownScreen,
  add: addScreen,
  trace: traceScreen,
  starts: startsScreen,
  weigh: weighScreen,
  'within-reach': reachScreen,
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

/** The keys of each screen, to see which of them can meet. */
export const KEYS_BY_SCREEN: readonly (readonly KeyWords[])[] = Object.values(SCREENS).flatMap(
  (screen) => (screen === pieceScreen ? STEP_KEYS : [screen.keys]),
);

let last: Open | null = null;

/**
 * The screen of this state. Kept until another state comes: so what is asked of a state is worked out once, for its
 * picture and for the key that is pressed on it.
 */
export function openOf(state: State): Open {
  if (last?.state !== state) {
    // The types of the record say that this screen is for this view.
    last = (SCREENS[state.view.screen] as Screen).open(state, state.view);
  }
  return last;
}

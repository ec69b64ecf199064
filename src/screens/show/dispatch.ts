/** From a press to what it does, by the one table of keys. */

import { fieldActs, retype } from '../ask/field.ts';
import type { Act } from '../base/act.ts';
import { say, stay } from '../base/moves.ts';
import { isTooSmall } from '../base/page.ts';
import type { State, Updated } from '../base/state.ts';
import { typing } from '../base/takes.ts';
import { drawActs } from '../draw/draw.ts';
import { gateActs } from '../gate/gate.ts';
import { benchActs } from '../job/bench.ts';
import { jobActs } from '../job/job.ts';
import { noteActs } from '../job/note.ts';
import { withinActs } from '../job/within.ts';
import { pasteField } from '../kit/field.ts';
import type { Press } from '../kit/press.ts';
import { knownActs } from '../known/known.ts';
import { partsActs } from '../parts-list/parts-list.ts';
import { nameAlikes } from '../piece/alike.ts';
import { answerActs } from '../piece/answer.ts';
import { countActs } from '../piece/count.ts';
import { insideActs } from '../piece/inside.ts';
import { lookActs } from '../piece/look.ts';
import { offActs } from '../piece/off.ts';
import { onActs } from '../piece/on.ts';
import { pointActs } from '../piece/point.ts';
import { readActs } from '../piece/read.ts';
import { rowActs } from '../piece/row.ts';
import { settleActs } from '../piece/settle.ts';
import { stopActs } from '../piece/stop.ts';
import { tightActs } from '../piece/tight.ts';
import { troubleActs } from '../piece/trouble.ts';
import { undoActs } from '../piece/undo.ts';
import { roundActs } from '../tasks/round.ts';
import { taskActs } from '../tasks/task.ts';
import { testsActs } from '../tasks/tests-list.ts';
import type { KeyId } from './keys.ts';
import { leaveActs } from './leave.ts';
import { listActs } from './lists.ts';
import { keyOf } from './which.ts';

const ACTS: Readonly<Record<KeyId, Act>> = {
  ...answerActs,
  ...benchActs,
  ...countActs,
  ...drawActs,
  ...fieldActs,
  ...gateActs,
  ...insideActs,
  ...jobActs,
  ...knownActs,
  ...partsActs,
  ...leaveActs,
  ...listActs,
  ...lookActs,
  ...noteActs,
  ...offActs,
  ...onActs,
  ...pointActs,
  ...readActs,
  ...roundActs,
  ...rowActs,
  ...settleActs,
  ...stopActs,
  ...taskActs,
  ...testsActs,
  ...tightActs,
  ...troubleActs,
  ...undoActs,
  ...withinActs,
};

/** Only leaving works where nothing can be shown. */
const ALWAYS: readonly KeyId[] = ['quit', 'leave'];

export function press(state: State, pressed: Press): Updated {
  const said = state.quiet === null ? state : { ...state, quiet: null };
  const id = keyOf(said, pressed);
  if (id === null || (isTooSmall(state) && !ALWAYS.includes(id))) return stay(said);
  return nameAlikes(ACTS[id](said, pressed));
}

export function paste(state: State, text: string): Updated {
  const field = typing(state);
  if (field === null) return say(state, 'A paste counts only where a text is asked for.');
  return retype({ ...state, quiet: null }, pasteField(field, text));
}

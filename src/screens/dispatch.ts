/** From a press to what it does, by the one table of keys. */
import type { Act } from './act.ts';
import { nameAlikes } from './alike.ts';
import { answerActs } from './answer.ts';
import { benchActs } from './bench.ts';
import { countActs } from './count.ts';
import { drawActs } from './draw.ts';
import { fieldActs, retype } from './field.ts';
import { gateActs } from './gate.ts';
import { insideActs } from './inside.ts';
import { jobActs } from './job.ts';
import type { KeyId } from './keys.ts';
import { knownActs } from './known.ts';
import { leaveActs } from './leave.ts';
import { listActs } from './lists.ts';
import { lookActs } from './look.ts';
import { say, stay } from './moves.ts';
import { noteActs } from './note.ts';
import { offActs } from './off.ts';
import { onActs } from './on.ts';
import { isTooSmall } from './page.ts';
import { pasteField } from './parts/field.ts';
import { partsActs } from './parts-list.ts';
import { pointActs } from './point.ts';
import { readActs } from './read.ts';
import { roundActs } from './round.ts';
import { rowActs } from './row.ts';
import { settleActs } from './settle.ts';
import type { Press, State, Updated } from './state.ts';
import { stopActs } from './stop.ts';
import { typing } from './takes.ts';
import { taskActs } from './task.ts';
import { testsActs } from './tests-list.ts';
import { tightActs } from './tight.ts';
import { troubleActs } from './trouble.ts';
import { undoActs } from './undo.ts';
import { keyOf } from './which.ts';
import { withinActs } from './within.ts';

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

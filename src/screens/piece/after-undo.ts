/** After a mark of a piece was taken back: where it had been made; or where it stands again, on from there. */
import { sayEntry } from '../../job/fold/say-entry.ts';
import type { Entry } from '../../model/types.ts';
import { LOOK, OFF, ON, TIGHT } from '../base/enter.ts';
import { type At, at, stay, toStep } from '../base/moves.ts';
import type { MadeMark, WishTo } from '../base/screen.ts';
import type { PieceStep, State, Updated } from '../base/state.ts';
import { isOfGate, takenBack, undone } from '../base/undo.ts';
import { onlyStuckLeft, passNow, toFill } from '../now/piece-now.ts';

export function afterUndo(state: State, { wish }: MadeMark<WishTo<'undo'>>): Updated {
  const here = at(state);
  const entry = undone(state, wish);
  if (!here || !entry) return stay(state);
  if (entry.verb === 'undo') return standsAgain(state, entry.value);
  if (entry.piece !== here.key) return takenBack(state, entry);
  const said = takenBack(state, entry).state;
  const { step } = here.view;
  if (!isOfGate(entry)) return toStep(said, stepFor(entry, step));
  // A gate is asked again, so one does not go on with its bolts.
  return here.key === entry.piece && step.step === 'on' ? toStep(said, LOOK) : stay(said);
}

/** On from there, as after the mark itself. */
function standsAgain(state: State, id: string): Updated {
  const here = at(state);
  const entry = here?.job.entries.find((e) => e.id === id);
  if (!here || !entry) return stay(state);
  const quiet = `It stands again: ${sayEntry(entry, here.job)}.`;
  return toStep({ ...state, quiet }, stepOn(entry, here));
}

function stepOn(entry: Entry, { job, piece, view }: At): PieceStep {
  switch (entry.verb) {
    case 'out':
      return onlyStuckLeft(piece) ? { step: 'off-count' } : OFF;
    case 'in':
      return toFill(piece).length === 0 ? LOOK : ON;
    case 'tight':
      return passNow(piece, job.upper.kinds) === null ? LOOK : TIGHT;
    case 'removed':
    case 'fitted':
    case 'settle':
      return LOOK;
    default:
      return 'back' in view.step ? view.step.back : view.step;
  }
}

function stepFor(entry: Entry, now: PieceStep): PieceStep {
  const here = entry.hole?.length === 1 ? (entry.hole[0] ?? null) : null;
  switch (entry.verb) {
    case 'out':
      return { step: 'off', here, typed: '', hand: '' };
    case 'in':
      return now.step === 'on' ? { ...now, here: null, typed: '', fresh: false } : ON;
    case 'tight':
      return { step: 'tight', here, typed: '' };
    case 'removed':
      return { step: 'off-count' };
    case 'fitted':
      return LOOK;
    case 'settle':
      return here === null ? LOOK : { step: 'settle', here };
    default:
      return 'back' in now ? now.back : now;
  }
}

/** Taking back: what is in the hand first, then the last mark of this piece, one after the other. */
import type { Entry, Job } from '../job/types.ts';
import type { Acts } from './act.ts';
import { LOOK, ON } from './enter.ts';
import { at, record, say, stay, toStep } from './moves.ts';
import { lessHand } from './parts/hand.ts';
import { sayEntry } from './parts/say-entry.ts';
import type { State, Step, Updated } from './state.ts';

/** The last mark of a piece that counts; notes of undone marks are no marks. */
export function lastMarkOn(job: Job, piece: string): Entry | null {
  return (
    job.entries.findLast((e) => e.piece === piece && e.verb !== 'undo' && job.living.has(e.id)) ??
    null
  );
}

export const undoActs = {
  undo: (state) => {
    const here = at(state);
    if (!here) return stay(state);
    const { step } = here.view;
    const inHand = step.step === 'off' || (step.step === 'on' && step.fresh);
    if (inHand && step.hand !== '') {
      return toStep(state, { ...step, hand: lessHand(step.hand) });
    }
    const last = lastMarkOn(here.job, here.key);
    if (!last) return say(state, 'Nothing of this piece is left to take back.');
    if (!state.mine.includes(last.id)) {
      return toStep(state, { step: 'sure', id: last.id, back: step });
    }
    return record(state, { do: 'undo', id: last.id });
  },
} satisfies Acts;

/** After a mark was taken back: where it had been made. */
export function afterUndo(state: State, id: string): Updated {
  const here = at(state);
  const entry = here?.job.entries.find((e) => e.id === id);
  if (!here || !entry) return stay(state);
  const quiet = `Taken back: ${sayEntry(entry)}.`;
  const step = stepFor(entry, here.view.step);
  return toStep({ ...state, quiet }, step);
}

function stepFor(entry: Entry, now: Step): Step {
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

/** Taking back: what is in the hand first, then the last mark of this piece, one after the other. */
import { sayEntry } from '../../job/fold/say-entry.ts';
import type { Entry, Job } from '../../model/types.ts';
import type { Acts } from '../base/act.ts';
import { LOOK, OFF, ON, TIGHT } from '../base/enter.ts';
import { type At, at, record, say, stay, toStep } from '../base/moves.ts';
import type { State, Step, Updated } from '../base/state.ts';
import { lessHand } from '../now/hand.ts';
import { onlyStuckLeft, passNow, toFill } from '../now/piece-now.ts';

/** The last mark of a piece that counts; notes of undone marks are no marks. */
export function lastMarkOn(job: Job, piece: string): Entry | null {
  return (
    job.entries.findLast((e) => e.piece === piece && e.verb !== 'undo' && job.living.has(e.id)) ??
    null
  );
}

/** What an undo of this sitting took back on this piece, if nothing was marked on it since: the latest first. */
function redoable(state: State): { undo: Entry; took: Entry } | null {
  const here = at(state);
  if (!here) return null;
  const { entries, living } = here.job;
  for (let i = entries.length - 1; i >= 0; i -= 1) {
    const e = entries[i];
    if (!e || !living.has(e.id)) continue;
    if (e.verb !== 'undo') {
      if (e.piece === here.key) return null;
      continue;
    }
    const took = entries.find((t) => t.id === e.value);
    if (took?.piece !== here.key) continue;
    return state.mine.includes(e.id) ? { undo: e, took } : null;
  }
  return null;
}

export function canRedo(state: State): boolean {
  return redoable(state) !== null;
}

export const undoActs = {
  redo: (state) => {
    const last = redoable(state);
    return last ? record(state, { do: 'undo', id: last.undo.id }) : stay(state);
  },
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
  const job = state.open?.job;
  const entry = job?.entries.find((e) => e.id === id);
  if (!job || !entry) return stay(state);
  if (AT_GATES.includes(entry.verb))
    return afterGateUndo(state, entry, `Taken back: ${sayEntry(entry, job)}.`);
  if (!here) return say(state, `Taken back: ${sayEntry(entry, job)}.`);
  if (entry.verb === 'undo') return afterRedo(state, entry.value);
  const quiet = `Taken back: ${sayEntry(entry, job)}.`;
  const step = stepFor(entry, here.view.step);
  return toStep({ ...state, quiet }, step);
}

const AT_GATES: readonly string[] = ['seen', 'struck', 'added', 'cleared'];

/** What was seen at a gate is not seen any more: it is asked again, and nothing counts as ticked. */
function afterGateUndo(state: State, entry: Entry, quiet: string): Updated {
  const piece = entry.piece ?? '';
  const read = state.read.filter(
    (mark) => !mark.startsWith('gate ') || mark.split(' ')[2] !== piece,
  );
  const next: State = { ...state, read, quiet };
  const { view } = next;
  if (view.screen === 'gate')
    return stay({ ...next, view: { ...view, ticked: false, here: null } });
  const onIt = view.screen === 'piece' && view.piece === piece && view.step.step === 'on';
  return onIt ? toStep(next, LOOK) : stay(next);
}

/** After a mark stands again: on from there, as after the mark itself. */
function afterRedo(state: State, id: string): Updated {
  const here = at(state);
  const entry = here?.job.entries.find((e) => e.id === id);
  if (!here || !entry) return stay(state);
  const quiet = `It stands again: ${sayEntry(entry, here.job)}.`;
  return toStep({ ...state, quiet }, stepOn(entry, here));
}

function stepOn(entry: Entry, { job, piece, view }: At): Step {
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

/** Taking back: what is in the hand first, then the last mark of this piece, one after the other. */
import { testsOf } from '../../job/fold/tested.ts';
import type { Entry, Job } from '../../model/types.ts';
import type { Key } from '../base/key.ts';
import { requestMark, say, stay, toStep } from '../base/moves.ts';
import type { Updated } from '../base/state.ts';
import { LAST_IS_COUNT, lastIsCount, lastOf, whereLast } from '../base/undo.ts';
import { lessHand } from './hand-press.ts';
import type { OnPiece } from './step.ts';
import { giveBack } from './unmark.ts';

/** The last mark of a piece that counts; notes of undone marks are no marks, nor is how many bolts it has. */
function lastMarkOn(job: Job, piece: string): Entry | null {
  const counts = job.entries.filter(
    (e) => e.piece === piece && e.verb !== 'undo' && !isCount(e) && job.living.has(e.id),
  );
  return lastOf(counts);
}

const isCount = ({ verb, value }: Entry): boolean => verb === 'written' && value === 'bolts';

/** A test of this piece that was done after its last mark: what was seen there goes first. */
function testBehind(job: Job, key: string, last: Entry): Entry | null {
  const tests = new Set(testsOf(key, job.tasks).map((task) => task.spec.key));
  return (
    job.entries
      .slice(job.entries.indexOf(last) + 1)
      .findLast((e) => e.verb === 'done' && tests.has(e.task ?? '') && job.living.has(e.id)) ?? null
  );
}

function undo(here: OnPiece): Updated {
  const { state, job, key, step } = here;
  const inHand = step.step === 'off' || (step.step === 'on' && step.fresh);
  if (inHand && step.hand !== '') return toStep(state, { ...step, hand: lessHand(step.hand) });
  const given = giveBack(here);
  if (given) return given;
  const own = lastMarkOn(job, key);
  const last = own && (testBehind(job, key, own) ?? own);
  if (!last && lastIsCount(state, key)) return say(state, LAST_IS_COUNT);
  if (!last) return say(state, `Nothing of this piece is left to take back. ${whereLast(state)}`);
  if (!state.mine.includes(last.id)) {
    return toStep(state, { step: 'sure', id: last.id, back: step });
  }
  return requestMark(state, { do: 'undo', id: last.id });
}

/** The undo of this sitting that took back the last mark of this piece, if nothing was marked on it since. */
function lastUndo({ state, job: { entries, living }, key }: OnPiece): Entry | null {
  for (let i = entries.length - 1; i >= 0; i -= 1) {
    const e = entries[i];
    if (!e || !living.has(e.id)) continue;
    if (e.verb !== 'undo') {
      if (e.piece === key) return null;
      continue;
    }
    const took = entries.find((t) => t.id === e.value);
    if (took?.piece !== key) continue;
    return state.mine.includes(e.id) ? e : null;
  }
  return null;
}

export const undoKey: Key<OnPiece> = {
  id: 'undo',
  presses: ['backspace'],
  label: 'undo',
  help: 'take the last thing back',
  does: undo,
};

export const redoKey: Key<OnPiece> = {
  id: 'redo',
  presses: ['y', ','],
  label: 'redo',
  help: 'what was just taken back in this sitting stands again',
  holds: (here) => giveBack(here) !== null || lastUndo(here) !== null,
  does: (here) => {
    const given = giveBack(here);
    if (given) return given;
    const last = lastUndo(here);
    return last ? requestMark(here.state, { do: 'undo', id: last.id }) : stay(here.state);
  },
};

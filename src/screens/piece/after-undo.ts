/** After a mark of a piece was taken back: where it had been made; or where it stands again, on from there. */
import { sayEntry } from '../../job/fold/say-entry.ts';
import type { Entry, Verb } from '../../model/types.ts';
import { onlyStuckLeft, passUnderWay, toFill } from '../../plan/piece/piece-now.ts';
import { LOOK, OFF, ON, TIGHT } from '../base/enter.ts';
import { type At, at, stay, toStep } from '../base/moves.ts';
import type { MadeMark, WishTo } from '../base/screen.ts';
import type { PieceStep, State, Updated } from '../base/state.ts';
import { isOfGate, takenBack, undone } from '../base/undo.ts';

/** Steps to which a gate leads. */
const BEHIND_GATE: readonly PieceStep['step'][] = ['off', 'off-count', 'on'];

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
  return BEHIND_GATE.includes(step.step) ? toStep(said, LOOK) : stay(said);
}

/** On from there, as after the mark itself. */
function standsAgain(state: State, id: string): Updated {
  const here = at(state);
  const entry = here?.job.entries.find((e) => e.id === id);
  if (!here || !entry) return stay(state);
  const quiet = `It stands again: ${sayEntry(entry, here.job)}.`;
  return toStep({ ...state, quiet }, stepOn(entry, here));
}

/** Where a mark leads: on from there once it stands again, and where it was made once it is taken back. */
interface Leads {
  on(here: At): PieceStep;
  back(hole: string | null, now: PieceStep): PieceStep;
}

/** Verbs that are noted from anywhere: one stays where one is. */
const ANYWHERE: Leads = {
  on: ({ view }) => stayAt(view.step),
  back: (_, now) => stayAt(now),
};

const stayAt = (now: PieceStep) => ('back' in now ? now.back : now);

const LEADS: Readonly<Record<Verb, Leads>> = {
  out: {
    on: ({ piece }) => (onlyStuckLeft(piece) ? { step: 'off-count' } : OFF),
    back: (here) => ({ step: 'off', here, typed: '', hand: '' }),
  },
  in: {
    on: ({ piece }) => (toFill(piece).length === 0 ? LOOK : ON),
    back: (_, now) => (now.step === 'on' ? { ...now, here: null, typed: '', fresh: false } : ON),
  },
  tight: {
    on: ({ job, piece }) => (passUnderWay(piece, job.upper.kinds) === null ? LOOK : TIGHT),
    back: (here) => ({ step: 'tight', here, typed: '' }),
  },
  removed: { on: () => LOOK, back: () => ({ step: 'off-count' }) },
  fitted: { on: () => LOOK, back: () => LOOK },
  settle: {
    on: () => LOOK,
    back: (here) => (here === null ? LOOK : { step: 'settle', here }),
  },
  state: ANYWHERE,
  done: ANYWHERE,
  inside: ANYWHERE,
  cleared: ANYWHERE,
  seen: ANYWHERE,
  struck: ANYWHERE,
  added: ANYWHERE,
  written: ANYWHERE,
  renamed: ANYWHERE,
  corrected: ANYWHERE,
  looked: ANYWHERE,
  tried: ANYWHERE,
  listed: ANYWHERE,
  chosen: ANYWHERE,
  figured: ANYWHERE,
  found: ANYWHERE,
  note: ANYWHERE,
  photo: ANYWHERE,
  keep: ANYWHERE,
  taken: ANYWHERE,
  reading: ANYWHERE,
  undo: ANYWHERE,
};

function stepOn(entry: Entry, here: At): PieceStep {
  return LEADS[entry.verb].on(here);
}

function stepFor(entry: Entry, now: PieceStep): PieceStep {
  const hole = entry.hole?.length === 1 ? (entry.hole[0] ?? null) : null;
  return LEADS[entry.verb].back(hole, now);
}

/** What keys are made of: functions from a state to the next one and what is to be done for it. */
import { atHome } from '../../job/fold/piece.ts';
import { barePiece } from '../../job/form/bare.ts';
import type { HoleNow, Job, PieceNow, Wish } from '../../model/types.ts';
import type { PieceStep, PieceView, State, Updated, View } from './state.ts';

export function stay(state: State): Updated {
  return { state, effects: [] };
}

export function say(state: State, quiet: string): Updated {
  return stay({ ...state, quiet });
}

export function show(state: State, view: View): Updated {
  return stay({ ...state, view });
}

/** Asks the loop to record a wish. The mark is shown when its answer has come; until then presses wait. */
export function requestMark(state: State, wish: Wish): Updated {
  if (!state.open) return stay(state);
  return {
    state: { ...state, waiting: { for: 'recorded', wish } },
    effects: [{ do: 'record', file: state.open.file, wish }],
  };
}

/** A screen of the job that is open. */
export interface OnJob<V extends View = View> {
  state: State;
  view: V;
  job: Job;
}

/** Null where no job is open. */
export function onJob<V extends View>(state: State, view: V): OnJob<V> | null {
  return state.open && { state, view, job: state.open.job };
}

/** The piece that is open, with all that its screens need. */
export interface At {
  file: string;
  job: Job;
  key: string;
  piece: PieceNow;
  view: PieceView;
}

/** Null where no piece is open. A piece that the file does not know yet has only its name. */
export function at(state: State): At | null {
  const { open, view } = state;
  if (!open || view.screen !== 'piece') return null;
  const piece = pieceNamed(open.job, view.piece);
  return { ...open, key: view.piece, piece, view };
}

export function pieceNamed(job: Job, key: string): PieceNow {
  return job.pieces.get(key) ?? atHome(barePiece(key));
}

/** The piece at this step, from its first line on. */
export function atStep({ screen, piece, room }: PieceView, step: PieceStep): PieceView {
  return { screen, piece, step, ...(room === undefined ? {} : { room }) };
}

export function toStep(state: State, step: PieceStep): Updated {
  const { view } = state;
  return view.screen === 'piece' ? show(state, atStep(view, step)) : stay(state);
}

/** Where a question about a piece is open, the state that it was asked from. */
export function outOfQuestion(state: State): State {
  const { view } = state;
  if (view.screen !== 'piece' || !('back' in view.step)) return state;
  return { ...state, view: atStep(view, view.step.back) };
}

export function stepNow<S extends PieceStep['step']>(
  state: State,
  step: S,
): Extract<PieceStep, { step: S }> | null {
  const now = state.view.screen === 'piece' ? state.view.step : null;
  return now?.step === step ? (now as Extract<PieceStep, { step: S }>) : null;
}

export function holeNamed(piece: PieceNow | null, name: string | null): HoleNow | null {
  return piece?.holes.find((h) => h.name === name) ?? null;
}

/** The hole that is lit in this step, where a step has one. */
export function hereOf(step: PieceStep): string | null {
  if ('here' in step) return step.here;
  return 'hole' in step ? step.hole : null;
}

/** Something is inside the machine; where a piece is open, behind that one. */
export function isSomethingInside(state: State): boolean {
  const here = at(state);
  const things = state.open?.job.inside ?? [];
  return here ? things.some((i) => i.piece === here.key) : things.length > 0;
}

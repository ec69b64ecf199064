/** What is at hand on a screen: what is added there lands on it. */
import type { TaskSpec } from '../../model/types.ts';
import type { AddTo } from './asks.ts';
import { markedPiece } from './marked.ts';
import type { State, View } from './state.ts';

const NONE: AddTo = { piece: null, hole: null, moment: null };

/** The piece that is open or marked, and the hole that was pointed at; else what lies underneath says it. */
export function landsOn(state: State, view: View = state.view): AddTo {
  switch (view.screen) {
    case 'piece': {
      const { step } = view;
      // A hole that is only the next one was not meant.
      const hole = 'hole' in step ? step.hole : 'typed' in step ? step.here : null;
      return { ...NONE, piece: view.piece, hole };
    }
    case 'gate':
      return { ...NONE, piece: view.piece, moment: view.moment };
    case 'draw':
      return { ...NONE, piece: view.piece };
    case 'known':
      return { ...NONE, piece: 'piece' in view.of ? view.of.piece : ofTask(state, view.of.task) };
    case 'task':
      return { ...NONE, piece: ofTask(state, view.task) };
    // What it may be and what is looked at is of the whole machine.
    case 'trace':
      return NONE;
    case 'job':
      return { ...NONE, piece: markedPiece({ ...state, view }) };
    default:
      return 'under' in view ? { ...landsOn(state, view.under), moment: null } : NONE;
  }
}

/** The first piece that a step of the task is about. */
function ofTask({ open }: State, key: string): string | null {
  const spec = open?.job.tasks.get(key)?.spec;
  const steps = spec ? stepsOf(spec) : [];
  const pieces = steps.map((step) => step.split(' ')[0] ?? '');
  return pieces.find((piece) => open?.job.pieces.has(piece)) ?? null;
}

function stepsOf(spec: TaskSpec): string[] {
  return [...spec.while, ...spec.after, ...spec.before];
}

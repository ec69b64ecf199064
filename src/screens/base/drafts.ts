/** Texts left half written. When the same thing is asked again, they are there again. */
import type { State } from './state.ts';

/** Names that drafts of a piece are kept by. */
export const rowDraft = (piece: string): string => `row ${piece}`;
export const drawingDraft = (piece: string): string => `draw ${piece}`;

/** Of a line that is to be added, wherever that was begun. */
export const ADD_DRAFT = 'add';

/** Of a piece that is named and not in the file yet. */
export const PIECE_DRAFT = 'piece';

/** Of a job that is to be started: it is of the bench, and outlasts the job that is open. */
export const JOB_DRAFT = 'job';

/** Null where nothing was left half written. */
export function draftOf({ bench, drafts }: State, name: string): string | null {
  return (name === JOB_DRAFT ? bench?.begun : drafts[name]) ?? null;
}

export function keepDraft(state: State, name: string, text: string): State {
  if (text === '') return dropDraft(state, name);
  if (name === JOB_DRAFT)
    return state.bench ? { ...state, bench: { ...state.bench, begun: text } } : state;
  return { ...state, drafts: { ...state.drafts, [name]: text } };
}

/** The text was kept or noted, so there is no draft of it any more. */
export function dropDraft(state: State, name: string): State {
  if (name === JOB_DRAFT) {
    if (state.bench?.begun === undefined) return state;
    const { begun: _, ...bench } = state.bench;
    return { ...state, bench };
  }
  if (state.drafts[name] === undefined) return state;
  const { [name]: _, ...drafts } = state.drafts;
  return { ...state, drafts };
}

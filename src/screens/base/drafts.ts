/** Texts that were left half written, by what they are for: they stand there again when the same thing is asked. */
import type { State } from './state.ts';

/** Names that drafts of a piece are kept by. */
export const rowDraft = (piece: string): string => `row ${piece}`;
export const drawingDraft = (piece: string): string => `draw ${piece}`;

/** Null where nothing was left half written. */
export function draftOf(state: State, name: string): string | null {
  return state.drafts[name] ?? null;
}

export function keepDraft(state: State, name: string, text: string): State {
  return { ...state, drafts: { ...state.drafts, [name]: text } };
}

/** It was kept, or noted: nothing is left half written. */
export function dropDraft(state: State, name: string): State {
  if (state.drafts[name] === undefined) return state;
  const { [name]: _, ...drafts } = state.drafts;
  return { ...state, drafts };
}

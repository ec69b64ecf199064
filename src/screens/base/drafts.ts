/** Texts that were left half written: they stand there again when the same thing is asked. */
import { drawingOf, textOf } from '../../piece/drawing.ts';
import { fieldText } from '../kit/field.ts';
import type { Asks, State, View } from './state.ts';
import { typing } from './takes.ts';

/** What a text is for, as a name; null for what is short enough to be typed again. */
function nameOf(asks: Asks): string | null {
  if (asks.ask === 'note') return `note ${asks.piece ?? ''} ${asks.hole ?? ''}`;
  if (asks.ask === 'left' || asks.ask === 'heights') return `${asks.ask} ${asks.piece}`;
  if (asks.ask === 'write') return `write ${asks.piece} ${asks.key}`;
  if (asks.ask === 'truth') {
    const { piece = '', hole = '', task = '', what, text } = asks.figure;
    return `truth ${piece} ${hole} ${task} ${what} ${text}`;
  }
  return asks.ask === 'why' ? 'why' : null;
}

function rowName(piece: string): string {
  return `row ${piece}`;
}

function drawingName(piece: string): string {
  return `draw ${piece}`;
}

function hereName(state: State): string | null {
  const { view } = state;
  if (view.screen === 'field') return nameOf(view.asks);
  if (view.screen === 'draw') return drawingName(view.piece);
  return view.screen === 'piece' && view.step.step === 'off-row' ? rowName(view.piece) : null;
}

export function draftFor(state: State, asks: Asks): string | null {
  const name = nameOf(asks);
  return name === null ? null : (state.drafts[name] ?? null);
}

export function draftOfRow(state: State, piece: string): string {
  return state.drafts[rowName(piece)] ?? '';
}

/** A picture left half drawn, as the text of `map:`; null when there is none. */
export function draftOfDrawing(state: State, piece: string): string | null {
  return state.drafts[drawingName(piece)] ?? null;
}

function keepDrawing(state: State, view: Extract<View, { screen: 'draw' }>): State {
  const text = textOf(view.drawing);
  const map = state.open?.job.pieces.get(view.piece)?.spec.map ?? '';
  // Nothing, or what the file has, is no draft.
  if (text === '' || text === textOf(drawingOf(map))) return dropDraft(state);
  return { ...state, drafts: { ...state.drafts, [drawingName(view.piece)]: text } };
}

/** Keeps what is written in the field, or drawn on the field, that is left. */
export function keepDraft(state: State): State {
  if (state.view.screen === 'draw') return keepDrawing(state, state.view);
  const [name, field] = [hereName(state), typing(state)];
  if (name === null || field === null) return state;
  return { ...state, drafts: { ...state.drafts, [name]: fieldText(field) } };
}

/** It was kept, or noted: nothing is left half written. */
export function dropDraft(state: State): State {
  const name = hereName(state);
  if (name === null || state.drafts[name] === undefined) return state;
  const { [name]: _, ...drafts } = state.drafts;
  return { ...state, drafts };
}

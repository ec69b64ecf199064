/** What would be lost if the program ended in this instant. */
import type { Half } from '../../model/types.ts';
import { keepDraft, PIECE_DRAFT } from '../base/drafts.ts';
import { pieceNamed } from '../base/moves.ts';
import type { State, View } from '../base/state.ts';
import { fieldText } from '../kit/field.ts';
import { openOf } from './screens.ts';

/** The screen that is open, or the one under its list of keys. */
function seen(state: State): State {
  const { view } = state;
  return view.screen === 'keys' ? { ...state, view: view.under } : state;
}

/** Texts being typed, those left half written before, and a mark that is told as not saved. */
export function halfMade(state: State): Half {
  const now = seen(state);
  const wish = now.view.screen === 'unsaved' ? now.view.wish : null;
  const kept = openOf(now).kept();
  const name = onlyNamed(state);
  return { drafts: (name === null ? kept : keepDraft(kept, PIECE_DRAFT, name)).drafts, wish };
}

/** The piece that is open and only named: the file gets it with what is noted of it first. Null: there is none. */
export function onlyNamed({ open, view }: State): string | null {
  let now: View = view;
  while (now.screen !== 'piece' && 'under' in now) now = now.under;
  if (open === null || now.screen !== 'piece' || open.job.pieces.has(now.piece)) return null;
  return pieceNamed(open.job, now.piece).spec.name;
}

/** Said of such a piece when it is left. */
export function onlyNamedSaid(name: string): string {
  return `${name} is not in the file yet: the first that comes off writes it. o takes it up again.`;
}

/** What is typed of a job that is not started yet; null: nothing. It is kept for the bench, not for a job. */
export function begunJob(state: State): string | null {
  return openOf(seen(state)).kept().bench?.begun ?? null;
}

/** The text that is being typed and would be missed: what only looks for something is not. */
export function typedNow(state: State): string {
  const now = seen(state);
  const typed = openOf(now).text();
  return typed === null || now.view.screen === 'find' ? '' : fieldText(typed.field);
}

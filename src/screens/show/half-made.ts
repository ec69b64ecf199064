/** What would be lost if the program ended in this instant. */
import type { Half } from '../../model/types.ts';
import type { State } from '../base/state.ts';
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
  return { drafts: openOf(now).kept().drafts, wish };
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

/** What would be lost if the program ended in this instant. */
import type { Half } from '../../model/types.ts';
import type { State } from '../base/state.ts';
import { openOf } from './screens.ts';

/** Texts being typed, those left half written before, and a mark that is told as not saved. */
export function halfMade(state: State): Half {
  const { view } = state;
  const seen: State = view.screen === 'keys' ? { ...state, view: view.under } : state;
  const wish = seen.view.screen === 'unsaved' ? seen.view.wish : null;
  return { drafts: openOf(seen).kept().drafts, wish };
}

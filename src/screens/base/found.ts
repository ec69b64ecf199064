/** What looking for words led to: taken in where it is still asked for. */

import { fieldText } from '../kit/field.ts';
import { stay } from './moves.ts';
import type { Happening, State, Updated } from './state.ts';

export function foundRead(
  state: State,
  happening: Extract<Happening, { on: 'found' | 'finding' }>,
): Updated {
  const { view } = state;
  // Somebody typed on, or left.
  if (view.screen !== 'find' || fieldText(view.field).trim() !== happening.text) return stay(state);
  if (happening.on === 'finding') {
    const { done, of } = happening;
    return stay({ ...state, view: { ...view, reading: { done, of } } });
  }
  const { found, unread, text } = happening;
  return stay({
    ...state,
    view: { ...view, found, unread, of: text, reading: null, here: null, top: 0 },
  });
}

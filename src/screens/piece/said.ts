/** What the file says of a piece or a hole, beside the next thing to do. */

import { ended } from '../../model/safe.ts';
import type { At } from '../base/moves.ts';
import { both, flow } from '../kit/both.ts';
import { type Line, span } from '../kit/text.ts';

/** The file's tip for this way, and how it is printed where that is not so. */
export function ownTip({ piece }: At, way: 'removal' | 'fitting', columns: number): Line[] {
  const [own] = piece.spec.tip[way];
  return own ? flow([span('Tip: '), ...both(own.text, own.printed)], columns) : [];
}

/** What the file says of this hole alone. */
export function noteOf({ piece }: At, hole: string | null, columns: number): Line[] {
  const note = piece.spec.holes.get(hole ?? '')?.note;
  return note ? flow([span(`${hole}: `), ...both(ended(note.text), note.printed)], columns) : [];
}

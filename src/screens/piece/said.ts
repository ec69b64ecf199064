/** What the file says of a piece or a hole, beside the next thing to do. */
import { printedOf } from '../../job/truth/corrections.ts';
import type { At } from '../base/moves.ts';
import { both, ended, flow } from '../kit/both.ts';
import { type Line, span } from '../kit/text.ts';

/** The file's tip for this way, and how it is printed where that is not so. */
export function ownTip(
  { job, key, piece }: At,
  way: 'removal' | 'fitting',
  columns: number,
): Line[] {
  const own = piece.spec.tip[way][0];
  if (own === undefined) return [];
  return flow([span('Tip: '), ...both(own, printedOf(job, { piece: key }, 'tip', own))], columns);
}

/** What the file says of this hole alone. */
export function noteOf({ job, key, piece }: At, hole: string | null, columns: number): Line[] {
  const note = piece.spec.holes.get(hole ?? '')?.note ?? null;
  if (note === null || hole === null) return [];
  const printed = printedOf(job, { piece: key, hole }, 'note', note);
  return flow([span(`${hole}: `), ...both(ended(note), printed)], columns);
}

/** What the file says of a piece or a hole, beside the next thing to do. */
import { textSaid, textsSaid } from '../../job/truth/corrections.ts';
import type { At } from '../base/moves.ts';
import { both, ended, flow } from '../kit/both.ts';
import { type Line, span } from '../kit/text.ts';

/** The file's tip for this way, and how it is printed where that is not so. */
export function ownTip({ job, key }: At, way: 'removal' | 'fitting', columns: number): Line[] {
  const [own] = textsSaid(job, { piece: key }, 'tip', way);
  return own ? flow([span('Tip: '), ...both(own.text, own.printed)], columns) : [];
}

/** What the file says of this hole alone. */
export function noteOf({ job, key }: At, hole: string | null, columns: number): Line[] {
  const note = hole === null ? null : textSaid(job, { piece: key, hole }, 'note');
  return note ? flow([span(`${hole}: `), ...both(ended(note.text), note.printed)], columns) : [];
}

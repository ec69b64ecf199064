/** Which hole the next key is about. */

import type { At } from '../base/moves.ts';
import { fitting, nextOut, passNow, toFill, unknownOnly } from '../now/piece-now.ts';

/** The lit hole of a step: the one pointed at, else the one that comes next. Null where none is. */
export function litHole({ job, piece, view }: Pick<At, 'job' | 'piece' | 'view'>): string | null {
  const { step } = view;
  if ('here' in step && step.here !== null) return step.here;
  switch (step.step) {
    case 'off':
      return nextOut(piece);
    case 'on': {
      const fits = fitting(job, piece, step.hand)[0];
      const any = step.hand === '' && unknownOnly(piece) ? toFill(piece)[0] : undefined;
      return (fits ?? any)?.name ?? null;
    }
    case 'tight':
      return passNow(piece, job.upper.kinds)?.rest[0] ?? null;
    default:
      return null;
  }
}

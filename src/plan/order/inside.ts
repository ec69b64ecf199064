/** What is inside the machine, as the plan asks for it. */
import { countsOf as counted } from '../../job/fold/inside.ts';
import type { Inside } from '../../model/types.ts';
import type { Lines } from './lines.ts';

export { readThings, sayThing } from '../../job/fold/inside.ts';
export type { Inside } from '../../model/types.ts';

/** What went in, whether it is out again or not: the last count of each thing in each opening. */
export function countedInside(lines: Lines): Inside[] {
  return counted(lines.all);
}

/** What is inside now. */
export function insideOf(lines: Lines): Inside[] {
  return countedInside(lines).filter((thing) => thing.count > 0);
}

/** What is inside the machine, as the plan asks for it. */
import { countsOf as counted } from '../job/inside.ts';
import type { Inside } from '../job/types.ts';
import type { Lines } from './lines.ts';

export { readThings, sayThing } from '../job/inside.ts';
export type { Inside } from '../job/types.ts';

/** What went in, whether it is out again or not: the last count of each thing in each opening. */
export function countsOf(lines: Lines): Inside[] {
  return counted(lines.all);
}

/** What is inside now. */
export function insideOf(lines: Lines): Inside[] {
  return countsOf(lines).filter((thing) => thing.count > 0);
}

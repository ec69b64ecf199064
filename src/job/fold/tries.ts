/** Parts changed to try, and not yet said how that went or where the old one is. */
import { oneLine } from '../../model/safe.ts';
import type { Job, Tried } from '../../model/types.ts';

export interface OpenTry {
  suspect: string;
  /** What was put in. */
  put: string;
  since: string;
  /** How it went, where that was said and the old part is still out. */
  how: Tried | null;
}

const HOW: Readonly<Record<string, Tried>> = { good: 'same', bad: 'gone', unclear: 'unclear' };

/** In the order in which they were put in. A part that was found to be it stays in, and is none. */
export function openTries({ entries, living }: Job): OpenTry[] {
  const open = new Map<string, OpenTry>();
  for (const { suspect, verb, value, old, at, id } of entries) {
    if (suspect === undefined || !living.has(id)) continue;
    if (verb === 'tried') open.set(suspect, { suspect, put: oneLine(value), since: at, how: null });
    const one = open.get(suspect);
    if (verb === 'found' || (verb === 'looked' && old !== undefined)) open.delete(suspect);
    else if (verb === 'looked' && one) open.set(suspect, { ...one, how: HOW[value] ?? null });
  }
  return [...open.values()];
}

/** What is said wherever a torque or a bolt can hurt somebody. */
import type { Kind } from '../../model/types.ts';

/** Beside every torque that the program has worked out. */
export const MAKER_FIRST =
  "The maker's manual goes first; for brakes, steering and suspension a licensed mechanic does.";

/** Beside a bolt that is not to be used twice; null for any other. `once`: as its kind says, unless its torque does. */
export function sayOnce(kind: Kind, once = kind.once): string | null {
  return once
    ? `${kind.letter} is never used twice: stretched or coated, it needs a new one.`
    : null;
}

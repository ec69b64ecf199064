/** What a hole takes, and what is wrong with it, in words. */
import { troubleOf } from '../../model/states/troubles.ts';
import type { HoleNow, RowItem, Trouble } from '../../model/types.ts';

export function sayTrouble(trouble: Trouble): string {
  return troubleOf(trouble).said;
}

/** `M clip`, `S copper washer`: the kind and what lies under its head. */
export function sayItem(item: RowItem): string {
  return [item.kind, ...item.with.map(sayUnder)].join(' ');
}

/** `copper washer` for `copper-washer`. */
export function sayUnder(word: string): string {
  return word.replace(/-+/g, ' ');
}

/** What belongs in a hole; where another bolt was put in all the same, both: `M, S in!`. */
export function sayInHole(hole: HoleNow): string {
  const { belongs, holds } = hole;
  if (isOther(hole) && belongs && holds) return `${sayItem(belongs)}, ${sayItem(holds)} in!`;
  return belongs ? sayItem(belongs) : '';
}

/** Another kind is in it than belongs there: somebody gave a reason for it. */
export function isOther({ belongs, holds, state }: HoleNow): boolean {
  const isIn = state === 'in' || state === 'tight';
  return isIn && holds !== null && belongs !== null && holds.kind !== belongs.kind;
}

/** What differs about a hole: `the file says M clip, S came out`. */
export function sayDiffers(hole: HoleNow): string {
  if (hole.conflict) return hole.conflict.say;
  const claim = hole.claim ? sayItem(hole.claim) : 'nothing';
  const found = hole.found ? sayItem(hole.found) : 'nothing';
  return `the file says ${claim}, ${found} came out`;
}

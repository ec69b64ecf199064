/** What a hole takes, and what is wrong with it, in words. */
import { troubleOf } from '../../model/troubles.ts';
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

/** What differs about a hole: `the file says M clip, S came out`. */
export function sayDiffers(hole: HoleNow): string {
  if (hole.conflict) return hole.conflict.say;
  const claim = hole.claim ? sayItem(hole.claim) : 'nothing';
  const found = hole.found ? sayItem(hole.found) : 'nothing';
  return `the file says ${claim}, ${found} came out`;
}

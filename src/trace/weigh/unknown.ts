/** What is not known, and whether it would matter. */
import type { Chance } from './chance.ts';
import { known, type Scaled } from './costs.ts';
import type { Advice, Unknown, WeighInput } from './types.ts';

/** In the order in which one would ask for it. */
export function unknownIn(
  { now, later, harm, hour }: WeighInput,
  chance: Chance | null,
  harmChance: Chance | null,
): Unknown[] {
  const missing: [Unknown, boolean][] = [
    ['chance', chance === null],
    ['later.price', known(later.price) === null],
    ['later.takes', known(later.takes) === null],
    ['now.price', known(now.price) === null],
    ['now.takes', known(now.takes) === null],
    ['harm', harm === null],
    ['harm.chance', harm !== null && harmChance === null],
    ['harm.price', harm !== null && known(harm.price) === null],
    ['harm.takes', harm !== null && known(harm.takes) === null],
    ['hour', known(hour) === null],
  ];
  return missing.flatMap(([one, is]) => (is ? [one] : []));
}

/** Whether a figure, once known, may decide what is open, or turn the advice: no cost is below nothing. */
export function mayTurn(
  one: Unknown,
  advice: Advice | null,
  p: number | null,
  scales: readonly Scaled[],
): boolean {
  if (advice === 'close') return one !== 'hour' || scales.length > 1;
  if (advice === 'renew') return one.startsWith('now') || one.startsWith('harm');
  if (advice === 'leave') return one.startsWith('later');
  if (one === 'chance') return true;
  if (one === 'hour') return p !== null && scales.length > 1;
  return scales.length === 0 && !one.startsWith('harm');
}

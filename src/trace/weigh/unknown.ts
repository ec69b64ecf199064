/** What is not known, and whether it would matter. */
import type { Chance } from './chance.ts';
import { reckonable, type Scaled } from './costs.ts';
import type { Advice, Unknown, WeighInput } from './types.ts';

/** In the order in which one would ask for it. */
export function unknownIn(
  { now, later, harm, hour }: WeighInput,
  chance: Chance | null,
  harmChance: Chance | null,
): Unknown[] {
  const missing: [Unknown, boolean][] = [
    ['chance', chance === null],
    ['later.price', reckonable(later.price) === null],
    ['later.takes', reckonable(later.takes) === null],
    ['now.price', reckonable(now.price) === null],
    ['now.takes', reckonable(now.takes) === null],
    ['harm', harm === null],
    ['harm.chance', harm !== null && harmChance === null],
    ['harm.price', harm !== null && reckonable(harm.price) === null],
    ['harm.takes', harm !== null && reckonable(harm.takes) === null],
    ['hour', reckonable(hour) === null],
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

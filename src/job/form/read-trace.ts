/** How often it is this suspect, and what renewing a thing costs. */
import { readNumber } from '../../bolt/numbers.ts';
import { oneLine } from '../../model/safe.ts';
import {
  type AmountSpec,
  type HarmSpec,
  LIKELY,
  type Likely,
  type TaskSpec,
  type WeighSpec,
} from '../../model/types.ts';
import type { Spot } from '../yaml/spot.ts';
import { textAt } from './read-fields.ts';
import { readAmount, readHarm } from './typed-figures.ts';

/** `often`, `now and then`, `rarely`, or a weight above zero; null for anything else. */
export function readLikely(text: string): Likely | number | null {
  const said = oneLine(text).trim().toLowerCase();
  const word = LIKELY.find((one) => one === said);
  const weight = word ? null : readNumber(said);
  return word ?? (weight !== null && weight > 0 ? weight : null);
}

/** `{price: 12.50, takes: 40 min}`, or both in one text. */
export function costAt(spot: Spot | null): AmountSpec | null {
  if (spot?.is === 'text') return readAmount(spot.text);
  return spot?.is === 'map' ? { price: textAt(spot, 'price'), takes: textAt(spot, 'takes') } : null;
}

/** `{chance: 1 in 20, price: 60.00}`, or all in one text. */
export function harmAt(spot: Spot | null): HarmSpec | null {
  if (spot?.is === 'text') return readHarm(spot.text);
  return spot?.is === 'map'
    ? {
        chance: textAt(spot, 'chance'),
        price: textAt(spot, 'price'),
        takes: textAt(spot, 'takes'),
      }
    : null;
}

/** What a question to decide is weighed by; null where its task says nothing of that, or is another. */
export function weighOf(task: TaskSpec | undefined): WeighSpec | null {
  if (task?.verb !== 'decide') return null;
  const { now, later, chance, harm } = task;
  return now || later || harm || chance !== null ? { now, later, chance, harm } : null;
}

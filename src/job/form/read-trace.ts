/** How often it is a suspect, and the figures of a question to decide. */
import { readNumber } from '../../bolt/read/numbers.ts';
import { oneLine } from '../../model/safe.ts';
import { type AmountSpec, LIKELY, type Likely, type WeighSpec } from '../../model/types.ts';
import { type Spot, valueAt } from '../yaml/spot.ts';
import { textAt } from './read-fields.ts';
import { readAmount, readHarm } from './typed-figures.ts';

/** `often`, `now and then`, `rarely`, or a weight above zero; null for anything else. */
export function readLikely(text: string): Likely | number | null {
  const said = oneLine(text).trim().toLowerCase();
  const word = LIKELY.find((one) => one === said);
  const weight = word ? null : readNumber(said);
  return word ?? (weight !== null && weight > 0 ? weight : null);
}

/** Null where the task says none of them. */
export function readWeigh(task: Spot): WeighSpec | null {
  const [now, later, harm] = [amountAt(task, 'now'), amountAt(task, 'later'), harmAt(task)];
  const chance = textAt(task, 'chance');
  return now || later || harm || chance !== null ? { now, later, chance, harm } : null;
}

/** `{price: 12.50, takes: 40 min}`, or both in one text. */
function amountAt(task: Spot, key: string): AmountSpec | null {
  const value = valueAt(task, key);
  if (value?.is === 'text') return readAmount(value.text);
  return value?.is === 'map'
    ? { price: textAt(value, 'price'), takes: textAt(value, 'takes') }
    : null;
}

/** `{chance: 1 in 20, price: 60.00}`, or all in one text. */
function harmAt(task: Spot): WeighSpec['harm'] {
  const value = valueAt(task, 'harm');
  if (value?.is === 'text') return readHarm(value.text);
  return value?.is === 'map'
    ? {
        chance: textAt(value, 'chance'),
        price: textAt(value, 'price'),
        takes: textAt(value, 'takes'),
      }
    : null;
}

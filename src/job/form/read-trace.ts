/** Suspects, checks, and the figures of a question to decide. */
import { readNumber } from '../../bolt/numbers.ts';
import { oneLine } from '../../model/safe.ts';
import {
  type AmountSpec,
  type CheckSpec,
  LIKELY,
  type Likely,
  type SuspectSpec,
  type WeighSpec,
} from '../../model/types.ts';
import { type PairSpot, type Spot, valueAt } from '../yaml/spot.ts';
import { type Reading, readAt, textAt, textsAt } from './read-fields.ts';
import { nameOfKey } from './spec.ts';
import { readAmount, readHarm } from './typed-figures.ts';

export function readSuspect(reading: Reading, { key, value }: PairSpot): SuspectSpec {
  const short = value.is === 'text' ? oneLine(value.text) : null;
  return {
    key,
    what: short ?? textAt(value, 'what') ?? nameOfKey(key),
    likely: readAt(reading, value, 'likely', readLikely, 'bad-likely'),
    piece: textAt(value, 'piece'),
    part: textAt(value, 'part'),
    takes: textAt(value, 'takes'),
    note: textAt(value, 'note'),
  };
}

/** `often`, `now and then`, `rarely`, or a weight above zero; null for anything else. */
export function readLikely(text: string): Likely | number | null {
  const said = oneLine(text).trim().toLowerCase();
  const word = LIKELY.find((one) => one === said);
  const weight = word ? null : readNumber(said);
  return word ?? (weight !== null && weight > 0 ? weight : null);
}

/** In its short form it says what is looked at, and no more. */
export function readCheck({ key, value }: PairSpot): CheckSpec {
  const short = value.is === 'text' ? oneLine(value.text) : null;
  return {
    key,
    check: short ?? textAt(value, 'check') ?? nameOfKey(key),
    limit: textAt(value, 'limit'),
    bad: textsAt(value, 'bad'),
    along: textsAt(value, 'along'),
    takes: textAt(value, 'takes'),
    under: textsAt(value, 'under'),
    needs: textsAt(value, 'needs'),
    caution: textsAt(value, 'caution'),
    note: textAt(value, 'note'),
  };
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

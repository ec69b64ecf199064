/** Two orders of things brought together into one. */
import { TIME } from '../diary/entry.ts';

/**
 * All things of both lists, those with the same key once, each list's order kept. Where the lists leave it open
 * what comes first, `compare` says; it must tell any two keys apart. The same result with the lists swapped, and
 * the list itself when both are the same. Where the lists contradict each other (what one puts first the other
 * puts last), no order keeps both: then `compare` decides too.
 *
 * Keys are unique in each list. Linear in the length of the lists.
 */
export function interleave<T>(
  a: readonly T[],
  b: readonly T[],
  key: (thing: T) => string,
  compare: (x: T, y: T) => number,
): T[] {
  const inA = new Set(a.map(key));
  const inB = new Set(b.map(key));
  const out: T[] = [];
  const done = new Set<string>();
  const put = (thing: T) => {
    done.add(key(thing));
    out.push(thing);
  };
  let i = 0;
  let j = 0;
  for (;;) {
    while (i < a.length && done.has(key(a[i] as T))) i++;
    while (j < b.length && done.has(key(b[j] as T))) j++;
    const x = a[i];
    const y = b[j];
    if (x === undefined || y === undefined) break;
    if (key(x) === key(y)) {
      put(compare(x, y) <= 0 ? x : y);
      continue;
    }
    // What is in the other list too must wait until that list has come to it.
    const xWaits = inB.has(key(x));
    const yWaits = inA.has(key(y));
    if (xWaits === yWaits) put(compare(x, y) <= 0 ? x : y);
    else put(xWaits ? y : x);
  }
  for (const thing of [...a.slice(i), ...b.slice(j)]) if (!done.has(key(thing))) put(thing);
  return out;
}

/** Days from 1970-01-01 of a date of the Gregorian calendar, years that begin in March counted in eras of 400. */
function daysFrom(year: number, month: number, day: number): number {
  const y = month > 2 ? year : year - 1;
  const era = Math.floor(y / 400);
  const yearOfEra = y - era * 400;
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1;
  const dayOfEra =
    yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146097 + dayOfEra - 719468;
}

/** Seconds from 1970 of a time as entries write it, whatever its offset; NaN for any other text. */
export function secondsOf(at: string): number {
  if (!TIME.test(at)) return Number.NaN;
  const part = (from: number, to: number) => Number(at.slice(from, to));
  const [, fraction = '', sign = '+', hours = '0', minutes = '0'] =
    /(\.[0-9]+)?(?:Z|([+-])([0-9]{2}):([0-9]{2}))$/.exec(at) ?? [];
  const offset = (Number(hours) * 60 + Number(minutes)) * (sign === '-' ? -1 : 1);
  const days = daysFrom(part(0, 4), part(5, 7), part(8, 10));
  const time = part(11, 13) * 3600 + part(14, 16) * 60 + part(17, 19);
  return days * 86400 + time - offset * 60 + Number(fraction);
}

export const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Earlier first; what has no time counts as earliest. */
export function byTime(a: string | null, b: string | null): number {
  const [x, y] = [a, b].map((at) => secondsOf(at ?? ''));
  const first = (n: number | undefined) => (n === undefined || Number.isNaN(n) ? -Infinity : n);
  const [p, q] = [first(x), first(y)];
  return p < q ? -1 : p > q ? 1 : 0;
}

/** Two orders of things brought together into one. */
import { secondsOf } from '../../model/time.ts';

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

export const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Earlier first; what has no time counts as earliest. */
export function byTime(a: string | null, b: string | null): number {
  const [x, y] = [a, b].map((at) => secondsOf(at ?? ''));
  const first = (n: number | undefined) => (n === undefined || Number.isNaN(n) ? -Infinity : n);
  const [p, q] = [first(x), first(y)];
  return p < q ? -1 : p > q ? 1 : 0;
}

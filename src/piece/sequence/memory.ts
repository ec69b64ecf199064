/** The last orders worked out: the same piece is asked about again at every key, and by the next command. */

const KEPT = 64;
const kept = new Map<string, unknown>();

/** Where answers outlast the program. What it gives is what was put under just that key, or null. */
export interface Elsewhere {
  get(key: string): unknown;
  put(key: string, made: unknown): void;
}
let elsewhere: Elsewhere | null = null;

export function alsoKeptIn(place: Elsewhere | null): void {
  elsewhere = place;
}

/** What `make` gives, once for a key. The value is shared: nobody changes it. */
export function keepOrder<T>(key: string, make: () => T): T {
  if (kept.has(key)) return kept.get(key) as T;
  let made = elsewhere?.get(key) as T | null | undefined;
  if (made == null) {
    made = make();
    elsewhere?.put(key, made);
  }
  kept.set(key, made);
  const oldest = kept.keys().next();
  if (kept.size > KEPT && !oldest.done) kept.delete(oldest.value);
  return made;
}

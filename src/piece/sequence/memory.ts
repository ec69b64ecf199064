/** The last orders worked out: the same piece is asked about again at every key. */

const KEPT = 64;
const kept = new Map<string, unknown>();

/** What `make` gives, once for a key. The value is shared: nobody changes it. */
export function remember<T>(key: string, make: () => T): T {
  if (kept.has(key)) return kept.get(key) as T;
  const made = make();
  kept.set(key, made);
  const oldest = kept.keys().next();
  if (kept.size > KEPT && !oldest.done) kept.delete(oldest.value);
  return made;
}

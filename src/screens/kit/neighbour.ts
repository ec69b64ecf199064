/** Going up and down a list by its names. */

/** The name `by` places further on; the ends are ends. */
export function neighbour(
  names: readonly string[],
  here: string | null,
  by: number,
): string | null {
  // Before the first, where none is marked yet.
  const index = here === null && by > 0 ? -1 : Math.max(0, names.indexOf(here ?? ''));
  return names[Math.max(0, Math.min(names.length - 1, index + by))] ?? null;
}

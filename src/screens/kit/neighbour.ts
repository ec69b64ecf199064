/** Going up and down a list by its names. */

/** The name `by` places further on; the ends are ends. */
export function neighbour(
  names: readonly string[],
  here: string | null,
  by: number,
): string | null {
  const index = Math.max(0, names.indexOf(here ?? ''));
  return names[Math.max(0, Math.min(names.length - 1, index + by))] ?? null;
}

/** A list of lines of which only some are in sight. */

/** The first of `rows` lines out of `total` that keep line `at` in sight. */
export function window(total: number, rows: number, at: number): number {
  return Math.max(0, Math.min(total - rows, at - Math.floor(rows / 2)));
}

/** The lines around the one marked, as many as fit. */
export function linesAround<T>(lines: readonly T[], at: number, rows: number): readonly T[] {
  const first = window(lines.length, rows, at);
  return lines.slice(first, first + rows);
}

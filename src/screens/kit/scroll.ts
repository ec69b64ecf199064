/** A list of lines of which only some are in sight. */
import { keyName } from './press.ts';
import { type Line, line } from './text.ts';

/** The first of `rows` lines out of `total` that keep line `at` in sight. */
export function window(total: number, rows: number, at: number): number {
  return Math.max(0, Math.min(total - rows, at - Math.floor(rows / 2)));
}

/** The lines around the one marked, as many as fit. */
export function linesAround<T>(lines: readonly T[], at: number, rows: number): readonly T[] {
  const first = window(lines.length, rows, at);
  return lines.slice(first, first + rows);
}

/** What moves lines that do not fit: where the arrows do something else, the keys that turn pages alone. */
export type MovedBy = 'arrows' | 'pages';

/** `(2 above, 5 below)`; where pages are turned, with the keys that do it. */
export function countLine(above: number, below: number, by: MovedBy): Line {
  const all = [
    above > 0 && { count: `${above} above`, press: 'pageup' },
    below > 0 && { count: `${below} below`, press: 'pagedown' },
  ].filter((more) => more !== false);
  const keys = by === 'arrows' ? '' : `: ${all.map((more) => keyName(more.press)).join(', ')}`;
  return line(`(${all.map((more) => more.count).join(', ')}${keys})`);
}

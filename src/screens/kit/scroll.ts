/** A page of lines of which only some are in sight. */
import { type Line, line } from './text.ts';

/** The lines from `top` on that fit; what is above and below is counted. */
export function scrolled(lines: readonly Line[], top: number, rows: number): readonly Line[] {
  if (lines.length <= rows) return lines;
  const room = Math.max(1, rows - 1);
  const first = Math.min(top, lines.length - room);
  const below = lines.length - first - room;
  const more = [first > 0 && `${first} above`, below > 0 && `${below} below`].filter(
    (m) => m !== false,
  );
  return [...lines.slice(first, first + room), line(`(${more.join(', ')})`)];
}

/** The lines around the one marked, as many as fit. */
export function around(lines: readonly Line[], at: number, rows: number): readonly Line[] {
  const first = Math.max(0, Math.min(lines.length - rows, at - Math.floor(rows / 2)));
  return lines.slice(first, first + rows);
}

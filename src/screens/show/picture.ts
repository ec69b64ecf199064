/** The whole screen as lines of spans: pure, so that a picture can be looked at without a terminal. */
import { isTooSmall, LEAST } from '../base/page.ts';
import type { State } from '../base/state.ts';
import { paint } from '../kit/paint.ts';
import { cutTo, type Line, line, pad, span, wrap } from '../kit/text.ts';
import { foot } from './foot.ts';
import { openOf } from './screens.ts';

export interface Picture {
  /** Exactly as many as the screen has rows, none wider than its columns. */
  lines: Line[];
  cursor: { x: number; y: number } | null;
}

export function picture(state: State): Picture {
  if (isTooSmall(state)) return tooSmall(state);
  const { columns } = state;
  const open = openOf(state);
  const { lines, cursor } = open.laid();
  const rows = [...lines, foot(open, columns)].map((l) => pad(cutTo(l, columns), columns));
  return { lines: rows, cursor };
}

/** How large it must be, and what needs no room; the last row that there is says if it goes on. */
function tooSmall({ columns, rows }: State): Picture {
  const text = `${columns}x${rows}: too small, ${LEAST.columns}x${LEAST.rows} is enough. --lines needs no room.`;
  const said = wrap(text, columns);
  const all = Math.max(1, rows);
  const lines = Array.from({ length: all }, (_, i) => {
    const isCut = i === all - 1 && said.length > all;
    return cutTo(
      isCut ? line(...said.slice(i).flatMap((l) => [...l, span(' ')])) : (said[i] ?? []),
      columns,
    );
  });
  return { lines, cursor: null };
}

/** The rows of the screen as a terminal takes them. */
export function rowsOf(state: State): string[] {
  return picture(state).lines.map((l) => paint(l, state));
}

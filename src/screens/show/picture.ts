/** The whole screen as lines of spans: pure, so that a picture can be looked at without a terminal. */
import { isTooSmall, LEAST } from '../base/page.ts';
import type { State } from '../base/state.ts';
import { paint } from '../kit/paint.ts';
import { cutTo, type Line, line, pad } from '../kit/text.ts';
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

/** One line, and nothing that could be cut in a way that misleads. */
function tooSmall({ columns, rows }: State): Picture {
  const text = `${columns}x${rows}: too small, ${LEAST.columns}x${LEAST.rows} is enough`;
  const lines = Array.from({ length: Math.max(1, rows) }, (_, i) =>
    i === 0 ? cutTo(line(text), columns) : [],
  );
  return { lines, cursor: null };
}

/** The rows of the screen as a terminal takes them. */
export function rowsOf(state: State): string[] {
  return picture(state).lines.map((l) => paint(l, state));
}

/** What somebody types with a hose in the other hand: how it runs, and what is marked on it. */
import type { Writable } from '../../model/types.ts';

/** A text for a key of a piece. */
export interface Put {
  key: Writable;
  text: string;
}

const MARKS = /^(.*?)[\s;,.]*\bmarks?\s*:\s*(.*)$/is;

/** `over the tube; marks: blue paint` is both, `marks: blue paint` that alone. */
export function typedRuns(text: string): Put[] {
  const found = MARKS.exec(text.trim());
  const [runs, marks] = found ? [found[1] ?? '', found[2] ?? ''] : [text.trim(), ''];
  const puts: Put[] = [
    { key: 'routes', text: runs.trim() },
    { key: 'marks', text: marks.trim() },
  ];
  return puts.filter((put) => put.text !== '');
}

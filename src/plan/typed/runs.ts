/** What somebody types with a hose in the other hand: how it runs, and what is marked on it. */
import type { Writable } from '../../model/types.ts';

/** A text for a key of a piece. */
export interface Put {
  key: Writable;
  text: string;
}

const MARKS = /\bmarks?\s*:/i;
const BETWEEN = ' \t\n\r;,.';

/** Without blanks, semicolons, commas and dots at its end. */
function ended(text: string): string {
  let end = text.length;
  while (end > 0 && BETWEEN.includes(text.charAt(end - 1))) end--;
  return text.slice(0, end);
}

/** `over the tube; marks: blue paint` is both, `marks: blue paint` that alone. */
export function typedRuns(text: string): Put[] {
  const said = text.trim();
  const found = MARKS.exec(said);
  const [runs, marks] = found
    ? [ended(said.slice(0, found.index)), said.slice(found.index + found[0].length)]
    : [said, ''];
  const puts: Put[] = [
    { key: 'routes', text: runs.trim() },
    { key: 'marks', text: marks.trim() },
  ];
  return puts.filter((put) => put.text !== '');
}

/** A screen as plain lines, one after the other: for a screen reader, a braille line, a pipe. */
import type { State } from '../base/state.ts';
import { paint } from '../kit/paint.ts';
import { foot } from './foot.ts';
import { openOf } from './screens.ts';

/** Columns that no foot line fills. */
const WIDE = 1000;

/** All that the screen says, in the order in which it is read, empty lines left out; its keys last. */
export function readOut(state: State): string[] {
  const open = openOf(state);
  const plain = { colour: false, ascii: state.ascii };
  const lines = [...open.read(), foot(open, WIDE)];
  return lines.map((line) => spoken(paint(line, plain))).filter((text) => text !== '');
}

/** Without what is there for the eye alone: frames, columns, the space between. */
function spoken(text: string): string {
  return text
    .replace(/[-+]{3,}\+?/g, '')
    .replace(/^\s*[|+]-? ?|[|+]\s*$/g, '')
    .replace(/\s+/g, ' ')
    .trim();
}

/** What is to be read after a change: all of another screen, of the same one what was not there before. */
export function changedLines(before: State | null, state: State): string[] {
  const now = readOut(state);
  if (before === null || screenName(before) !== screenName(state)) return now;
  const left = readOut(before);
  return now.filter((text) => {
    const at = left.indexOf(text);
    if (at >= 0) left.splice(at, 1);
    return at < 0;
  });
}

function screenName({ view }: State): string {
  return view.screen === 'piece' ? `piece ${view.piece} ${view.step.step}` : view.screen;
}

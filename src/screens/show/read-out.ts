/** A screen as plain lines, one after the other: for a screen reader, a braille line, a pipe. */
import { safeLine } from '../../model/safe.ts';
import { MARKED } from '../base/lay.ts';
import { FITS_HAND } from '../base/piece-page.ts';
import type { State } from '../base/state.ts';
import { paint } from '../kit/paint.ts';
import { type Line, READ_OUT } from '../kit/text.ts';
import { hints } from './foot.ts';
import { openOf } from './screens.ts';

/** All that the screen says, in the order in which it is read, empty lines left out; its keys last. */
export function readOut(state: State): string[] {
  const { page, keys } = read(state);
  return [...page, keys.join('; ')];
}

interface Read {
  page: string[];
  /** `Space open`, key by key. */
  keys: string[];
}

/** The page as on a screen on which nothing has to be cut or broken. */
function read(state: State): Read {
  const said = (line: Line) => spoken(paint(line, { colour: false, ascii: state.ascii }));
  const page = openOf({ ...state, columns: READ_OUT })
    .read()
    .map(said);
  return { page: page.filter((text) => text !== ''), keys: hints(openOf(state)).map(said) };
}

/** Blanks that part two columns. */
const COLUMNS = / {2,}/;

/** Columns as words with a stop between them: `Off: Gear lever`, `Cover: off, 2 of 3; 2 stuck`. */
function spoken(text: string): string {
  if (/^ *\^ *$/.test(text)) return '';
  // A text that is typed has no columns.
  if (text.startsWith('> ')) return text.replace(/\s+/g, ' ').trim();
  const mark = text.startsWith(MARKED) ? MARKED : '';
  const [first = '', ...rest] = text
    .slice(mark.length)
    .trim()
    .split(COLUMNS)
    .map((part) => part.replace(/\s+/g, ' '));
  if (rest.length === 0) return mark + first;
  return `${mark}${first}${/[.:;?]$/.test(first) ? '' : ':'} ${rest.join('; ')}`;
}

/** Where the mark stands and what the hand fits, which is said of the row that has it now. */
const HERE = new RegExp(`^${MARKED}|(; (here|${FITS_HAND}))+$`);

/** What is to be read after a change: all of another screen, of the same one what was not there before. */
export function changedLines(before: State | null, state: State): string[] {
  if (before === null || screenName(before) !== screenName(state)) return readOut(state);
  const [was, now] = [read(before), read(state)];
  const left = was.page.flatMap((text) => [text, text.replace(HERE, '')]);
  const page = now.page.filter((text) => {
    const at = left.indexOf(text);
    if (at >= 0) left.splice(at, 1);
    return at < 0;
  });
  // A key that is gone says so when it is pressed; the list of keys has all.
  const keys = now.keys.filter((key) => !was.keys.includes(key));
  return keys.length === 0 ? page : [...page, keys.join('; ')];
}

/** Where the cursor of a text stands, since nothing is drawn of it; null: no text is typed. */
export function cursorSaid(state: State): string | null {
  const field = openOf(state).text()?.field;
  if (!field) return null;
  const rest = field.text.slice(field.cursor).join('');
  return rest === '' ? 'The cursor is at the end.' : `The cursor is before: ${safeLine(rest)}`;
}

/** The parts of a view by which it is another screen, though it looks alike: another piece, task, gate or question. */
function screenName({ view }: State): string {
  const step = view.screen === 'piece' ? view.step.step : '';
  const asks = view.screen === 'field' ? view.asks.ask : '';
  const moment = view.screen === 'gate' ? view.moment : '';
  const piece = 'piece' in view ? view.piece : '';
  const task = 'task' in view ? view.task : '';
  return [view.screen, piece, task, step, asks, moment].join(' ');
}

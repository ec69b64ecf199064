/**
 * What is drawn: lines of spans. Text from files is made harmless here, on its way into a span, and
 * nowhere else; widths are columns of a terminal.
 */
import { rememberingLong } from '../../model/remembering.ts';
import { safeLine } from '../../model/safe.ts';
import { signsOf } from './signs.ts';

/** Of the 16 colours only those that can be read on a light and on a dark ground. */
export type Colour = 'red' | 'green' | 'cyan' | 'magenta';

export interface Style {
  colour?: Colour;
  bold?: boolean;
  inverse?: boolean;
  /** Crossed out; what it means stands beside it in words, for terminals that cannot show it. */
  struck?: boolean;
}

export interface Span extends Style {
  readonly text: string;
}

export type Line = readonly Span[];

/** Columns of what is read out: hardly a text fills them, and nothing is cut, broken or framed. */
export const READ_OUT = 10_000;

const shown = rememberingLong(safeLine);

export function span(text: string, style: Style = {}): Span {
  return { ...style, text: shown(text) };
}

export const bold = (text: string): Span => span(text, { bold: true });

/** A line of what there is: texts, spans, other lines; `null` and `false` are left out. */
export function line(...parts: readonly (string | Span | Line | null | false)[]): Line {
  return parts.flatMap((part) => {
    if (part === null || part === false) return [];
    if (typeof part === 'string') return [span(part)];
    return 'text' in part ? [part] : [...part];
  });
}

/** Columns that a text or a line takes. */
export function width(what: string | Line): number {
  if (typeof what !== 'string') return what.reduce((sum, s) => sum + width(s.text), 0);
  if (PLAIN.test(what)) return what.length;
  let columns = 0;
  const signs = signsOf(what);
  for (let at = 0; at < what.length; at = signs.end) columns += signs.read(at);
  return columns;
}
const PLAIN = /^[\x20-\x7e]*$/;

/** The text in graphemes: what a reader takes for one character. */
export function split(text: string): string[] {
  const all: string[] = [];
  const signs = signsOf(text);
  for (let at = 0; at < text.length; at = signs.end) {
    signs.read(at);
    all.push(text.slice(at, signs.end));
  }
  return all;
}

/** As much of the text as fits into `columns`. Of a long one no more is looked at. */
function head(text: string, columns: number): string {
  if (text.length <= columns && PLAIN.test(text)) return text;
  let used = 0;
  const signs = signsOf(text);
  for (let at = 0; at < text.length; at = signs.end) {
    used += signs.read(at);
    if (used > columns) return text.slice(0, at);
  }
  return text;
}

/** Whether it takes no more columns; of a long one no more is looked at than they are. */
export function fitsIn(what: Line, columns: number): boolean {
  let left = columns;
  return what.every(({ text }) => {
    if (head(text, left).length < text.length) return false;
    left -= width(text);
    return true;
  });
}

const CUT = '..';

/** The line in at most `columns`; what is cut off is marked. */
export function cutTo(what: Line, columns: number): Line {
  if (fitsIn(what, columns)) return what;
  const mark = columns > CUT.length ? CUT : '';
  let left = columns - mark.length;
  const out: Span[] = [];
  for (const s of what) {
    const text = head(s.text, left);
    if (text !== '') out.push({ ...s, text });
    left -= width(text);
    if (text.length < s.text.length) break;
  }
  const last = out.at(-1);
  return mark === '' ? out : [...out, { ...last, text: mark }];
}

const blank = (columns: number): Span => ({ text: ' '.repeat(Math.max(0, columns)) });

/** The line with blanks up to `columns`, cut if it is longer. */
export function pad(what: Line, columns: number): Line {
  const shown = cutTo(what, columns);
  const rest = columns - width(shown);
  return rest > 0 ? [...shown, blank(rest)] : shown;
}

/** The line moved to the right. */
export function indent(what: Line, columns: number): Line {
  return columns > 0 && what.length > 0 ? [blank(columns), ...what] : what;
}

/** One text at the left edge, one at the right; the left one is cut where both do not fit. */
export function spread(left: Line, right: Line, columns: number): Line {
  const shown = cutTo(right, columns);
  const room = columns - width(shown);
  const gap = width(shown) > 0 && room > 0 ? 2 : 0;
  return [
    ...pad(left, Math.max(0, room - gap)),
    ...(gap ? [blank(Math.min(gap, room))] : []),
    ...shown,
  ];
}

export function centred(what: Line, columns: number): Line {
  return indent(cutTo(what, columns), Math.floor((columns - width(what)) / 2));
}

/** The text broken between words into lines of at most `columns`; words that are longer are broken too. */
export function wrap(text: string, columns: number, style: Style = {}): Line[] {
  const room = Math.max(1, columns);
  const known = wrapped(text);
  const lines = known.get(room) ?? wrapIn(shown(text), room);
  known.set(room, lines);
  return lines.map((text) => [{ ...style, text }]);
}

/** By columns. A page with a long text asks for the same lines at each key. */
const wrapped = rememberingLong(() => new Map<number, readonly string[]>());

function wrapIn(text: string, room: number): string[] {
  const lines: string[] = [];
  let now = '';
  for (const word of text.split(/ +/)) {
    if (word === '') continue;
    const short = head(word, room).length === word.length;
    if (short && now !== '' && width(now) + 1 + width(word) <= room) {
      now += ` ${word}`;
      continue;
    }
    if (now !== '') lines.push(now);
    const parts = short ? [word] : broken(word, room);
    now = parts.pop() ?? '';
    for (const part of parts) lines.push(part);
  }
  if (now !== '') lines.push(now);
  return lines;
}

/**
 * A word in parts of at most `room` columns, or of one character where that is wider; the first of at most `first`,
 * and empty where nothing fits there.
 */
export function broken(word: string, room: number, first: number = room): string[] {
  const parts: string[] = [];
  let from = 0;
  let used = room - first;
  if (PLAIN.test(word)) {
    for (let at = first; at < word.length; at += room) {
      parts.push(word.slice(from, at));
      from = at;
    }
    return [...parts, word.slice(from)];
  }
  const signs = signsOf(word);
  for (let at = 0; at < word.length; at = signs.end) {
    const columns = signs.read(at);
    if (used > 0 && columns > 0 && used + columns > room) {
      parts.push(word.slice(from, at));
      [from, used] = [at, 0];
    }
    used += columns;
  }
  return [...parts, word.slice(from)];
}

/** Wrapped with the later lines moved in by `hang`. */
export function hanging(first: Line, text: string, columns: number, style: Style = {}): Line[] {
  const hang = width(first);
  return wrap(text, columns - hang, style).map((l, i) =>
    i === 0 ? [...first, ...l] : indent(l, hang),
  );
}

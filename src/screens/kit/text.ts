/**
 * What is drawn: lines of spans. Text from files is made harmless here, on its way into a span, and
 * nowhere else; widths are columns of a terminal.
 */
import stringWidth from 'string-width';
import { safeLine } from '../../model/safe.ts';

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

export function span(text: string, style: Style = {}): Span {
  return { ...style, text: safeLine(text) };
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
  return /^[\x20-\x7e]*$/.test(what) ? what.length : stringWidth(what);
}

const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' });

/** The text in graphemes: what a reader takes for one character. */
export function split(text: string): string[] {
  return Array.from(graphemes.segment(text), (s) => s.segment);
}

/** As much of the text as fits into `columns`. */
function head(text: string, columns: number): string {
  if (width(text) <= columns) return text;
  let out = '';
  let used = 0;
  for (const g of split(text)) {
    used += width(g);
    if (used > columns) break;
    out += g;
  }
  return out;
}

const CUT = '..';

/** The line in at most `columns`; what is cut off is marked. */
export function cutTo(what: Line, columns: number): Line {
  if (width(what) <= columns) return what;
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
  const lines: string[] = [];
  let now = '';
  for (const word of safeLine(text)
    .split(/ +/)
    .filter((w) => w !== '')) {
    if (now !== '' && width(now) + 1 + width(word) <= room) {
      now += ` ${word}`;
      continue;
    }
    if (now !== '') lines.push(now);
    const parts = width(word) <= room ? [word] : broken(word, room);
    now = parts.pop() ?? '';
    for (const part of parts) lines.push(part);
  }
  if (now !== '') lines.push(now);
  return lines.map((shown) => [{ ...style, text: shown }]);
}

/** A word in parts of at most `room` columns, or of one character where that is wider. */
function broken(word: string, room: number): string[] {
  const parts: string[] = [];
  let now = '';
  let used = 0;
  for (const g of split(word)) {
    const wide = width(g);
    if (now !== '' && used + wide > room) {
      parts.push(now);
      [now, used] = ['', 0];
    }
    now += g;
    used += wide;
  }
  return [...parts, now];
}

/** Wrapped with the later lines moved in by `hang`. */
export function hanging(first: Line, text: string, columns: number, style: Style = {}): Line[] {
  const hang = width(first);
  return wrap(text, columns - hang, style).map((l, i) =>
    i === 0 ? [...first, ...l] : indent(l, hang),
  );
}

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
  if (/^[\x20-\x7e]*$/.test(what)) return what.length;
  // Between two of these there is always a border; a line break takes no column and is one too.
  let plain = 0;
  const rest = what.replace(RUNS, (run) => {
    plain += run.length * columnsOf(run);
    return '\n';
  });
  return plain + stringWidth(rest);
}

/**
 * Characters of one column each, and of two: letters that are what a reader takes for one, unless something that is no
 * letter follows.
 */
const ONE =
  '\\x20-\\x7e\\xa1-\\xac\\xae-\\u024f\\u0388-\\u038a\\u038e-\\u03a1\\u03a3-\\u03ce\\u0400-\\u0481\\u048a-\\u052f\\u2010-\\u2027\\u2030-\\u205e';
const TWO = '\\u3041-\\u3096\\u30a1-\\u30fa\\u4e00-\\u9fff\\uac00-\\ud7a3';
/** Runs of them, each between two more or at an end: most texts are one, and need not be looked at sign by sign. */
const RUNS = new RegExp(`(?<![^${ONE}${TWO}])(?:[${ONE}]+|[${TWO}]+)(?![^${ONE}${TWO}])`, 'g');
const IS_TWO = new RegExp(`^[${TWO}]`);

const columnsOf = (run: string): number => (IS_TWO.test(run) ? 2 : 1);

const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' });

/** The text in graphemes: what a reader takes for one character. */
export function split(text: string): string[] {
  return Array.from(graphemes.segment(text), (s) => s.segment);
}

/** The text from its start on, in runs of `count` characters and in single graphemes, with the columns that each takes. */
function* runsOf(text: string): Generator<{ index: number; count: number; each: number }> {
  let from = 0;
  for (const { 0: run, index } of text.matchAll(RUNS)) {
    yield* singles(text, from, index);
    yield { index, count: run.length, each: columnsOf(run) };
    from = index + run.length;
  }
  yield* singles(text, from, text.length);
}

/** Columns of the graphemes met: to count them takes longest. */
const known = new Map<string, number>();
const MOST_KNOWN = 4096;

function* singles(text: string, from: number, to: number): ReturnType<typeof runsOf> {
  if (from === to) return;
  for (const { segment, index } of graphemes.segment(text.slice(from, to))) {
    let each = known.get(segment);
    if (each === undefined) {
      each = width(segment);
      if (known.size === MOST_KNOWN) known.clear();
      known.set(segment, each);
    }
    yield { index: from + index, count: 1, each };
  }
}

/** As much of the text as fits into `columns`. Of a long one no more is looked at. */
function head(text: string, columns: number): string {
  if (text.length <= LONG * columns && width(text) <= columns) return text;
  let used = 0;
  for (const { segment, index } of graphemes.segment(text)) {
    used += width(segment);
    if (used > columns) return text.slice(0, index);
  }
  return text;
}
/** Characters for a column, from which it is quicker to count than to measure. */
const LONG = 4;

function fits(what: Line, columns: number): boolean {
  let left = columns;
  return what.every(({ text }) => {
    if (text.length > LONG * columns && head(text, left) !== text) return false;
    left -= width(text);
    return left >= 0;
  });
}

const CUT = '..';

/** The line in at most `columns`; what is cut off is marked. */
export function cutTo(what: Line, columns: number): Line {
  if (fits(what, columns)) return what;
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
    const short = head(word, room) === word;
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
  return lines.map((shown) => [{ ...style, text: shown }]);
}

/**
 * A word in parts of at most `room` columns, or of one character where that is wider; the first of at most `first`,
 * and empty where nothing fits there.
 */
export function broken(word: string, room: number, first: number = room): string[] {
  const parts: string[] = [];
  let from = 0;
  let used = room - first;
  for (const { index, count, each } of runsOf(word)) {
    for (let done = 0; done < count; ) {
      const fit = each === 0 ? count : Math.floor((room - used) / each);
      if (fit <= 0 && used > 0) {
        const at = index + done;
        parts.push(word.slice(from, at));
        [from, used] = [at, 0];
        continue;
      }
      const more = Math.min(count - done, Math.max(1, fit));
      used += more * each;
      done += more;
    }
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

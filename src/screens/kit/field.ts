/** A line of text that is being typed: pure, by grapheme, with the editing keys of a shell. */
import type { Press } from './press.ts';
import { type Line, span, split, width } from './text.ts';

interface Typed {
  /** In graphemes. */
  readonly text: readonly string[];
  /** 0 … length of the text. */
  readonly cursor: number;
}

export interface TextField extends Typed {
  /** It was left half written once, and is taken up again: what is typed over it takes its place. */
  readonly again?: true;
  /** What undo goes back to, the latest last. */
  readonly past: readonly Typed[];
}

/** Graphemes. What is longer is a file of its own: it is refused, never cut. */
const LIMIT = 20_000;
/** Characters. More than so many for each grapheme is counted by them: what is this long is too long anyway. */
const COUNTED = 20 * LIMIT;
const STEPS = 200;

export function field(text = ''): TextField {
  const graphemes = split(text);
  return { text: graphemes, cursor: graphemes.length, past: [] };
}

export function fieldText(f: TextField): string {
  return f.text.join('');
}

const EMPTY: Typed = { text: [], cursor: 0 };

type Edit = (f: Typed) => Typed;

const isBlank = (g: string | undefined): boolean => g === undefined || /^\s+$/.test(g);

function wordLeft({ text, cursor }: Typed): number {
  let at = cursor;
  while (at > 0 && isBlank(text[at - 1])) at -= 1;
  while (at > 0 && !isBlank(text[at - 1])) at -= 1;
  return at;
}

function wordRight({ text, cursor }: Typed): number {
  let at = cursor;
  while (at < text.length && isBlank(text[at])) at += 1;
  while (at < text.length && !isBlank(text[at])) at += 1;
  return at;
}

const go =
  (where: (f: Typed) => number): Edit =>
  (f) => ({ text: f.text, cursor: Math.max(0, Math.min(f.text.length, where(f))) });

/** Takes away what lies between the cursor and `where`. */
const kill =
  (where: (f: Typed) => number): Edit =>
  (f) => {
    const to = Math.max(0, Math.min(f.text.length, where(f)));
    const [a, b] = to < f.cursor ? [to, f.cursor] : [f.cursor, to];
    return { text: [...f.text.slice(0, a), ...f.text.slice(b)], cursor: a };
  };

const left = (f: Typed): number => f.cursor - 1;
const right = (f: Typed): number => f.cursor + 1;
const start = (): number => 0;
const end = (f: Typed): number => f.text.length;

const EDITS: Readonly<Record<string, Edit>> = {
  left: go(left),
  'ctrl-b': go(left),
  right: go(right),
  'ctrl-f': go(right),
  home: go(start),
  'ctrl-a': go(start),
  end: go(end),
  'ctrl-e': go(end),
  'ctrl-left': go(wordLeft),
  'alt-b': go(wordLeft),
  'ctrl-right': go(wordRight),
  'alt-f': go(wordRight),
  backspace: kill(left),
  delete: kill(right),
  'ctrl-d': kill(right),
  'ctrl-w': kill(wordLeft),
  'alt-d': kill(wordRight),
  'ctrl-u': kill(start),
  'ctrl-k': kill(end),
};
const UNDO: readonly Press[] = ['ctrl-z', 'ctrl-_'];

/** Presses that edit a field, for the list of keys. */
export const EDITING: readonly Press[] = [...Object.keys(EDITS), ...UNDO];

function insert(f: Typed, graphemes: readonly string[]): Typed {
  // A new character may join with the one before it: an accent typed behind its letter.
  const before = split([...f.text.slice(0, f.cursor), ...graphemes].join(''));
  const all = split([...before, ...f.text.slice(f.cursor)].join(''));
  if (all.length > LIMIT) return f;
  return { text: all, cursor: Math.min(before.length, all.length) };
}

function remember(f: TextField, next: Typed): TextField {
  const changed = next.text.join('') !== f.text.join('');
  const past = changed ? [...f.past, { text: f.text, cursor: f.cursor }].slice(-STEPS) : f.past;
  return { text: next.text, cursor: next.cursor, past };
}

/** What a press does to the field; null when the press is none of its keys. */
export function pressField(f: TextField, press: Press): TextField | null {
  if (UNDO.includes(press)) {
    const last = f.past.at(-1);
    return last ? { ...last, past: f.past.slice(0, -1) } : f;
  }
  const edit = EDITS[press];
  if (edit) return remember(f, edit(f));
  const typed = press === 'space' ? ' ' : press;
  if (split(typed).length !== 1 || clean(typed) === '') return null;
  return remember(f, insert(f.again ? EMPTY : f, [typed]));
}

/** Why a paste is not taken, a sentence with its length; null: there is room for all of it. */
export function tooLong(f: TextField, text: string): string | null {
  const length = text.length > COUNTED ? text.length : split(clean(text)).length;
  const room = LIMIT - f.text.length;
  if (length <= room) return null;
  return `That has ${length} characters, and there is room for ${room}: none of it was taken.`;
}

/** A paste is one step, all of it or none: runs of line breaks and tabs become a space, other controls go. */
export function pasteField(f: TextField, text: string): TextField {
  return tooLong(f, text) === null ? remember(f, insert(f, split(clean(text)))) : f;
}

function clean(text: string): string {
  return text.replace(/[\r\n\t]+/g, ' ').replace(/[\p{Cc}\p{Zl}\p{Zp}\p{Cs}]/gu, '');
}

/** The part of the text around the cursor that fits, and the column of the cursor in it. */
export function drawField(f: TextField, columns: number): { line: Line; column: number } {
  const room = Math.max(1, columns - 1);
  const shown = (at: number) => span(f.text[at] ?? '').text;
  let from = f.cursor;
  let before = 0;
  for (let next = from - 1; next >= 0; next--) {
    const wide = before + width(shown(next));
    if (wide > room) break;
    [from, before] = [next, wide];
  }
  let to = f.cursor;
  let used = before;
  for (; to < f.text.length; to++) {
    used += width(shown(to));
    if (used > room) break;
  }
  const text = f.text.slice(from, to).map((_, i) => shown(from + i));
  return { line: [{ text: text.join('') }], column: before };
}

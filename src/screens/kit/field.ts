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
  /** What undo goes back to, the latest last. */
  readonly past: readonly Typed[];
}

/** Graphemes. No text of a job is this long; a longer paste is cut. */
const LIMIT = 2000;
const STEPS = 200;

export function field(text = ''): TextField {
  const graphemes = split(text);
  return { text: graphemes, cursor: graphemes.length, past: [] };
}

export function fieldText(f: TextField): string {
  return f.text.join('');
}

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
  return remember(f, insert(f, [typed]));
}

/** A paste is one step: runs of line breaks and tabs become a space, other controls go. */
export function pasteField(f: TextField, text: string): TextField {
  const room = Math.max(0, LIMIT - f.text.length);
  return remember(f, insert(f, split(clean(text)).slice(0, room)));
}

function clean(text: string): string {
  return text.replace(/[\r\n\t]+/g, ' ').replace(/[\p{Cc}\p{Zl}\p{Zp}\p{Cs}]/gu, '');
}

/** The part of the text around the cursor that fits, and the column of the cursor in it. */
export function drawField(f: TextField, columns: number): { line: Line; column: number } {
  const shown = f.text.map((g) => span(g).text);
  const room = Math.max(1, columns - 1);
  let from = 0;
  const used = (to: number) => width(shown.slice(from, to).join(''));
  while (from < f.cursor && used(f.cursor) > room) from += 1;
  let to = f.cursor;
  while (to < shown.length && used(to + 1) <= room) to += 1;
  return { line: [{ text: shown.slice(from, to).join('') }], column: used(f.cursor) };
}

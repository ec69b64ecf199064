/** Lines of a text by their offsets, so that a splice touches its own bytes only. */

interface Line {
  start: number;
  /** Behind the last character, before the line ending. */
  end: number;
  /** Start of the next line; equal to `end` on a last line without ending. */
  next: number;
}

/** The line that starts at `start`. */
export function lineAt(text: string, start: number): Line {
  const feed = text.indexOf('\n', start);
  if (feed < 0) return { start, end: text.length, next: text.length };
  const end = feed > start && text[feed - 1] === '\r' ? feed - 1 : feed;
  return { start, end, next: feed + 1 };
}

/** Start of the line that holds the offset. A byte order mark is no part of the first line. */
export function lineStart(text: string, at: number): number {
  const start = text.lastIndexOf('\n', at - 1) + 1;
  return start === 0 && text.startsWith('\uFEFF') ? 1 : start;
}

/** Start of the line behind the one that holds the offset. */
export function nextLine(text: string, at: number): number {
  return lineAt(text, at).next;
}

/** Column of an offset, from 0. */
export function columnOf(text: string, at: number): number {
  return at - lineStart(text, at);
}

/** Line ending of the line before the offset, else the first of the file, else LF. */
export function endingAt(text: string, at: number): string {
  const before = text.lastIndexOf('\n', at - 1);
  const feed = before >= 0 ? before : text.indexOf('\n');
  return feed > 0 && text[feed - 1] === '\r' ? '\r\n' : '\n';
}

/**
 * The text with whole lines put in at `at`, which is the start of a line or the end of the text.
 * Behind a last line without ending they come without ending too: the file keeps that habit.
 */
export function putLines(text: string, at: number, lines: readonly string[]): string {
  const ending = endingAt(text, at);
  const block = lines.join(ending);
  const head = text.slice(0, at);
  const open = at === text.length && !/(^\uFEFF?|\n)$/.test(head);
  return open ? head + ending + block : head + block + ending + text.slice(at);
}

/** Offset where the first document of the text ends: at `...`, at a second `---`, or at the end. */
export function documentEnd(text: string): number {
  const start = /^\uFEFF?(?:[ \t]*(?:#.*|%.*)?\r?\n)*(?:---(?=\s|$))?/.exec(text)?.[0].length ?? 0;
  const mark = /^(?:\.\.\.|---)(?=\s|$)/gm;
  mark.lastIndex = start;
  return mark.exec(text)?.index ?? text.length;
}

/**
 * Where a line goes that is added behind the last item of a block (a list or a map).
 *
 * A comment deeper than the items belongs to the item above it. A comment in line with the items stands for
 * what is above it, as long as no blank line parts them. All other comments below the last item are somebody
 * else's and stay below the new line.
 *
 * `from`: start of the first line below the key; `column`: that of the key. Items of a list may stand in it too.
 */
export function blockEnd(
  text: string,
  of: 'list' | 'map',
  key: { from: number; column: number },
): { at: number; column: number | null } {
  const { from, column: parent } = key;
  const end = documentEnd(text);
  let at = from;
  let column: number | null = null;
  let parted = false;
  let keepBlank = false;
  for (let start = from; start < end; ) {
    const line = lineAt(text, start);
    start = line.next;
    const words = text.slice(line.start, line.end);
    const indent = words.search(/[^ ]/);
    if (indent < 0 || words.trim() === '') {
      parted = true;
      if (keepBlank) at = line.next;
      continue;
    }
    if (words[indent] === '#') {
      const inLine = indent > parent && indent === column && !parted;
      if (indent <= (column ?? parent) && !inLine) continue;
      at = line.next;
      parted = false;
      continue;
    }
    const item = of === 'list' && indent === parent && /^-(\s|$)/.test(words.slice(indent));
    if (indent <= parent && !item) break;
    column ??= indent;
    // A block text that keeps its blank lines (`|+`) owns those below it.
    if (indent === column) keepBlank = false;
    if (/[|>][0-9]?\+[0-9]?\s*(#.*)?$/.test(words)) keepBlank = true;
    at = line.next;
    parted = false;
  }
  return { at, column };
}

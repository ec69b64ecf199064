/**
 * What is true and what is printed, side by side. The printed one is struck where a terminal can do that, and in
 * words always, so that neither colour nor a special terminal is needed to tell which of the two holds.
 */
import { indent, type Line, type Style, span, split, width } from './text.ts';

/** `8 N·m, bulletin 12. Not 10 N·m, manual 2-17, as printed.`; only the text where nothing was corrected. */
export function both(text: string, printed: string | null, style: Style = {}): Line {
  if (printed === null) return [span(text, style)];
  return [
    span(ended(text), { ...style, bold: true }),
    span(' Not '),
    span(bare(printed), { struck: true }),
    span(', as printed.'),
  ];
}

/** The same in words alone. */
export function bothSaid(text: string, printed: string | null): string {
  return both(text, printed)
    .map((s) => s.text)
    .join('');
}

/** A sentence of its own: what follows it must not read as its end. */
function ended(text: string): string {
  return /[.!?]$/.test(text) ? text : `${text}.`;
}

/** Its own full stop would stand before a comma. */
function bare(text: string): string {
  return text.replace(/\.$/, '');
}

/** Spans broken between words into lines of at most `columns`, each word in its own style. */
export function flow(what: Line, columns: number): Line[] {
  const lines: Line[] = [];
  let now: Line = [];
  let used = 0;
  const end = () => {
    if (now.length > 0) lines.push(now);
    now = [];
    used = 0;
  };
  for (const { blank, pieces } of words(what)) {
    if (now.length > 0 && used + 1 + width(pieces) > columns) end();
    if (now.length > 0) {
      now = [...now, blank];
      used += 1;
    }
    for (const part of broken(pieces, columns)) {
      if (used + width(part) > columns) end();
      now = [...now, ...part];
      used += width(part);
    }
  }
  end();
  return lines.map(joined);
}

interface Word {
  /** What stands before it, unless it begins a line. */
  blank: Line[number];
  pieces: Line;
}

/** `struck` ends in the middle of a word where a comma follows: so a word is a line of pieces. */
function words(what: Line): Word[] {
  const found: { blank: Line[number]; pieces: Line[number][] }[] = [];
  let glued = false;
  for (const s of what) {
    for (const text of s.text.split(/( +)/)) {
      if (text === '') continue;
      if (text.startsWith(' ')) {
        glued = false;
        found.push({ blank: { ...s, text: ' ' }, pieces: [] });
        continue;
      }
      const last = found.at(-1);
      if (last && (glued || last.pieces.length === 0)) last.pieces.push({ ...s, text });
      else found.push({ blank: { text: ' ' }, pieces: [{ ...s, text }] });
      glued = true;
    }
  }
  return found.filter((w) => w.pieces.length > 0);
}

/** A word that is longer than a line, in parts that fit. */
function broken(pieces: Line, columns: number): Line[] {
  if (width(pieces) <= columns) return [pieces];
  return pieces.flatMap((s) => split(s.text).map((text) => [{ ...s, text }]));
}

/** Neighbours of one style in one span. */
function joined(what: Line): Line {
  const out: Line[number][] = [];
  for (const s of what) {
    const last = out.at(-1);
    if (last && sameStyle(last, s)) out[out.length - 1] = { ...s, text: last.text + s.text };
    else out.push(s);
  }
  return out;
}

function sameStyle(a: Style, b: Style): boolean {
  return (
    a.bold === b.bold && a.colour === b.colour && a.inverse === b.inverse && a.struck === b.struck
  );
}

/** `flow` behind a label: the later lines are moved in by its width. */
export function hangingBoth(
  first: Line,
  what: { text: string; printed: string | null },
  columns: number,
  style: Style = {},
): Line[] {
  const hang = width(first);
  return flow(both(what.text, what.printed, style), Math.max(1, columns - hang)).map((l, i) =>
    i === 0 ? [...first, ...l] : indent(l, hang),
  );
}

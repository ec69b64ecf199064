/**
 * What is true and what is printed, side by side. The printed one is struck where a terminal can do that, and in
 * words always, so that neither colour nor a special terminal is needed to tell which of the two holds.
 */
import { keptOfLong } from '../../model/remembering.ts';
import { ended } from '../../model/safe.ts';
import { broken, fitsIn, hanging, indent, type Line, type Style, span, width } from './text.ts';

/** `8 N·m, bulletin 12. Not 10 N·m, manual 2-17, as printed.`; only the text where nothing was corrected. */
export function both(text: string, printed: Printed, style: Style = {}): Line {
  const all = typeof printed === 'string' ? [printed] : (printed ?? []);
  if (all.length === 0) return [span(text, style)];
  return [
    span(ended(text), { ...style, bold: true }),
    ...all.flatMap((one) => [span(' Not '), ...quoted(bare(one)), span(', as printed.')]),
  ];
}

/** One text, several where a line says several of them, none where nothing was corrected. */
export type Printed = string | readonly string[] | null;

/** The same in words alone. */
export function bothSaid(text: string, printed: Printed): string {
  return both(text, printed)
    .map((s) => s.text)
    .join('');
}

/** Words in quotes, so that "Not no oil" is not read as one; a figure stands as it is. */
function quoted(text: string): Line {
  const struck = span(text, { struck: true });
  return /^[\d.]/.test(text) ? [struck] : [span('"'), struck, span('"')];
}

/** Its own full stop would stand before a comma. */
function bare(text: string): string {
  return text.replace(/\.$/, '');
}

/** Spans broken between words into lines of at most `columns`, each word in its own style. */
export function flow(what: Line, columns: number): Line[] {
  const looks = JSON.stringify(what.map(({ text, ...style }) => [text.length, style]));
  const all = `${columns} ${looks}${what.map((s) => s.text).join('')}`;
  return [...flowed(all, () => flowIn(what, columns))];
}

const flowed = keptOfLong<readonly Line[]>();

function flowIn(what: Line, columns: number): readonly Line[] {
  const lines: Line[] = [];
  let now: Line = [];
  let used = 0;
  const end = () => {
    if (now.length > 0) lines.push(now);
    now = [];
    used = 0;
  };
  for (const { blank, pieces } of words(what)) {
    if (now.length > 0 && !fitsIn(pieces, columns - used - 1)) end();
    if (now.length > 0) {
      now = [...now, blank];
      used += 1;
    }
    const isLong = !fitsIn(pieces, columns);
    for (const s of pieces) {
      const parts = isLong ? broken(s.text, columns, columns - used) : [s.text];
      for (const [i, text] of parts.entries()) {
        // The one before it is as long as can be.
        if (i > 0) end();
        if (text !== '') now = [...now, { ...s, text }];
      }
      used += width(parts.at(-1) ?? '');
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

/** Lines for what was corrected of these; none for what stands as it is printed. */
export function corrected(
  rows: readonly { label: string; text: string; printed: string | null }[],
  columns: number,
): Line[] {
  return rows.flatMap((r) =>
    r.printed === null ? [] : flow([span(`${r.label}: `), ...both(r.text, r.printed)], columns),
  );
}

/** `hanging` with both texts behind the label. */
export function hangingBoth(
  first: Line,
  what: { text: string; printed: Printed },
  columns: number,
  style: Style = {},
): Line[] {
  const { text, printed } = what;
  if (printed === null || printed.length === 0) return hanging(first, text, columns, style);
  const hang = width(first);
  return flow(both(text, printed, style), Math.max(1, columns - hang)).map((l, i) =>
    i === 0 ? [...first, ...l] : indent(l, hang),
  );
}

/**
 * The holes of a piece on the screen: its number between signs that say how it stands, and beside it what
 * belongs there. Where they do not fit side by side as they lie, they stand in lines that scroll.
 */
import { LOOKS, type Shape } from '../../piece/looks.ts';
import type { Layout } from '../../piece/map.ts';
import { type Cell, type PlacedCell, place } from '../../piece/place.ts';
import { dotted } from './dotted.ts';
import { countLine, window } from './scroll.ts';
import { type Line, type Span, type Style, span, width } from './text.ts';

/** A hole as it is to be drawn. */
export interface Mark {
  name: string;
  shape: Shape;
  /** It is the one the next key is about. */
  here: boolean;
  /** What is in the hand belongs here, or what `litSaid` says. */
  lit: boolean;
  litSaid?: string;
  /** Beside it; `short` where there is less room. */
  label: string;
  short: string;
  /** Labels that the holes are placed by, so that none moves with what is said of it. */
  room?: readonly [label: string, short: string];
  /** How it stands, in words, where its shape says something of this step alone. */
  said?: string;
}

export const SIGNS: Readonly<Record<Shape | 'here', readonly [string, string]>> = {
  home: LOOKS.home.signs,
  out: LOOKS.out.signs,
  in: LOOKS.in.signs,
  tight: LOOKS.tight.signs,
  trouble: LOOKS.trouble.signs,
  here: ['<', '>'],
};

function styleOf(shape: Shape): Style {
  const { colour } = LOOKS[shape];
  return { ...(colour === null ? {} : { colour }), ...(shape === 'trouble' ? { bold: true } : {}) };
}
const DOT = '.';
const LIT = '>';
const LIT_LOOK: Style = { colour: 'magenta', bold: true };
const HERE: Style = { bold: true, inverse: true };
/** Columns of a label; longer ones are cut. */
const LABEL = 14;

type Labels = (mark: Mark) => string;
const LEVELS: readonly Labels[] = [(m) => m.label, (m) => m.short, () => ''];
/** What is kept free for a label where the holes are placed, as much as there is room for. */
const FREE: readonly Labels[] = [
  (m) => m.room?.[0] ?? m.label,
  (m) => m.room?.[1] ?? m.short,
  () => '',
];

/** True where the holes do not fit as they lie, not even without labels. */
export function inLines(
  layout: Layout,
  names: readonly string[],
  columns: number,
  rows: number,
): boolean {
  const marks = names.map(
    (name): Mark => ({ name, shape: 'out', here: false, lit: false, label: '', short: '' }),
  );
  return placeFree(layout, marks, columns, rows) === null;
}

/** From one hole to another: drawn as a dotted line where holes stand as they lie. */
export interface HoleToHole {
  from: string;
  to: string;
}

/** Exactly `rows` lines. */
export function drawMap(
  layout: Layout,
  marks: readonly Mark[],
  columns: number,
  rows: number,
  way: HoleToHole | null = null,
): Line[] {
  const placed = placeFree(layout, marks, columns, rows);
  if (placed) {
    const labels = LEVELS.find((level) => fits(placed, marks, level, columns)) ?? NO_LABEL;
    const lines: { column: number; mark: Mark }[][] = Array.from({ length: rows }, () => []);
    const byName = new Map(marks.map((m) => [m.name, m]));
    for (const p of placed) {
      const mark = byName.get(p.name);
      if (mark) lines[p.row]?.push({ column: p.column, mark });
    }
    const room = nameRoom(marks);
    const before = 1 + Math.ceil(room / 2);
    const end = (name: string | undefined) => {
      const p = placed.find((q) => q.name === name);
      return p ? { row: p.row, column: p.column + before } : null;
    };
    const dots = dotted(end(way?.from), end(way?.to));
    return lines.map((there, row) =>
      putTogether(there, (m) => drawMark(m, labels(m), room), dots.get(row)),
    );
  }
  return drawLines(marks, columns, rows);
}

function nameRoom(marks: readonly Mark[]): number {
  return Math.max(1, ...marks.map((m) => width(m.name)));
}

function label(text: string): string {
  return text.length > LABEL ? `${text.slice(0, LABEL - 2)}..` : text;
}

const NO_LABEL: Labels = () => '';

/** Where each hole goes, whatever happened to it. */
function placeFree(
  layout: Layout,
  marks: readonly Mark[],
  columns: number,
  rows: number,
): PlacedCell[] | null {
  for (const free of FREE) {
    const placed = place(layout, cells(marks, free), columns, rows);
    if (placed) return placed;
  }
  return null;
}

/** Each label ends before the hole beside it: a washer is said of all holes or of none, never left out of one. */
function fits(
  placed: readonly PlacedCell[],
  marks: readonly Mark[],
  labels: Labels,
  columns: number,
): boolean {
  const texts = new Map(cells(marks, labels).map((c) => [c.name, c.columns]));
  return placed.every(({ name, row, column }) => {
    const others = placed.filter((p) => p.row === row && p.column > column);
    const next = Math.min(columns + 1, ...others.map((p) => p.column));
    return column + (texts.get(name) ?? 0) < next;
  });
}

function cells(marks: readonly Mark[], labels: Labels): Cell[] {
  const room = nameRoom(marks);
  return marks.map((m) => ({
    name: m.name,
    columns: 3 + room + width(label(labels(m))),
    before: 1 + Math.ceil(room / 2),
  }));
}

/** `>( 3)S`, `<11>M clip`. */
function drawMark(mark: Mark, labelled: string, room: number): Line {
  const [open, close] = SIGNS[mark.here ? 'here' : mark.shape];
  const look = mark.here
    ? { ...styleOf(mark.shape), ...HERE }
    : mark.lit
      ? LIT_LOOK
      : styleOf(mark.shape);
  const spans: Span[] = [
    span(mark.lit && !mark.here ? LIT : ' ', LIT_LOOK),
    span(`${open}${mark.name.padStart(room)}${close}`, look),
  ];
  if (labelled !== '')
    spans.push(span(label(labelled), mark.lit || mark.here ? { bold: true } : {}));
  return spans;
}

function putTogether(
  there: readonly { column: number; mark: Mark }[],
  draw: (m: Mark) => Line,
  dots: readonly number[] = [],
): Line {
  const spans: Span[] = [];
  let used = 0;
  const fillTo = (column: number) => {
    const free = Array.from({ length: column - used }, (_, i) =>
      dots.includes(used + i) ? DOT : ' ',
    );
    spans.push({ text: free.join('') });
  };
  for (const { column, mark } of [...there].sort((a, b) => a.column - b.column)) {
    if (column > used) fillTo(column);
    const drawn = draw(mark);
    spans.push(...drawn);
    used = Math.max(used, column) + width(drawn);
  }
  const last = Math.max(-1, ...dots);
  if (last >= used) fillTo(last + 1);
  return spans;
}

/** How many holes stand side by side where they stand in lines. */
export function perLine(names: readonly string[], columns: number, labelColumns: number): number {
  const room = Math.max(1, ...names.map((n) => width(n)));
  return Math.max(1, Math.floor(columns / (3 + room + labelColumns + GAP)));
}
const GAP = 1;
/** Columns of a label where holes stand in lines. */
export const LINE_LABEL = 4;

function drawLines(marks: readonly Mark[], columns: number, rows: number): Line[] {
  const each = perLine(
    marks.map((m) => m.name),
    columns,
    LINE_LABEL,
  );
  const room = nameRoom(marks);
  const all: Line[] = [];
  for (let i = 0; i < marks.length; i += each) {
    const row = marks
      .slice(i, i + each)
      .map((mark, k) => ({ mark, column: k * (3 + room + LINE_LABEL + GAP) }));
    all.push(putTogether(row, (m) => drawMark(m, m.short.slice(0, LINE_LABEL), room)));
  }
  const here = Math.floor(
    Math.max(
      0,
      marks.findIndex((m) => m.here),
    ) / each,
  );
  if (all.length > rows) {
    const top = window(all.length, rows - 1, here);
    const below = all.length - top - (rows - 1);
    return [...all.slice(top, top + rows - 1), countLine(top, below, 'arrows')];
  }
  const above = Math.floor((rows - all.length) / 2);
  return Array.from({ length: rows }, (_, i) => all[i - above] ?? []);
}

/** Labels for the bags and trays: what is in it, of which piece, since when. A sheet of them, ready to be cut. */
import { textsIn } from '../model/said.ts';
import { troubleOf } from '../model/states/troubles.ts';
import type { Job, PieceNow } from '../model/types.ts';
import { many } from '../model/words.ts';
import { diaryLines } from '../plan/order/lines.ts';
import { isAway } from '../plan/order/needed.ts';
import type { Ask, NoPaper, Paper } from './ask.ts';
import { type Markup, m, t } from './markup.ts';
import { wrapped } from './measure.ts';
import { page, SIZES } from './page.ts';
import { counted, dayOf, kindSaid } from './said.ts';

export interface LabelSize {
  /** mm */
  width: number;
  height: number;
}

export interface LabelsAsk extends Omit<Ask, 'piece'> {
  label: LabelSize;
  /** All pieces, not only what is off. */
  all: boolean;
  /** Only this piece. */
  piece: PieceNow | null;
}

/** Smaller than this holds no text, larger no two. */
const LEAST: LabelSize = { width: 25, height: 15 };

/** `70x37`, `52.5 x 29.7`; null where it is none. */
export function readLabel(text: string): LabelSize | null {
  const [, w, h] = /^(\d+(?:\.\d+)?)\s*[x×]\s*(\d+(?:\.\d+)?)(?:\s*mm)?$/i.exec(text.trim()) ?? [];
  return w === undefined || h === undefined ? null : { width: Number(w), height: Number(h) };
}

/** How many stand beside and below each other. */
export function gridOf(
  label: LabelSize,
  size: LabelsAsk['size'],
): { columns: number; rows: number } {
  const sheet = SIZES[size];
  const fit = (room: number, one: number) => Math.floor(room / one + 1e-6);
  return { columns: fit(sheet.width, label.width), rows: fit(sheet.height, label.height) };
}

/** From the edge of the sheet to a text, mm: what no printer reaches; and at least from the edge of a label. */
const UNREACHED = 4.5;
const EDGE = 2;
/** A piece whose text goes on over more labels than this is not labelled by them. */
const MOST_PARTS = 9;
const SIZES_OF_TEXT = [3.6, 3.2, 2.8, 2.5, 2.2];
const LINE = 1.22;

export function labels(ask: LabelsAsk): Paper | NoPaper {
  const { job, label, size } = ask;
  const { columns, rows } = gridOf(label, size);
  if (label.width < LEAST.width || label.height < LEAST.height || columns < 1 || rows < 1) {
    const say = `Labels of ${label.width} x ${label.height} mm: from ${LEAST.width} x ${LEAST.height} to a whole sheet.`;
    return { code: 'label-size', say, wrong: true };
  }
  const pieces = piecesOf(ask);
  if (pieces.length === 0) {
    return { code: 'nothing-off', say: 'Nothing is off. --all makes labels for all pieces.' };
  }
  const inset = insetOf(ask, columns, rows);
  const small = SIZES_OF_TEXT.at(-1) ?? 2;
  if ((label.width - 2 * inset.x) / (small * HEAD) - NUMBER < NAME_ROOM) {
    const say = `Labels of ${label.width} x ${label.height} mm are too narrow for the name of a piece. Take wider ones.`;
    return { code: 'label-size', say, wrong: true };
  }
  const lettering = pieces.map((piece) => lettered(textOf(job, piece), label, inset));
  const worst = lettering.findIndex((parts) => parts.length > MOST_PARTS);
  if (worst >= 0) {
    const say = `Labels of ${label.width} x ${label.height} mm hold too little: ${pieces[worst]?.spec.name} alone would go over ${lettering[worst]?.length} of them. Take larger ones.`;
    return { code: 'label-size', say, wrong: true };
  }
  const each = lettering.flat();
  const perSheet = columns * rows;
  const sheets = Array.from({ length: Math.ceil(each.length / perSheet) }, (_, i) =>
    each.slice(i * perSheet, (i + 1) * perSheet),
  );
  const body = sheets.map((these) => m`<section class="sheet">${these}</section>`);
  return {
    html: page({
      title: `Labels: ${job.upper.job}`,
      size,
      margin: 0,
      style: styleOf(ask, columns, rows),
      body: m`${body}`,
    }),
    sheets: sheets.length,
    life: null,
    notes: [
      `${many(each.length, 'label')} of ${label.width} x ${label.height} mm, ${columns} beside and ${rows} below each other on ${SIZES[size].name}.`,
    ],
  };
}

/** Beside the labels of a sheet, and above and below, mm. */
function besideOf({ label, size }: LabelsAsk, columns: number, rows: number) {
  const sheet = SIZES[size];
  const left = (sheet.width - columns * label.width) / 2;
  return { left, top: (sheet.height - rows * label.height) / 2 };
}

/** From the edge of a label to its text, mm: where the sheet leaves room beside the labels, less. */
function insetOf(ask: LabelsAsk, columns: number, rows: number): { x: number; y: number } {
  const { left, top } = besideOf(ask, columns, rows);
  return { x: Math.max(EDGE, UNREACHED - left), y: Math.max(EDGE, UNREACHED - top) };
}

function styleOf(ask: LabelsAsk, columns: number, rows: number): string {
  const { label, size } = ask;
  const sheet = SIZES[size];
  const { left, top } = besideOf(ask, columns, rows);
  const inset = insetOf(ask, columns, rows);
  return `
.sheet{display:grid;grid-template-columns:repeat(${columns},${label.width}mm);grid-auto-rows:${label.height}mm;padding:${top}mm 0 0 ${left}mm;height:${sheet.height - 0.5}mm;overflow:hidden}
.label{padding:${inset.y}mm ${inset.x}mm;overflow:hidden;line-height:${LINE};outline:.1mm dotted #999;outline-offset:-.1mm}
.label p{margin:0}`;
}

function piecesOf({ job, all, piece }: LabelsAsk): PieceNow[] {
  if (piece) return [piece];
  return [...job.pieces.values()].filter((p) => all || isApart(p));
}

/** It is off, or some of its bolts lie about already. */
function isApart(piece: PieceNow): boolean {
  return isAway(piece) || piece.holes.some((h) => h.state === 'out');
}

interface LabelText {
  name: string;
  lines: string[];
}

/** Above all the piece and its tray; then what should be in it. */
function textOf(job: Job, piece: PieceNow): LabelText {
  const { spec, tray, holes, round } = piece;
  const off = diaryLines(job).off.get(spec.key)?.at;
  const out = isApart(piece) ? holes.filter((h) => h.state === 'out') : holes;
  const here = out.filter((h) => h.trouble === null || troubleOf(h.trouble).inTray);
  const items = here.flatMap((h) => h.found ?? h.belongs ?? []);
  const unknown = here.length - items.length;
  return {
    name: spec.name,
    lines: [
      [tray === null ? 'tray ______' : tray, `round ${round}`, off === undefined ? '' : dayOf(off)]
        .filter((s) => s !== '')
        .join(' · '),
      ...counted(items).map(({ count, said, kind }) => {
        const text = kindSaid(job.upper.kinds, kind);
        return `${count} × ${said}${text.slice(kind.length)}`;
      }),
      ...(unknown > 0 ? [`${unknown} × kind not noted`] : []),
      ...(spec.loose.length === 0 ? [] : [`loose: ${textsIn(spec.loose).join('; ')}`]),
      job.upper.job,
    ],
  };
}

/** Of a longer name its start stands at the head, and the whole of it below. */
const NAME_LINES = 2;
const HEAD = 1.35;

/** As large as it fits; what does not fit even in the smallest letters goes on with a second label. */
function lettered(
  { name, lines }: LabelText,
  { width, height }: LabelSize,
  inset: { x: number; y: number },
): Markup[] {
  const [w, h] = [width - 2 * inset.x, height - 2 * inset.y];
  // The number of a label stands behind the name.
  const headed = (size: number) => wrapped(name, w / (size * HEAD) - NUMBER);
  const count = (texts: readonly string[], size: number) =>
    texts.reduce((sum, line) => sum + wrapped(line, w / size).length, 0);
  const room = (size: number) =>
    Math.floor(h / (size * LINE) - Math.min(headed(size).length, NAME_LINES) * HEAD + 1e-6);
  const size = SIZES_OF_TEXT.find(
    (s) => headed(s).length <= NAME_LINES && count(lines, s) <= room(s),
  );
  if (size !== undefined) return [one(name, lines, size, '')];
  const small = SIZES_OF_TEXT.at(-1) ?? 2;
  const start = headed(small);
  const short = start.length > NAME_LINES;
  const head = short ? `${start.slice(0, NAME_LINES).join(' ')}…` : name;
  const all = [...(short ? [name] : []), ...lines].map((line) => wrapped(line, w / small));
  const parts = filled(all, Math.max(1, room(small)));
  return parts.map((part, i) =>
    one(head, part, small, parts.length > 1 ? ` ${i + 1}/${parts.length}` : ''),
  );
}

/** Texts in their wrapped lines, as many as fit one label: none is parted that fits one by itself. */
function filled(texts: readonly (readonly string[])[], most: number): string[][] {
  const parts: string[][] = [[]];
  for (const lines of texts) {
    if (lines.length <= most && (parts.at(-1)?.length ?? 0) + lines.length > most) parts.push([]);
    for (const line of lines) {
      if ((parts.at(-1)?.length ?? 0) >= most) parts.push([]);
      parts.at(-1)?.push(line);
    }
  }
  return parts;
}
/** Room for a dozen letters of the name, in sizes of the letters. */
const NAME_ROOM = 6;
/** Room for ` 12/41`, in sizes of the letters. */
const NUMBER = 4;

function one(name: string, lines: readonly string[], size: number, part: string): Markup {
  return m`<div class="label" style="font-size:${size}mm"><p style="font-size:1.35em"><b>${t(name)}${part}</b></p>${lines.map((line) => m`<p>${t(line)}</p>`)}</div>`;
}

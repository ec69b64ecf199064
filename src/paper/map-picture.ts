/** The holes of a piece as they stand, as one picture: states by shape and by colour, and a key of those that occur. */
import type { PieceNow } from '../model/types.ts';
import { inMm } from '../piece/life-size.ts';
import { LOOKS, SHAPES, type Shape, shapeOf } from '../piece/looks.ts';
import { layout } from '../piece/map.ts';
import { around, writeBeside } from './labels-at.ts';
import { type Markup, m } from './markup.ts';
import { textWidth } from './measure.ts';
import { belongsSaid } from './said.ts';

/** Half of a sign, mm, and the distance of two holes that nobody measured. */
const RADIUS = 4;
const APART = 14;
const PAD = 2;
const KEY = 7;
const LETTERS = 3;

export interface MapPicture {
  svg: Markup;
  /** mm */
  width: number;
  height: number;
  life: boolean;
}

/** `most` is the room it should fit into where nobody measured the holes; measured ones keep their size. Null: no holes. */
export function mapPicture(
  piece: PieceNow,
  most: { width: number; height: number } = { width: 180, height: 120 },
): MapPicture | null {
  if (piece.holes.length === 0) return null;
  const names = piece.holes.map((h) => h.name);
  const room = { width: most.width - 2 * APART, height: most.height - 2 * APART };
  const sized = inMm(layout(piece.spec, names), { across: null, apart: APART, ...room });
  const lettered = piece.holes.map((hole, i) => {
    const { x = 0, y = 0 } = sized.places[i] ?? {};
    const kind = belongsSaid(hole);
    const lines = [
      ...(kind === null ? [] : [kind]),
      ...(hole.trouble === null ? [] : [hole.trouble]),
    ];
    return { x, y, radius: RADIUS, lines };
  });
  const written = writeBeside(lettered);
  const shapes = SHAPES.filter((s) => piece.holes.some((h) => shapeOf(h) === s));
  const key = keyOf(shapes);
  const box = around(
    written.map((w) => w.box),
    PAD,
  );
  const width = Math.max(box.width, key.width);
  const height = box.height + KEY;
  const holes = piece.holes.map((hole, i) => {
    const { x = 0, y = 0 } = lettered[i] ?? {};
    const lines = written[i]?.lines ?? [];
    return m`<g class="hole" data-hole="${hole.name}" data-state="${shapeOf(hole)}">${sign(shapeOf(hole), x, y)}${number(hole.name, shapeOf(hole), x, y)}${lines.map((l) => m`<text x="${l.x}" y="${l.y}" font-size="${l.size}">${l.text}</text>`)}</g>`;
  });
  const svg = m`<svg xmlns="http://www.w3.org/2000/svg" class="map" width="${width}mm" height="${height}mm" viewBox="${box.x} ${box.y} ${width} ${height}" font-family="sans-serif" data-life="${sized.life ? 'yes' : 'no'}" role="img" aria-label="${aria(piece)}">${holes}<g class="key" transform="translate(${box.x} ${box.y + box.height})">${key.markup}</g></svg>`;
  return { svg, width, height, life: sized.life };
}

/** As a file of its own. */
export function mapFile(piece: PieceNow): string | null {
  const picture = mapPicture(piece);
  if (!picture) return null;
  const { text } = m`<?xml version="1.0" encoding="UTF-8"?>
<!-- putback -->
${picture.svg}
`;
  return text;
}

function aria(piece: PieceNow): string {
  const counts = SHAPES.flatMap((s) => {
    const n = piece.holes.filter((h) => shapeOf(h) === s).length;
    return n === 0 ? [] : [`${n} ${LOOKS[s].say}`];
  });
  return `${piece.spec.name}: ${counts.join(', ')}`;
}

function number(name: string, shape: Shape, x: number, y: number): Markup {
  const { filled, ink } = LOOKS[shape];
  const size = name.length > 2 ? 2.9 : 3.6;
  return m`<text x="${x}" y="${y + size * 0.36}" font-size="${size}" font-weight="bold" text-anchor="middle" fill="${filled ? '#fff' : ink}">${name}</text>`;
}

/** The outline of a state about a place. */
function sign(shape: Shape, x: number, y: number, r = RADIUS): Markup {
  const { outline, ink, filled } = LOOKS[shape];
  const look = m`fill="${filled ? ink : 'none'}" stroke="${ink}" stroke-width="${shape === 'home' ? 0.25 : 0.5}"`;
  switch (outline) {
    case 'circle':
      return m`<circle cx="${x}" cy="${y}" r="${r * 0.9}" ${look}/>`;
    case 'dashed circle':
      return m`<circle cx="${x}" cy="${y}" r="${r * 0.9}" ${look} stroke-dasharray="1.2 1"/>`;
    case 'square':
      return m`<rect x="${x - r * 0.85}" y="${y - r * 0.85}" width="${r * 1.7}" height="${r * 1.7}" ${look}/>`;
    case 'hexagon':
      return m`<path d="${polygon(6, x, y, r, 0)}" ${look}/>`;
    case 'diamond':
      return m`<path d="${polygon(4, x, y, r * 1.15, 0)}" ${look}/>`;
  }
}

function polygon(n: number, x: number, y: number, r: number, turn: number): string {
  const points = Array.from({ length: n }, (_, i) => {
    const a = turn + (2 * Math.PI * i) / n;
    return `${(x + r * Math.cos(a)).toFixed(3)} ${(y + r * Math.sin(a)).toFixed(3)}`;
  });
  return `M${points.join('L')}Z`;
}

function keyOf(shapes: readonly Shape[]): { markup: Markup[]; width: number } {
  let x = PAD + 2;
  const markup = shapes.map((shape) => {
    const at = x;
    x += 4 + textWidth(LOOKS[shape].say) * LETTERS + 3;
    return m`${sign(shape, at, KEY / 2, 2)}<text x="${at + 3}" y="${KEY / 2 + 1}" font-size="${LETTERS}">${LOOKS[shape].say}</text>`;
  });
  return { markup, width: x };
}

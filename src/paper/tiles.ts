/**
 * A drawing that is larger than a sheet, over several sheets that overlap, with marks that come to lie upon each other.
 * All in the mm of the drawing: a sheet shows a part of it, and moves or stretches nothing.
 */
import type { Box } from '../piece/life-size.ts';
import { type Markup, m } from './markup.ts';

export interface Tile extends Box {
  /** From 1, in the order in which they are laid: from left to right, then down. */
  number: number;
  column: number;
  row: number;
}

/** A cross in a ring, the same place of the drawing on two sheets or four. */
export interface OverlapMark {
  x: number;
  y: number;
  name: string;
}

export interface Tiles {
  tiles: readonly Tile[];
  columns: number;
  rows: number;
  marks: readonly OverlapMark[];
}

/** Sheets that one drawing takes; `tilesOf` lays them. */
export function sheetsOf(
  drawing: Box,
  sheet: { width: number; height: number },
  overlap: number,
): number {
  const count = (length: number, size: number) =>
    length <= size ? 1 : Math.ceil((length - overlap) / (size - overlap) - 1e-9);
  return count(drawing.width, sheet.width) * count(drawing.height, sheet.height);
}

/** `overlap` is what two neighbours both show, mm; smaller than the sheet. */
export function tilesOf(
  drawing: Box,
  sheet: { width: number; height: number },
  overlap: number,
): Tiles {
  const across = starts(drawing.width, sheet.width, overlap);
  const down = starts(drawing.height, sheet.height, overlap);
  const [width, height] = [
    Math.min(drawing.width, sheet.width),
    Math.min(drawing.height, sheet.height),
  ];
  const tiles = down.flatMap((y, row) =>
    across.map((x, column) => ({
      x: drawing.x + x,
      y: drawing.y + y,
      width,
      height,
      row,
      column,
      number: row * across.length + column + 1,
    })),
  );
  const marks = [
    ...across
      .slice(1)
      .flatMap((x) =>
        down.flatMap((y) => FROM_EDGE.map((part) => [x + overlap / 2, y + part * height] as const)),
      ),
    ...down
      .slice(1)
      .flatMap((y) =>
        across.flatMap((x) =>
          FROM_EDGE.map((part) => [x + part * width, y + overlap / 2] as const),
        ),
      ),
  ];
  return {
    tiles,
    columns: across.length,
    rows: down.length,
    marks: marks.map(([x, y], i) => ({ x: drawing.x + x, y: drawing.y + y, name: letters(i) })),
  };
}

const FROM_EDGE = [0.3, 0.7] as const;

/** Where the sheets begin, evenly, so that each two overlap by just as much. */
function starts(length: number, sheet: number, overlap: number): number[] {
  if (length <= sheet) return [0];
  const count = Math.ceil((length - overlap) / (sheet - overlap) - 1e-9);
  return Array.from({ length: count }, (_, i) => i * (sheet - overlap));
}

/** A, B … Z, AA, AB … */
function letters(i: number): string {
  const last = String.fromCharCode(65 + (i % 26));
  return i < 26 ? last : letters(Math.floor(i / 26) - 1) + last;
}

export function isIn(tile: Box, x: number, y: number): boolean {
  return x >= tile.x && x <= tile.x + tile.width && y >= tile.y && y <= tile.y + tile.height;
}

/** All of it. */
export function holdsBox(tile: Box, box: Box): boolean {
  return isIn(tile, box.x, box.y) && isIn(tile, box.x + box.width, box.y + box.height);
}

const RING = 2.5;
const ARM = 4;

export function drawMark({ x, y, name }: OverlapMark): Markup {
  return m`<g class="overlap" data-mark="${name}" fill="none" stroke="#000" stroke-width=".15"><circle cx="${x}" cy="${y}" r="${RING}"/><path d="M${x - ARM} ${y}H${x + ARM}M${x} ${y - ARM}V${y + ARM}"/><text x="${x + RING + 0.4}" y="${y - 1}" font-size="2.6" fill="#000" stroke="none">${name}</text></g>`;
}

/** Which sheet lies where; empty for a single one. */
export function layingSaid({ tiles, columns, rows, marks }: Tiles): string {
  if (tiles.length < 2) return '';
  const first = marks[0]?.name ?? 'A';
  const rowsSaid = rows > 1 ? `${rows} rows of ${columns}` : `${columns} side by side`;
  return `${tiles.length} sheets, ${rowsSaid}: lay them so that the crosses with the same letter (${first} on ${first}) lie upon each other, against a light or a window.`;
}

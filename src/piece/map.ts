/**
 * Where the holes of a piece are: one geometry for the sequence, the screens and paper.
 *
 * x grows to the right and y down, as the piece is seen from outside. Three sources, the best one that is
 * complete: `at` in mm on every hole; the picture of `map:`, whose cells become mm by `pitch:`; else a ring,
 * hole 1 at 12 o'clock and on clockwise.
 */
import { kept } from '../model/kept.ts';
import type { HoleSpec } from '../model/types.ts';
import { isHoleName } from './names.ts';

export interface MapCell {
  name: string;
  /** Index of the word in its line, from 0. */
  column: number;
  /** Index of the line among those with words, from 0. */
  row: number;
}

export interface MapFault {
  /** A word that is no hole and no dot; a hole drawn twice; lines of unequal length; no hole at all. */
  code: 'map-cell' | 'map-twice' | 'map-ragged' | 'map-empty';
  /** From 1, within the text of the map. */
  line: number;
  /** From 1, in characters. */
  column: number;
  say: string;
}

/** Reads the picture: words between blanks, `.` for nothing. Empty lines are not rows. */
export function readMap(text: string): { cells: MapCell[]; faults: MapFault[] } {
  const cells = new Map<string, MapCell>();
  const faults: MapFault[] = [];
  let row = 0;
  let width: number | null = null;
  for (const [index, line] of text.split(/\r\n|\n|\r/).entries()) {
    const words = [...line.matchAll(/\S+/g)];
    if (words.length === 0) continue;
    const place = placeIn(line, index + 1);
    for (const [column, { 0: word, index: at }] of words.entries()) {
      if (word === '.') continue;
      if (!isHoleName(word)) {
        const say = `${word} is neither a hole (1, 2, 4a) nor a dot for nothing`;
        faults.push({ code: 'map-cell', ...place(at), say });
      } else if (cells.has(word)) {
        faults.push({ code: 'map-twice', ...place(at), say: `hole ${word} is drawn twice` });
      } else {
        cells.set(word, { name: word, column, row });
      }
    }
    width ??= words.length;
    if (words.length !== width) {
      const say = `this line of the map has ${words.length} cells, the first has ${width}`;
      faults.push({ code: 'map-ragged', ...place(words[0]?.index ?? 0), say });
    }
    row += 1;
  }
  if (cells.size === 0 && faults.length === 0) {
    faults.push({ code: 'map-empty', line: 1, column: 1, say: 'the map has no hole in it' });
  }
  return { cells: [...cells.values()], faults };
}

/** What the picture of a piece shows; nothing where it has none. */
export function drawnCells(spec: { map: string | null }): readonly MapCell[] {
  const { map } = spec;
  return map === null ? [] : kept(spec, 'drawn', () => readMap(map).cells);
}

/** Columns in characters: asked for from left to right, each is counted on from the last one. */
function placeIn(text: string, line: number): (at: number) => { line: number; column: number } {
  let [counted, column] = [0, 1];
  return (at) => {
    if (at < counted) [counted, column] = [0, 1];
    for (const c of text.slice(counted, at)) if (c !== '') column++;
    counted = at;
    return { line, column };
  };
}

export interface MapPlace {
  name: string;
  /** To the right. */
  x: number;
  /** Down. */
  y: number;
}

export interface Layout {
  from: 'ring' | 'map' | 'at';
  /** mm; or cells of the map, where no pitch is known; or the radius of the ring. */
  unit: 'mm' | 'cell' | 'radius';
  /** One for each name asked for, in that order. */
  places: readonly MapPlace[];
  /** Names that have no place where others have one: below the map, or (`at` on some holes only) in the ring. */
  missing: readonly string[];
}

/** Hole k of n (k from 0) on a ring of radius 1, clockwise from 12 o'clock. */
function onRing(name: string, k: number, n: number): MapPlace {
  const turn = (2 * Math.PI * k) / n;
  return { name, x: Math.sin(turn), y: -Math.cos(turn) };
}

/** The places of the holes called `names`. Every name gets one, whatever the file says or leaves out. */
export function layout(
  spec: {
    map: string | null;
    pitch: readonly [number, number] | null;
    holes: ReadonlyMap<string, Pick<HoleSpec, 'at'>>;
  },
  names: readonly string[],
): Layout {
  const measured = names.flatMap((name) => {
    const [x, y] = spec.holes.get(name)?.at ?? [];
    return x !== undefined && y !== undefined && Number.isFinite(x) && Number.isFinite(y)
      ? [{ name, x, y }]
      : [];
  });
  if (names.length > 0 && measured.length === names.length) {
    return { from: 'at', unit: 'mm', places: measured, missing: [] };
  }
  const drawn = new Map(drawnCells(spec).map((cell) => [cell.name, cell]));
  const shown = names.flatMap((name) => drawn.get(name) ?? []);
  if (shown.length === 0) {
    const known = new Set(measured.map((p) => p.name));
    const missing = known.size > 0 || drawn.size > 0 ? names.filter((n) => !known.has(n)) : [];
    const places = names.map((name, k) => onRing(name, k, names.length));
    return { from: 'ring', unit: 'radius', places, missing };
  }
  const missing = names.filter((name) => !drawn.has(name));
  const pitch = spec.pitch?.every((p) => Number.isFinite(p) && p > 0) ? spec.pitch : null;
  const [dx, dy] = pitch ?? [1, 1];
  const all = [...drawn.values()];
  const width = Math.max(...all.map((c) => c.column)) + 1;
  const below = Math.max(...all.map((c) => c.row)) + 1;
  const spare = new Map(missing.map((name, i) => [name, i]));
  const places = names.map((name) => {
    const i = spare.get(name) ?? 0;
    const cell = drawn.get(name) ?? { column: i % width, row: below + Math.floor(i / width) };
    return { name, x: cell.column * dx, y: cell.row * dy };
  });
  return { from: 'map', unit: pitch === null ? 'cell' : 'mm', places, missing };
}

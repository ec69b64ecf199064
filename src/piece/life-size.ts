/**
 * The places of a piece's holes in mm, for what is laid on paper: at life size where they were measured, else as
 * drawn, and which of the two it is. The geometry is that of map.ts, moved so that the least x and y are 0.
 */
import { tidy } from '../bolt/read/numbers.ts';
import type { Layout, MapPlace } from './map.ts';

/**
 * `at`: measured hole by hole; `pitch`: a picture with its pitch; `width`: scaled to the one width that was
 * measured; `drawn`: no measure is known; `rows`: too many for a ring of which nothing is known, side by side.
 */
type Measured = 'at' | 'pitch' | 'width' | 'drawn' | 'rows';

export interface Sized {
  places: readonly MapPlace[];
  /** Between the outermost middles of holes, mm. */
  width: number;
  height: number;
  by: Measured;
  life: boolean;
  /** Holes of which nothing says where they are: they lie beside the others. */
  missing: readonly string[];
}

export interface Room {
  /** From the middle of the leftmost hole to that of the rightmost as somebody measured it, mm; null: nobody did. */
  across: number | null;
  /** What is as drawn should fit into this, mm. */
  width: number;
  height: number;
  /** Least distance of the middles of two holes where they are as drawn, mm. */
  apart: number;
}

/** A ring of more holes than this says nothing that rows do not. */
const MOST_IN_RING = 40;

export function inMm(layout: Layout, room: Room): Sized {
  const { from, unit, missing } = layout;
  const said = (by: Measured, places: readonly MapPlace[]): Sized => {
    const box = boxOf(places);
    const moved = places.map((p) => ({ ...p, x: tidy(p.x - box.x), y: tidy(p.y - box.y) }));
    const life = by === 'at' || by === 'pitch' || by === 'width';
    return { places: moved, width: box.width, height: box.height, by, life, missing };
  };
  if (unit === 'mm') return said(from === 'at' ? 'at' : 'pitch', layout.places);
  const box = boxOf(layout.places.filter((p) => !missing.includes(p.name)));
  if (room.across !== null && box.width > 0) {
    return said('width', scaled(layout.places, room.across / box.width));
  }
  if (from === 'ring' && layout.places.length > MOST_IN_RING) {
    return said('rows', inRows(layout.places, room));
  }
  const all = boxOf(layout.places);
  const wanted = room.apart / nearest(layout.places);
  const most = Math.min(
    all.width > 0 ? room.width / all.width : Infinity,
    all.height > 0 ? room.height / all.height : Infinity,
  );
  // Rather over several sheets than one number upon another.
  const scale = Math.max(Math.min(SPREAD * wanted, most), wanted);
  return said('drawn', scaled(layout.places, Number.isFinite(scale) ? scale : 1));
}
/** A picture with few holes is not drawn larger than so many times what its numbers need. */
const SPREAD = 2;

function scaled(places: readonly MapPlace[], by: number): MapPlace[] {
  return places.map(({ name, x, y }) => ({ name, x: x * by, y: y * by }));
}

function inRows(places: readonly MapPlace[], { width, apart }: Room): MapPlace[] {
  const each = Math.max(1, Math.floor(width / apart) + 1);
  return places.map(({ name }, i) => ({
    name,
    x: (i % each) * apart,
    y: Math.floor(i / each) * apart,
  }));
}

/** Distance of the two places that are nearest to each other; infinite for fewer than two. */
function nearest(places: readonly MapPlace[]): number {
  let least = Infinity;
  for (const [i, a] of places.entries()) {
    for (const b of places.slice(i + 1)) {
      const d = Math.hypot(a.x - b.x, a.y - b.y);
      // Two holes in one place are a slip of the file: they are drawn, and do not blow up the rest.
      if (d > 1e-6 && d < least) least = d;
    }
  }
  return least;
}

export interface Box {
  x: number;
  y: number;
  width: number;
  height: number;
}

function boxOf(places: readonly Pick<MapPlace, 'x' | 'y'>[]): Box {
  if (places.length === 0) return { x: 0, y: 0, width: 0, height: 0 };
  const xs = places.map((p) => p.x);
  const ys = places.map((p) => p.y);
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, width: tidy(Math.max(...xs) - x), height: tidy(Math.max(...ys) - y) };
}

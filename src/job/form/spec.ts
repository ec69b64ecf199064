/** A piece of which nothing is known but its name. */
import type { PieceSpec } from '../../model/types.ts';

/** `gear-lever` as one would say it: `Gear lever`. */
export function nameOfKey(key: string): string {
  const words = key.replaceAll('-', ' ');
  return words.charAt(0).toUpperCase() + words.slice(1);
}

export function barePiece(key: string): PieceSpec {
  return {
    key,
    name: nameOfKey(key),
    under: [],
    row: null,
    torque: null,
    into: null,
    thick: null,
    thread: null,
    joint: [],
    loose: [],
    caution: { removal: [], fitting: [] },
    tip: { removal: [], fitting: [] },
    marks: [],
    routes: [],
    tray: null,
    map: null,
    pitch: null,
    holes: new Map(),
    sequence: null,
    passes: null,
    care: null,
    along: [],
    bridges: [],
    takes: null,
    first: [],
    note: null,
  };
}

/** Wire inserts: what their hole wants. ASME B18.29.2M for the lengths and depths; mm. */
import type { Thread } from './threads.ts';

export interface InsertHole {
  /** Nominal length of the insert, mm. */
  length: number;
  /** Least minor diameter of the insert's thread, d + 0.2165 P, and the drill next above it in tenths. */
  minor: number;
  drill: number;
  /** Outside of the insert's tap, d + 1.299 P: what must find room in the boss. */
  outside: number;
  /** Least depth to drill for a bottoming tap: length + 4 P. */
  depth: number;
}

/** The hole for an insert of so many diameters. */
export function insertHole(t: Thread, diameters: number): InsertHole {
  const minor = t.d + 0.216506 * t.pitch;
  return {
    length: diameters * t.d,
    minor,
    drill: Math.ceil(minor * 10 - 1e-9) / 10,
    outside: t.d + 1.299038 * t.pitch,
    depth: diameters * t.d + 4 * t.pitch,
  };
}

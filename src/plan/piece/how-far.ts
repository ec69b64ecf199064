/** How far it is from one hole of a piece to the next, as one says it over the piece. */
import type { Layout, MapPlace } from '../../piece/map.ts';

/** Degrees by which two holes may miss lying opposite each other and still be said to. */
const ACROSS = 12;
/** Holes nearer the middle than this share of the farthest one stand inside a ring, and not on it. */
const INSIDE = 0.3;
const NEAR = 1e-9;
const COUNTS = ['', 'next to it', 'two on', 'three on', 'four on', 'five on', 'six on', 'seven on'];

/** Where a hole lies about the middle of all: degrees clockwise, and how far out. */
function turnOf(p: MapPlace, middle: { x: number; y: number }): { turn: number; out: number } {
  const [dx, dy] = [p.x - middle.x, p.y - middle.y];
  return { turn: (Math.atan2(dy, dx) * 180) / Math.PI, out: Math.hypot(dx, dy) };
}

function clockwise(from: number, to: number): number {
  return (((to - from) % 360) + 360) % 360;
}

/**
 * `right across`, `two on, clockwise`; where the holes do not stand in a ring, the direction: `down to the left`.
 * Null for holes that are not on the piece, or lie in one place.
 */
export function howFar({ places }: Layout, from: string, to: string): string | null {
  const [a, b] = [places.find((p) => p.name === from), places.find((p) => p.name === to)];
  if (!a || !b || Math.hypot(a.x - b.x, a.y - b.y) <= NEAR) return null;
  const n = places.length;
  const middle = {
    x: places.reduce((sum, p) => sum + p.x, 0) / n,
    y: places.reduce((sum, p) => sum + p.y, 0) / n,
  };
  const turns = places.map((p) => ({ name: p.name, ...turnOf(p, middle) }));
  const most = Math.max(...turns.map((t) => t.out));
  if (n < 3 || turns.some((t) => t.out < INSIDE * most)) return direction(a, b);
  const [start, end] = [turnOf(a, middle).turn, turnOf(b, middle).turn];
  const apart = clockwise(start, end);
  if (n > 3 && Math.abs(apart - 180) <= ACROSS) return 'right across';
  const by = (t: { turn: number }) => clockwise(start, t.turn);
  const before = turns.filter((t) => t.name !== from && by(t) < apart - NEAR).length;
  const [on, back] = [before + 1, n - before - 1];
  const steps = Math.min(on, back);
  const count = COUNTS[steps] ?? `${steps} on`;
  // Counted back, as the hand goes.
  return on <= back ? `${count}, clockwise` : `${count.replace(/ on$/, ' back')}, anticlockwise`;
}

/** Of eight directions the nearest one; y grows downwards. */
function direction(a: MapPlace, b: MapPlace): string {
  const eighth = Math.round((Math.atan2(b.y - a.y, b.x - a.x) * 4) / Math.PI);
  const said: Readonly<Record<number, string>> = {
    0: 'to the right',
    1: 'down to the right',
    2: 'down',
    3: 'down to the left',
    '-1': 'up to the right',
    '-2': 'up',
    '-3': 'up to the left',
  };
  return said[eighth] ?? 'to the left';
}

/** The rim of a piece: the convex hull of its holes (Andrew's monotone chain). */
import type { Vectors } from './vectors.ts';

interface Corner {
  x: number;
  y: number;
}

/** Twice the area of the triangle o, a, b; its sign is the side of b. */
function turn(o: Corner, a: Corner, b: Corner): number {
  return (a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x);
}

function hull(corners: readonly Corner[]): Corner[] {
  const sorted = [...corners].sort((a, b) => a.x - b.x || a.y - b.y);
  const half = (points: readonly Corner[]) => {
    const chain: Corner[] = [];
    for (const p of points) {
      for (;;) {
        const [o, a] = [chain.at(-2), chain.at(-1)];
        if (o === undefined || a === undefined || turn(o, a, p) > 0) break;
        chain.pop();
      }
      chain.push(p);
    }
    return chain.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.reverse())];
}

/** For each hole: is it farther inside the rim than `depth` (in units of R)? */
export function insideHull(v: Vectors, depth: number): boolean[] {
  const holes = [...v.x.keys()].map((i) => ({ x: v.x[i] ?? 0, y: v.y[i] ?? 0 }));
  const rim = hull(holes);
  const edges = rim.flatMap((a, k) => {
    const b = rim[(k + 1) % rim.length] ?? a;
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    return length > 0 ? [{ a, b, length }] : [];
  });
  return holes.map(
    (p) => edges.length > 2 && edges.every((e) => turn(e.a, e.b, p) / e.length > depth),
  );
}

/** Inside on a piece of any shape, whose rim may have a notch: as a share of the side of a square as large. */
const WELL_INSIDE = 0.23;

/** For each hole: is it well inside the rim, as a bolt in the middle of a ring, or within a square case half? */
export function wellInside(v: Vectors): boolean[] {
  const rim = hull([...v.x.keys()].map((i) => ({ x: v.x[i] ?? 0, y: v.y[i] ?? 0 })));
  const twice = rim.reduce((sum, a, k) => {
    const b = rim[(k + 1) % rim.length] ?? a;
    return sum + a.x * b.y - b.x * a.y;
  }, 0);
  return insideHull(v, WELL_INSIDE * Math.sqrt(Math.abs(twice) / 2));
}

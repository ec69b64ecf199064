/** What is said beside an order: common practice, no source. */
import type { Care } from '../../model/types.ts';
import type { Point } from './vectors.ts';

/** From here on a piece is taken as large enough to warp when one bolt after the other is let go. */
const LARGE = 8;

/** Suggestions beside the order of tightening and of loosening; y of the points grows downwards. */
export function tips(
  names: readonly string[],
  points: readonly Point[],
  care: Care | null,
): { tighten: string[]; loosen: string[] } {
  if (care === 'spring') {
    return {
      tighten: ['Half a turn each, all round, so that the spring is taken up evenly.'],
      loosen: ['Half a turn each, all round, until the spring is slack.'],
    };
  }
  const loosen: string[] = [];
  if (names.length >= LARGE) loosen.push('A quarter turn each first, all round.');
  const top = topmost(names, points);
  if (top !== null)
    loosen.push(`On an upright face leave ${top} until last, so that the piece hangs.`);
  return { tighten: [], loosen };
}

/** The highest hole, nearest the middle of the piece; null where none is higher than the others. */
function topmost(names: readonly string[], points: readonly Point[]): string | null {
  const ys = points.map((p) => p.y);
  const high = Math.min(...ys);
  const span = Math.max(...ys) - high;
  if (names.length < 3 || !(span > 0)) return null;
  const middle = points.reduce((sum, p) => sum + p.x, 0) / points.length;
  let best: { name: string; off: number } | null = null;
  for (const [i, { x, y }] of points.entries()) {
    const off = Math.abs(x - middle);
    if (y - high <= span * 1e-9 && (best === null || off < best.off - span * 1e-9)) {
      best = { name: names[i] ?? '', off };
    }
  }
  return best?.name ?? null;
}

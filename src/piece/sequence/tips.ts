/** What is said beside an order: common practice, no source. */
import type { Care } from '../../model/types.ts';
import type { Point } from './vectors.ts';

/** From here on a piece is taken as large enough to warp when one bolt after the other is let go. */
const LARGE = 8;

interface Beside {
  /** Bolts in all. */
  count: number;
  care: Care | null;
  /** The bolt on which the piece hangs, the last in the order of loosening; null where it is not said. */
  last: string | null;
  /** The pattern of a cover with a gasket under it, where there is a choice. */
  gasket: 'star' | 'centre-out' | null;
}

/**
 * A published repair manual (V8, 4.2 l, 2009) has bolts round a sealed face and those of a timing cover go
 * diagonally; of long covers service sheets go from the middle outward.
 */
const GASKET = {
  star: 'Across, gasket or not: manuals print it so for covers that are not long.',
  'centre-out':
    'From the middle out: on a long cover that spreads the gasket and leaves no wave in it.',
};

const UPRIGHT = 'On an upright face leave';

/** The one of them that says on which bolt the piece hangs at the end. */
export const leavesLast = (tip: string): boolean => tip.startsWith(UPRIGHT);

/** Suggestions beside the order of tightening and of loosening. */
export function tips({ count, care, last, gasket }: Beside): {
  tighten: string[];
  loosen: string[];
} {
  if (care === 'spring') {
    return {
      tighten: ['Half a turn each, all round, so that the spring is taken up evenly.'],
      loosen: ['Half a turn each, all round, until the spring is slack.'],
    };
  }
  const loosen: string[] = [];
  if (count >= LARGE) loosen.push('A quarter turn each first, all round.');
  if (last !== null) loosen.push(`${UPRIGHT} ${last} until last, so that the piece hangs.`);
  return { tighten: gasket === null ? [] : [GASKET[gasket]], loosen };
}

/**
 * The highest hole, of those with the largest bolts, nearest the middle of the piece; null where none of them is as high
 * as any, or all are alike. y of the points grows downwards; no sizes: all alike.
 */
export function topmost(
  names: readonly string[],
  points: readonly Point[],
  sizes: readonly number[] = [],
): string | null {
  const ys = points.map((p) => p.y);
  const high = Math.min(...ys);
  const span = Math.max(...ys) - high;
  if (names.length < 3 || !(span > 0)) return null;
  const middle = points.reduce((sum, p) => sum + p.x, 0) / points.length;
  let best: { name: string; off: number } | null = null;
  for (const [i, { x, y }] of points.entries()) {
    if ((sizes[i] ?? 0) > 0) continue;
    const off = Math.abs(x - middle);
    if (y - high <= span * 1e-9 && (best === null || off < best.off - span * 1e-9)) {
      best = { name: names[i] ?? '', off };
    }
  }
  return best?.name ?? null;
}

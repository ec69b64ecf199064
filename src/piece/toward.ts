/** Arrow keys on a piece: the nearest hole in a direction, with every hole within reach of every other. */
import { kept } from '../model/kept.ts';
import type { Layout, MapPlace } from './map.ts';

export const DIRECTIONS = ['up', 'down', 'left', 'right'] as const;
export type Direction = (typeof DIRECTIONS)[number];

/** How far `to` lies ahead of `from` and how far beside the way, in the layout's unit. */
function ahead(
  from: MapPlace,
  to: MapPlace,
  direction: Direction,
): { along: number; across: number } {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  if (direction === 'left' || direction === 'right') {
    return { along: direction === 'right' ? dx : -dx, across: Math.abs(dy) };
  }
  return { along: direction === 'down' ? dy : -dy, across: Math.abs(dx) };
}

const NEAR = 1e-9;

/** The best hole ahead by eye: within 45° if there is one, then little aside before little ahead. */
function byEye(places: readonly MapPlace[], from: number, direction: Direction): number {
  const start = places[from];
  let best = from;
  let bestWide = true;
  let bestScore = Number.POSITIVE_INFINITY;
  let bestAcross = Number.POSITIVE_INFINITY;
  if (start === undefined) return from;
  for (const [i, place] of places.entries()) {
    const { along, across } = ahead(start, place, direction);
    if (along <= NEAR) continue;
    const wide = across > along + NEAR;
    const score = along + 2 * across;
    const better =
      wide !== bestWide
        ? !wide || best === from
        : score < bestScore - NEAR || (score < bestScore + NEAR && across < bestAcross - NEAR);
    if (!better) continue;
    [best, bestWide, bestScore, bestAcross] = [i, wide, score, across];
  }
  return best;
}

type Table = Record<Direction, number[]>;

/** Number of the set of mutually reachable holes each hole is in (Kosaraju's two passes). */
function components(table: Table, n: number): number[] {
  const out = Array.from({ length: n }, (_, i) => DIRECTIONS.map((d) => table[d][i] ?? i));
  const back: number[][] = Array.from({ length: n }, () => []);
  for (const [i, targets] of out.entries()) for (const t of targets) back[t]?.push(i);
  const walk = (
    edges: number[][],
    roots: number[],
    visit: (node: number, root: number) => void,
  ) => {
    const seen = new Set<number>();
    for (const root of roots) {
      if (seen.has(root)) continue;
      seen.add(root);
      const stack = [{ node: root, next: 0 }];
      for (let top = stack.at(-1); top !== undefined; top = stack.at(-1)) {
        const to = edges[top.node]?.[top.next];
        top.next += 1;
        if (to === undefined) visit(stack.pop()?.node ?? root, root);
        else if (!seen.has(to)) {
          seen.add(to);
          stack.push({ node: to, next: 0 });
        }
      }
    }
  };
  const finished: number[] = [];
  const all = Array.from({ length: n }, (_, i) => i);
  walk(out, all, (node) => finished.push(node));
  const component = new Array<number>(n).fill(-1);
  walk(back, finished.reverse(), (node, root) => {
    component[node] = root;
  });
  return component;
}

/**
 * By eye first. Then, as long as two holes next to each other from left to right (above one another: from top
 * to bottom) cannot reach each other, a key is pinned between the two. At worst all of these keys are pinned,
 * and then every hole is reached by keeping to them: so the loop ends, and with every hole within reach.
 */
function tableOf(places: readonly MapPlace[]): Table {
  const table = {} as Table;
  for (const d of DIRECTIONS) table[d] = places.map((_, i) => byEye(places, i, d));
  const order = places.map((_, i) => i);
  const at = (i: number): MapPlace => places[i] ?? { name: '', x: 0, y: 0 };
  order.sort((a, b) => at(a).x - at(b).x || at(a).y - at(b).y || a - b);
  const pinned = new Set<number>();
  for (;;) {
    const component = components(table, places.length);
    const gap = order.findIndex((a, k) => {
      const b = order[k + 1];
      return b !== undefined && !pinned.has(a) && component[a] !== component[b];
    });
    const [a, b] = [order[gap], order[gap + 1]];
    if (a === undefined || b === undefined) return table;
    const stacked = at(b).x - at(a).x <= NEAR;
    table[stacked ? 'down' : 'right'][a] = b;
    table[stacked ? 'up' : 'left'][b] = a;
    pinned.add(a);
  }
}

/** The hole an arrow key goes to from `from`; `from` itself where there is none that way, or no such hole. */
export function toward(layout: Layout, from: string, direction: Direction): string {
  const table = kept(layout, 'arrows', () => tableOf(layout.places));
  const index = layout.places.findIndex((place) => place.name === from);
  return layout.places[table[direction][index] ?? index]?.name ?? from;
}

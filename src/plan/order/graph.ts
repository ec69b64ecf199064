/** Directed graphs over the numbers 0 … n − 1: orders, circles, what leads where. Linear but for the heap. */

export interface Graph {
  size: number;
  /** What each number points to, each once. */
  next: readonly (readonly number[])[];
}

export type Pair = readonly [from: number, to: number];

export function graphOf(size: number, pairs: Iterable<Pair>): Graph {
  const next = Array.from({ length: size }, (): number[] => []);
  for (const [from, to] of pairs) next[from]?.push(to);
  return { size, next: next.map((tos) => (tos.length < 2 ? tos : [...new Set(tos)])) };
}

export function arrowsOf(graph: Graph): Pair[] {
  return graph.next.flatMap((tos, from) => tos.map((to): Pair => [from, to]));
}

export function turned(graph: Graph): Graph {
  const next = Array.from({ length: graph.size }, (): number[] => []);
  for (let from = 0; from < graph.size; from += 1) {
    for (const to of graph.next[from] ?? []) next[to]?.push(from);
  }
  return { size: graph.size, next };
}

/**
 * Each number behind all that point to it; of those that could come, the one with the least rank (Kahn 1962).
 * Ranks are different numbers from 0 to n − 1. What lies in or behind a circle is left out.
 */
export function topological(graph: Graph, rank: readonly number[]): number[] {
  const byRank: number[] = [];
  for (const [node, r] of rank.entries()) byRank[r] = node;
  const waits = new Array<number>(graph.size).fill(0);
  for (const tos of graph.next) for (const to of tos) waits[to] = (waits[to] ?? 0) + 1;
  const heap: number[] = [];
  for (const [node, count] of waits.entries()) if (count === 0) push(heap, rank[node] ?? 0);
  const order: number[] = [];
  for (let r = pop(heap); r !== undefined; r = pop(heap)) {
    const node = byRank[r] ?? 0;
    order.push(node);
    for (const to of graph.next[node] ?? []) {
      const left = (waits[to] ?? 0) - 1;
      waits[to] = left;
      if (left === 0) push(heap, rank[to] ?? 0);
    }
  }
  return order;
}

function push(heap: number[], value: number): void {
  let at = heap.push(value) - 1;
  while (at > 0) {
    const up = (at - 1) >> 1;
    const above = heap[up] ?? value;
    if (above <= value) break;
    heap[at] = above;
    at = up;
  }
  heap[at] = value;
}

function pop(heap: number[]): number | undefined {
  const least = heap[0];
  const last = heap.pop();
  if (last === undefined || heap.length === 0) return last;
  let at = 0;
  for (;;) {
    const left = 2 * at + 1;
    const right = left + 1;
    const child = (heap[right] ?? Infinity) < (heap[left] ?? Infinity) ? right : left;
    const below = heap[child];
    if (below === undefined || below >= last) break;
    heap[at] = below;
    at = child;
  }
  heap[at] = last;
  return least;
}

/**
 * Number of the component of each node: two are in one when each can be reached from the other
 * (two depth-first walks, Kosaraju and Sharir 1981).
 */
export function components(graph: Graph): number[] {
  const finished: number[] = [];
  const seen = new Array<boolean>(graph.size).fill(false);
  for (let start = 0; start < graph.size; start += 1) walk(graph, start, seen, finished);
  const back = turned(graph);
  const of = new Array<number>(graph.size).fill(-1);
  const met = new Array<boolean>(graph.size).fill(false);
  let count = 0;
  for (const start of finished.reverse()) {
    if (met[start]) continue;
    const members: number[] = [];
    walk(back, start, met, members);
    for (const node of members) of[node] = count;
    count += 1;
  }
  return of;
}

/** Depth first from a node through all that is not seen yet; nodes are added when all behind them are through. */
function walk(graph: Graph, start: number, seen: boolean[], finished: number[]): void {
  if (seen[start]) return;
  seen[start] = true;
  const way = [{ node: start, at: 0 }];
  for (let top = way.at(-1); top !== undefined; top = way.at(-1)) {
    const to = graph.next[top.node]?.[top.at];
    top.at += 1;
    if (to === undefined) {
      finished.push(top.node);
      way.pop();
    } else if (!seen[to]) {
      seen[to] = true;
      way.push({ node: to, at: 0 });
    }
  }
}

/** A shortest way from a node back to itself, beginning with it; null when there is none. */
export function circleThrough(graph: Graph, start: number): number[] | null {
  const from = new Map<number, number>();
  const queue = [start];
  for (const node of queue) {
    for (const to of graph.next[node] ?? []) {
      if (to === start) return wayTo(node, start, from);
      if (from.has(to)) continue;
      from.set(to, node);
      queue.push(to);
    }
  }
  return null;
}

function wayTo(end: number, start: number, from: ReadonlyMap<number, number>): number[] {
  const way = [end];
  for (let node = end; node !== start; ) {
    node = from.get(node) ?? start;
    way.push(node);
  }
  return way.reverse();
}

/** All that can be reached from the starts, they themselves too; `through` says where the way goes on. */
export function reachable(
  graph: Graph,
  starts: Iterable<number>,
  through: (node: number) => boolean = () => true,
): Set<number> {
  const seen = new Set(starts);
  for (const node of seen) {
    if (!through(node)) continue;
    for (const to of graph.next[node] ?? []) seen.add(to);
  }
  return seen;
}

/** Which order a piece gets: the maker's list, the published cross, from the middle outward, or computed. */
import { list } from '../../model/words.ts';
import { centreOut, elongated } from './centre-out.ts';
import { circleOf, crossOrder, isCross, PUBLISHED } from './cross.ts';
import type { Computed } from './exact.ts';
import { type Task, type Vectors, vectors } from './vectors.ts';

export type OrderPattern = 'list' | 'cross' | 'centre-out' | 'star';

export interface ChosenOrder {
  pattern: OrderPattern;
  why: string;
  /** The holes that are left, as indices. */
  order: number[];
}

/** The maker's list as indices: each hole once, unknown names left out, forgotten ones at the end. */
export function indicesOf(list: readonly string[], names: readonly string[]): number[] {
  const known = list.map((name) => names.indexOf(name)).filter((i) => i >= 0);
  return [...new Set([...known, ...names.keys()])];
}

/**
 * `order` without what is done, if just its beginning is done; else null. What is neither done nor left (a
 * bolt that cannot be tightened now) does not count.
 */
export function restOf(
  order: readonly number[],
  task: Pick<Task, 'done' | 'left'>,
): number[] | null {
  const left = new Set(task.left);
  const done = new Set(task.done);
  const counted = order.filter((i) => left.has(i) || done.has(i));
  const begun = counted.slice(0, done.size);
  return begun.every((i) => done.has(i)) ? counted.slice(done.size) : null;
}

/**
 * The pattern of a piece without a list. `first` leads as given; ranks come one after the other; `computed` is
 * asked only where no pattern holds.
 */
export function choose(
  task: Task,
  first: readonly number[],
  computed: () => Computed,
): ChosenOrder {
  const cross = crossOf(task, first);
  if (cross !== null) {
    const order = restOf(cross.order, task);
    if (order !== null) return { ...cross, order };
  }
  const lie = cross === null ? elongated(task.at ?? task.v) : null;
  if (lie !== null) {
    const inside = lie.inside.some(Boolean) ? ', inside before the rim' : '';
    const why = `${lie.shape}: from the middle outward, crosswise${inside}`;
    return { pattern: 'centre-out', why, order: centreOut(task, lie) };
  }
  return {
    pattern: 'star',
    why: whyComputed(task, first, cross !== null),
    order: computed().order,
  };
}

function whyComputed({ v, done, rank }: Task, first: readonly number[], circle: boolean): string {
  const least = 'as it tilts the piece least';
  if (v.n === 1) return 'a single bolt';
  if (circle) return `other bolts of the circle were done first: the rest ${least}`;
  if (done.length > 0) return `the rest ${least}`;
  if (first.length > 0) return `what comes first, then the rest ${least}`;
  if (new Set(rank).size > 1) return `one group after the other, each ${least}`;
  return 'no regular shape: the order that tilts the piece least';
}

/** All holes crosswise, where they lie on a circle, or each rank of them does. */
function crossOf(task: Task, first: readonly number[]): ChosenOrder | null {
  const { rank } = task;
  const at = task.at ?? task.v;
  const all = [...at.x.keys()];
  const lots = [...new Set(all.filter((i) => !first.includes(i)).map((i) => rank[i] ?? 0))];
  lots.sort((a, b) => a - b);
  if (lots.length > 1) {
    if (first.length > 0) return null;
    const circles = lots.map((r) =>
      circleWithin(
        at,
        all.filter((i) => rank[i] === r),
      ),
    );
    if (circles.some((circle) => circle === null)) return null;
    const rings = circles.filter((circle) => circle !== null);
    const order = rings.flatMap((circle) => crossOrder(circle, Math.min(...circle)));
    return { pattern: 'cross', why: whyRings(rings.map((circle) => circle.length)), order };
  }
  const circle = circleOf(at);
  if (circle === null) return null;
  const order = crossOrder(circle, first[0] ?? 0);
  if (first.some((hole, k) => order[k] !== hole)) return null;
  return { pattern: 'cross', why: whyCross(all.length), order };
}

function whyRings(counts: readonly number[]): string {
  return `${list(counts.map(sayLot))}: crosswise, one after the other`;
}

function sayLot(n: number): string {
  if (n === 1) return '1 by itself';
  return n === 2 ? 'a pair' : `a circle of ${n}`;
}

function whyCross(n: number): string {
  return `${n} evenly spaced on a circle: ${howCross(n)}`;
}

/** How a circle of n is gone round, and where that comes from. */
function howCross(n: number): string {
  if (n <= 3) return 'one after the other';
  if (PUBLISHED.has(n)) return 'crosswise, as published';
  if (n <= 6) return 'crosswise, as is common';
  const beyond = n > Math.max(...PUBLISHED) ? '; so many are published in groups only' : '';
  const how = isCross(n) ? 'crosswise' : 'crosswise, as it tilts the piece least';
  return `${how}; no table at hand has ${n}${beyond}`;
}

/**
 * The holes of one rank round their own middle; null where they are not evenly spaced. One or two are a lot that needs
 * no circle.
 */
function circleWithin(at: Vectors, lot: readonly number[]): number[] | null {
  if (lot.length <= 2) return [...lot];
  const own = vectors(lot.map((i) => ({ x: at.x[i] ?? 0, y: at.y[i] ?? 0 })));
  return circleOf(own)?.map((k) => lot[k] ?? 0) ?? null;
}

/** Which order a piece gets: the maker's list, the published cross, from the middle outward, or computed. */
import { centreOut, elongated } from './centre-out.ts';
import { circleOf, crossOrder } from './cross.ts';
import type { Computed } from './exact.ts';
import { type Task, type Vectors, vectors } from './vectors.ts';

export type Pattern = 'list' | 'cross' | 'centre-out' | 'star';

export interface Chosen {
  pattern: Pattern;
  why: string;
  /** The holes that are left, as indices. */
  order: number[];
}

/** The maker's list as indices: each hole once, unknown names left out, forgotten ones at the end. */
export function listed(list: readonly string[], names: readonly string[]): number[] {
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
 * The pattern of a piece without a list. `first` leads as given; groups come one after the other; `computed` is
 * asked only where no pattern holds.
 */
export function choose(task: Task, first: readonly number[], computed: () => Computed): Chosen {
  const cross = crossOf(task, first);
  if (cross !== null) {
    const order = restOf(cross.order, task);
    if (order !== null) return { ...cross, order };
  }
  const lie = cross === null ? elongated(task.v) : null;
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

function whyComputed({ done, rank }: Task, first: readonly number[], circle: boolean): string {
  const least = 'as it tilts the piece least';
  if (circle) return `other bolts of the circle were done first: the rest ${least}`;
  if (done.length > 0) return `the rest ${least}`;
  if (first.length > 0) return `what comes first, then the rest ${least}`;
  if (new Set(rank).size > 1) return `one group after the other, each ${least}`;
  return 'no regular shape: the order that tilts the piece least';
}

/** All holes crosswise, where they lie on a circle, or each group of them does. */
function crossOf(task: Task, first: readonly number[]): Chosen | null {
  const { v, rank } = task;
  const all = [...v.x.keys()];
  const groups = [...new Set(rank)].sort((a, b) => a - b);
  const grouped = first.length === 0 && groups.length > 1;
  if (!grouped) {
    const circle = circleOf(v);
    if (circle === null) return null;
    const order = crossOrder(circle, first[0] ?? 0);
    if (first.some((hole, k) => order[k] !== hole)) return null;
    return { pattern: 'cross', why: whyCross(all.length), order };
  }
  const circles = groups.map((r) =>
    circleWithin(
      v,
      all.filter((i) => rank[i] === r),
    ),
  );
  if (circles.some((circle) => circle === null)) return null;
  const order = circles.flatMap((circle) =>
    circle ? crossOrder(circle, Math.min(...circle)) : [],
  );
  const counts = circles.map((circle) => circle?.length).join(' and ');
  return { pattern: 'cross', why: `circles of ${counts}: crosswise, one after the other`, order };
}

function whyCross(n: number): string {
  const printed = n % 2 === 0 || n <= 7;
  return printed
    ? `${n} evenly spaced on a circle: crosswise, as published`
    : `${n} evenly spaced on a circle: no cross is published for ${n}, so as it tilts the piece least`;
}

/** The circle of a group of holes, round its own middle. */
function circleWithin(v: Vectors, group: readonly number[]): number[] | null {
  const own = vectors(group.map((i) => ({ x: v.x[i] ?? 0, y: v.y[i] ?? 0 })));
  return circleOf(own)?.map((k) => group[k] ?? 0) ?? null;
}

/** How far an order may tilt a piece. */
import { EPSILON, type Task } from './vectors.ts';

/**
 * Steinitz: an order exists in which no sum of the first k pulls is longer than a constant times the longest
 * of them, however many there are. For the plane √5/2 (Bergström 1931; cited from memory, the bound attested
 * in print is 2).
 */
export const BOUND = Math.sqrt(5) / 2;

/** What an order may lose in peak for fewer steps between neighbours. */
const SLACK = 1.05;

/** Nothing is done, nothing comes first: the bound holds. */
export function isFree({ v, rank, left }: Task): boolean {
  return left.length === v.n && rank.every((r) => r === rank[0]);
}

/** The peak an order is held to, given the least one; where the bound holds, never for more than the bound. */
export function limitOf(task: Task, best: number): number {
  const limit = SLACK * best;
  return (isFree(task) ? Math.min(limit, Math.max(best, BOUND)) : limit) + EPSILON;
}

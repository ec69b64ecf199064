/** Standings that a search met, with what is known of each, and the arithmetic of their bounds. */
import type { Option, SearchStanding } from './problem.ts';

/** A standing met. */
export interface Node extends SearchStanding {
  /** p(S). */
  mass: number;
  lower: number;
  /** Infinite while no way on is known. */
  upper: number;
  /** The test that begins the known way; null for one state. */
  best: Branch | null;
  /** What could yet begin a better way; null while this was not looked into. */
  branches: Branch[] | null;
  /** Those from which a test leads here, some more than once; not kept for one state. */
  from: Node[];
}

export interface Branch {
  option: Option;
  /** Of the test itself. */
  minutes: number;
  bad: Node;
  good: Node;
}

export const lowerOf = ({ minutes, bad, good }: Branch): number => minutes + bad.lower + good.lower;
export const upperOf = ({ minutes, bad, good }: Branch): number => minutes + bad.upper + good.upper;

/** On the way that could yet be the best, the standing not looked into where least is known. */
export function unsure(root: Node): Node {
  let node = root;
  while (node.branches) {
    let best: Branch | null = null;
    let least = Number.POSITIVE_INFINITY;
    for (const branch of node.branches) {
      const minutes = lowerOf(branch);
      if (minutes < least) [best, least] = [branch, minutes];
    }
    if (!best) break;
    const { bad, good } = best;
    const [openBad, openGood] = [bad.upper - bad.lower, good.upper - good.lower];
    node = openBad > openGood || (openBad === openGood && bad.mass > good.mass) ? bad : good;
  }
  return node;
}

/** Bounds of a standing from those behind its tests; whether they changed. */
export function improve(node: Node): boolean {
  const { lower, upper, branches } = node;
  if (!branches) return false;
  let least = Number.POSITIVE_INFINITY;
  for (const branch of branches) {
    const known = upperOf(branch);
    if (known < node.upper) {
      node.upper = known;
      node.best = branch;
    }
    const below = lowerOf(branch);
    if (below < least) least = below;
  }
  node.lower = Math.max(lower, Math.min(least, node.upper));
  settle(node);
  if (branches.some((branch) => lowerOf(branch) >= node.upper)) {
    node.branches = branches.filter((branch) => lowerOf(branch) < node.upper);
  }
  return node.lower !== lower || node.upper !== upper;
}

/** Bounds that differ by no more than rounding have met. */
function settle(node: Node): void {
  if (node.lower > node.upper * (1 - 1e-9)) node.lower = node.upper;
}

/**
 * The way of tests with the least expected minutes: a best-first search over the standings that tests lead to, AO*
 * (Martelli & Montanari, Additive AND/OR graphs, IJCAI 1973; for this question Pattipati & Alexandridis 1990).
 *
 * Of every standing met it keeps a bound from below and a way on that is known, which bounds it from above. It
 * looks further into the way that could yet be the best, where the two are furthest apart, until they meet or the
 * work is used up: so it ends exact, or with a known way and how far at most that is from the best. The first known
 * way takes the test that tells most for its minutes.
 *
 * All minutes in here are times p(S), so that those of the standings behind a test add up.
 */
import { massOf, type Option, optionsAt, type Problem, type Standing, startOf } from './problem.ts';

/** A standing met. */
export interface Node extends Standing {
  /** p(S). */
  mass: number;
  lower: number;
  upper: number;
  /** The test that begins the known way; null for one state. */
  best: Branch | null;
  /** What could yet begin a better way; null while this was not looked into. */
  branches: Branch[] | null;
  /** Those from which a test leads here, some more than once. */
  from: Node[];
}

export interface Branch {
  option: Option;
  bad: Node;
  good: Node;
}

/** A bound from below on the minutes on from a standing with these options. */
export type Lower = (standing: Standing, options: readonly Option[]) => number;

export interface Found {
  root: Node;
  /** Standings met: what the search keeps in memory. */
  standings: number;
}

/** Tests held against states, at most; the first known way is always made. */
const MOST_WORK = 4_000_000;

export function search(problem: Problem, lower: Lower): Found {
  const { p, tests } = problem;
  const met = new Map<string, Node>();
  let work = 0;

  const branchOf = (from: Node, option: Option): Branch => {
    const open = option.opens.length > 0 ? from.open.slice() : from.open;
    for (const k of option.opens) open[k] = 1;
    const [bad, good] = [meet({ S: option.bad, open }), meet({ S: option.good, open })];
    bad.from.push(from);
    good.from.push(from);
    return { option, bad, good };
  };

  const meet = ({ S, open }: Standing): Node => {
    const key = String.fromCharCode(...S, NO_STATE, ...(S.length > 1 ? open : []));
    const known = met.get(key);
    if (known) return known;
    const bounds = { mass: massOf(p, S), lower: 0, upper: 0 };
    const node: Node = { S, open, ...bounds, best: null, branches: null, from: [] };
    met.set(key, node);
    if (S.length === 1) return node;
    work += tests.length * S.length;
    const options = optionsAt(problem, node);
    const first = mostTold(p, node.mass, options);
    if (!first) return node;
    node.best = branchOf(node, first);
    node.upper = minutesOf(node, node.best, 'upper');
    node.lower = lower(node, options);
    settle(node);
    return node;
  };

  const lookInto = (node: Node): void => {
    node.branches = optionsAt(problem, node).map((option) => branchOf(node, option));
    const changed = [node];
    for (let one = changed.pop(); one; one = changed.pop()) {
      if (improve(one)) changed.push(...one.from);
    }
  };

  const root = meet(startOf(problem));
  while (root.lower < root.upper) {
    const next = unsure(root);
    // A look into it meets two halves for each test, and in those the way that is known first.
    const ahead = tests.length ** 2 * next.S.length * Math.log2(next.S.length);
    if (work + ahead > MOST_WORK) break;
    lookInto(next);
  }
  return { root, standings: met.size };
}

const NO_STATE = 0xffff;

const minutesOf = ({ mass }: Node, { option, bad, good }: Branch, bound: 'lower' | 'upper') =>
  option.minutes * mass + bad[bound] + good[bound];

/** On the way that could yet be the best, the standing not looked into where least is known. */
function unsure(root: Node): Node {
  let node = root;
  while (node.branches) {
    let best: Branch | null = null;
    let least = Number.POSITIVE_INFINITY;
    for (const branch of node.branches) {
      const minutes = minutesOf(node, branch, 'lower');
      if (minutes < least) [best, least] = [branch, minutes];
    }
    if (!best) break;
    const { bad, good } = best;
    node = bad.upper - bad.lower >= good.upper - good.lower ? bad : good;
  }
  return node;
}

/** Bounds of a standing from those behind its tests; whether they changed. */
function improve(node: Node): boolean {
  const { lower, upper, best, branches } = node;
  for (const branch of branches ?? (best ? [best] : [])) {
    const known = minutesOf(node, branch, 'upper');
    if (known < node.upper) [node.upper, node.best] = [known, branch];
  }
  if (branches) {
    const least = branches.reduce(
      (least, branch) => Math.min(least, minutesOf(node, branch, 'lower')),
      Number.POSITIVE_INFINITY,
    );
    node.lower = Math.max(lower, least);
  }
  settle(node);
  node.branches = branches?.filter((b) => minutesOf(node, b, 'lower') < node.upper) ?? null;
  return node.lower !== lower || node.upper !== upper;
}

/** Bounds that differ by no more than rounding have met. */
function settle(node: Node): void {
  if (node.lower > node.upper * (1 - 1e-9)) node.lower = node.upper;
}

/** The test with the most information for its minutes; a costless one before all. */
function mostTold(p: readonly number[], mass: number, options: readonly Option[]): Option | null {
  let [best, most]: [Option | null, number] = [null, -1];
  for (const option of options) {
    const bits = entropy(massOf(p, option.bad) / mass);
    const told = option.minutes > 0 ? bits / option.minutes : Number.POSITIVE_INFINITY;
    if (told > most) [best, most] = [option, told];
  }
  return best;
}

/** Bits that the answer of a test tells, which is bad with the chance q. */
export const entropy = (q: number): number =>
  q > 0 && q < 1 ? -q * Math.log2(q) - (1 - q) * Math.log2(1 - q) : 0;

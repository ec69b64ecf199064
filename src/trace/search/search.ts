/**
 * The way of tests with the least expected minutes: a best-first search over the standings that tests lead to, AO*
 * (Martelli & Montanari, Additive AND/OR graphs, IJCAI 1973; for this question Pattipati & Alexandridis 1990).
 *
 * Of every standing met it keeps a bound from below and, once it was of use, a way on that is known, which bounds it
 * from above. It looks further into the way that could yet be the best, where the two are furthest apart, until they
 * meet or the work is used up: so it ends exact, or with a known way and how far at most that is from the best. The
 * first known way takes the test that tells most for its minutes.
 *
 * Most standings are met and never looked into: those cost a bound that comes with the look that met them, no more.
 *
 * All minutes in here are times p(S), so that those of the standings behind a test add up.
 */
import {
  massOf,
  type Option,
  optionsAt,
  type Problem,
  type SearchStanding,
  startOf,
} from './problem.ts';

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

/** Bounds from below on the minutes on from a standing, and from where its tests lead. */
export interface Below {
  lower: number;
  behind: (option: Option) => { bad: number; good: number };
}

export type Lower = (standing: SearchStanding, options: readonly Option[]) => Below;

export interface SearchFound {
  root: Node;
  /** Standings met: what the search keeps in memory. */
  standings: number;
}

/** Tests held against states, and pairs of states, at most; the first known way is always made. */
const MOST_WORK = 6_000_000;

/** Of the tests at one standing of the known way, those tried in its place. */
const MOST_TRIED = 3;

export function search(problem: Problem, lower: Lower): SearchFound {
  const { p, tests } = problem;
  const met = new Map<string, Node>();
  /** Standings whose bounds came closer since the last look, without being looked into: met again, or made known. */
  let closer: Node[] = [];
  let work = 0;

  const meet = ({ S, open }: SearchStanding, least: number): Node => {
    const key = String.fromCharCode(...S, NO_STATE, ...(S.length > 1 ? open : []));
    const known = met.get(key);
    if (known) {
      if (!known.branches && least > known.lower) {
        known.lower = Math.min(least, known.upper);
        closer.push(known);
      }
      return known;
    }
    const one = S.length <= 1;
    const bounds = { lower: one ? 0 : least, upper: one ? 0 : Number.POSITIVE_INFINITY };
    const node = { S, open, mass: massOf(p, S), ...bounds, best: null, branches: null, from: [] };
    met.set(key, node);
    return node;
  };

  const branchOf = (from: Node, option: Option, least: { bad: number; good: number }): Branch => {
    const open = option.opens.length > 0 ? from.open.slice() : from.open;
    for (const k of option.opens) open[k] = 1;
    const bad = meet({ S: option.bad, open }, least.bad);
    const good = meet({ S: option.good, open }, least.good);
    // Of one state all is known.
    if (bad.S.length > 1) bad.from.push(from);
    if (good.S.length > 1) good.from.push(from);
    return { option, minutes: option.minutes * from.mass, bad, good };
  };

  const optionsOf = (node: Node): Option[] => {
    work += tests.length * node.S.length;
    return optionsAt(problem, node);
  };

  /** Makes a way on known. */
  const know = (node: Node, options: readonly Option[] = optionsOf(node)): void => {
    const first = mostTold(p, node.mass, options);
    if (!first) return;
    const best = branchOf(node, first, NOTHING);
    for (const behind of [best.bad, best.good]) if (!Number.isFinite(behind.upper)) know(behind);
    node.best = best;
    node.upper = upperOf(best);
    closer.push(node);
  };

  const lookInto = (node: Node): void => {
    const options = optionsOf(node);
    if (!Number.isFinite(node.upper)) know(node, options);
    const below = lower(node, options);
    node.lower = Math.max(node.lower, below.lower);
    node.branches = options.flatMap((option) => {
      const least = below.behind(option);
      const minutes = option.minutes * node.mass + least.bad + least.good;
      return minutes < node.upper ? [branchOf(node, option, least)] : [];
    });
    improve(node);
    improveAll(node);
  };

  /** Of all from which tests lead to it, or to one that came closer: a smaller one before a larger one, so that each is seen once. */
  const improveAll = (looked: Node): void => {
    const waiting: Set<Node>[] = [];
    const wait = (some: readonly Node[]) => {
      for (const one of some) {
        const size = one.S.length;
        waiting[size] ??= new Set();
        waiting[size].add(one);
      }
    };
    for (const { from } of [looked, ...closer]) wait(from);
    closer = [];
    for (let size = 0; size < waiting.length; size += 1) {
      for (const one of waiting[size] ?? []) {
        work += one.branches?.length ?? 0;
        if (improve(one)) wait(one.from);
      }
    }
  };

  /** Looked into, with a way on known behind some tests that may be better than the one of the known way. */
  const better = (node: Node): void => {
    if (!node.branches) lookInto(node);
    const likeliest = (node.branches ?? []).toSorted((one, other) => lowerOf(one) - lowerOf(other));
    for (const { bad, good } of likeliest.slice(0, MOST_TRIED)) {
      for (const behind of [bad, good]) if (!Number.isFinite(behind.upper)) know(behind);
    }
    improve(node);
    improveAll(node);
  };

  /** The known way made better from its top down, the heaviest standings first. */
  const betterWay = (): void => {
    const ahead = [root];
    while (work < MOST_WORK) {
      const heaviest = Math.max(...ahead.map(({ mass }) => mass));
      const [node] = ahead.splice(
        ahead.findIndex(({ mass }) => mass === heaviest),
        1,
      );
      if (!node) return;
      if (node.lower === node.upper) continue;
      better(node);
      if (node.best) ahead.push(node.best.bad, node.best.good);
    }
  };

  const root = meet(startOf(problem), 0);
  if (root.S.length > 1) know(root);
  betterWay();
  while (root.lower < root.upper && work < MOST_WORK) lookInto(unsure(root));
  return { root, standings: met.size };
}

const NO_STATE = 0xffff;
const NOTHING = { bad: 0, good: 0 };

const lowerOf = ({ minutes, bad, good }: Branch): number => minutes + bad.lower + good.lower;
const upperOf = ({ minutes, bad, good }: Branch): number => minutes + bad.upper + good.upper;

/** On the way that could yet be the best, the standing not looked into where least is known. */
function unsure(root: Node): Node {
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
function improve(node: Node): boolean {
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
const entropy = (q: number): number =>
  q > 0 && q < 1 ? -q * Math.log2(q) - (1 - q) * Math.log2(1 - q) : 0;

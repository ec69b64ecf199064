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
import { type Branch, improve, lowerOf, type Node, unsure, upperOf } from './node.ts';
import {
  massOf,
  mostTelling,
  type Option,
  optionsAt,
  type Problem,
  type SearchStanding,
  startOf,
} from './problem.ts';

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

/** Tests held against states at most; the first known way is always made. */
const MOST_WORK = 6_000_000;

/** Of the tests at one standing of the known way, those tried in its place. */
const MOST_TRIED = 3;

export function search(problem: Problem, lower: Lower): SearchFound {
  const all: Search = { problem, lower, met: new Map(), closer: [], work: 0 };
  const root = meet(all, startOf(problem), 0);
  if (root.S.length > 1) know(all, root);
  betterWay(all, root);
  while (root.lower < root.upper && all.work < MOST_WORK) lookInto(all, unsure(root));
  return { root, standings: all.met.size };
}

/** What a search goes on from. */
interface Search {
  problem: Problem;
  lower: Lower;
  /** By their states and covers. */
  met: Map<string, Node>;
  /** Standings whose bounds came closer since the last look, without being looked into: met again, or made known. */
  closer: Node[];
  work: number;
}

const NO_STATE = 0xffff;

function meet(search: Search, { S, open }: SearchStanding, least: number): Node {
  const { met, closer, problem } = search;
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
  const mass = massOf(problem.p, S);
  const node = { S, open, mass, ...bounds, best: null, branches: null, from: [] };
  met.set(key, node);
  return node;
}

function branchOf(
  search: Search,
  from: Node,
  option: Option,
  least: { bad: number; good: number },
): Branch {
  const open = option.opens.length > 0 ? from.open.slice() : from.open;
  for (const k of option.opens) open[k] = 1;
  const bad = meet(search, { S: option.bad, open }, least.bad);
  const good = meet(search, { S: option.good, open }, least.good);
  // Of one state all is known.
  if (bad.S.length > 1) bad.from.push(from);
  if (good.S.length > 1) good.from.push(from);
  return { option, minutes: option.minutes * from.mass, bad, good };
}

const NOTHING = { bad: 0, good: 0 };

/** Makes a way on known. */
function know(search: Search, node: Node): void {
  search.work += search.problem.tests.length * node.S.length;
  const first = mostTelling(search.problem, node);
  if (!first) return;
  const best = branchOf(search, node, first, NOTHING);
  knowBehind(search, best);
  node.best = best;
  node.upper = upperOf(best);
  search.closer.push(node);
}

function knowBehind(search: Search, { bad, good }: Branch): void {
  for (const behind of [bad, good]) if (!Number.isFinite(behind.upper)) know(search, behind);
}

function lookInto(search: Search, node: Node): void {
  if (!Number.isFinite(node.upper)) know(search, node);
  search.work += search.problem.tests.length * node.S.length;
  const options = optionsAt(search.problem, node);
  const below = search.lower(node, options);
  node.lower = Math.max(node.lower, below.lower);
  node.branches = options.flatMap((option) => {
    const least = below.behind(option);
    const minutes = option.minutes * node.mass + least.bad + least.good;
    return minutes < node.upper ? [branchOf(search, node, option, least)] : [];
  });
  improve(node);
  improveAll(search, node);
}

/**
 * Of all from which tests lead to it, or to one that came closer: a smaller one before a larger one, so that each is
 * seen once.
 */
function improveAll(search: Search, looked: Node): void {
  const waiting: Set<Node>[] = [];
  const wait = (some: readonly Node[]) => {
    for (const one of some) {
      const size = one.S.length;
      waiting[size] ??= new Set();
      waiting[size].add(one);
    }
  };
  for (const { from } of [looked, ...search.closer]) wait(from);
  search.closer = [];
  for (let size = 0; size < waiting.length; size += 1) {
    for (const one of waiting[size] ?? []) {
      search.work += one.branches?.length ?? 0;
      if (improve(one)) wait(one.from);
    }
  }
}

/** The known way made better from its top down, the heaviest standings first. */
function betterWay(search: Search, root: Node): void {
  const ahead = [root];
  while (search.work < MOST_WORK) {
    const heaviest = Math.max(...ahead.map(({ mass }) => mass));
    const at = ahead.findIndex(({ mass }) => mass === heaviest);
    const [node] = ahead.splice(at, 1);
    if (!node) return;
    if (node.lower === node.upper) continue;
    better(search, node);
    if (node.best) ahead.push(node.best.bad, node.best.good);
  }
}

/** Looked into, with a way on known behind some tests that may be better than the one of the known way. */
function better(search: Search, node: Node): void {
  if (!node.branches) lookInto(search, node);
  const likeliest = (node.branches ?? []).toSorted((one, other) => lowerOf(one) - lowerOf(other));
  for (const branch of likeliest.slice(0, MOST_TRIED)) knowBehind(search, branch);
  improve(node);
  improveAll(search, node);
}

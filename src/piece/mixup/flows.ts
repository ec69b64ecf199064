/**
 * Wrong holes as a flow. Kinds are points; a hole for kind a that holds kind b is an arrow a→b: it leaves an a in the
 * tray and takes a b out of it. A set of wrong holes explains a tray when its arrows add up to what is over and missing.
 * One of them could be left out, with others, only where arrows run in a circle: so irreducible means without a circle.
 */

import type { Flow, FlowProblem, Flows } from './flow.ts';
import { tables } from './tables.ts';

/** More than these explain nothing any more; 60 holes in 6 kinds, half of them full and all wrong, have 2,211. */
export const MOST_FLOWS = 2500;
/** Steps of the search; only reached by hundreds of bolts in dozens of kinds. */
const MOST_STEPS = 200_000;

/** Whether arrows lead from one kind to another. */
function leads(outs: readonly (readonly number[])[], from: number, to: number): boolean {
  const seen = new Set([from]);
  for (const kind of seen) {
    if (kind === to) return true;
    for (const next of outs[kind] ?? []) seen.add(next);
  }
  return false;
}

const plus = (numbers: readonly number[]) => numbers.reduce((sum, n) => sum + Math.max(0, n), 0);

/** Every irreducible flow within the bound, each once; none where what is over and what is missing differ in number. */
export function irreducibleFlows(problem: FlowProblem): Flows {
  const { over, bound } = problem;
  const D = plus(over);
  if (D !== plus(over.map((n) => -n)) || D > bound) return { flows: [], complete: true };
  return D === bound ? tables(problem, MOST_FLOWS, MOST_STEPS) : walks(problem, D);
}

/**
 * While something is over, an arrow must leave a kind that is over: taking the first such kind each time reaches every
 * flow without a circle. One flow may be reached in several orders, and counts once.
 */
function walks(problem: FlowProblem, D: number): Flows {
  const over = [...problem.over];
  const outs: number[][] = over.map(() => []);
  const flows = new Map<string, Flow>();
  let toPlace = D;
  let steps = 0;
  let complete = true;

  const add = (kind: number, n: number) => {
    over[kind] = (over[kind] ?? 0) + n;
  };

  const walk = (budget: number): void => {
    const from = over.findIndex((n) => n > 0);
    if (from < 0) {
      const flow = outs.map((holds) => [...holds].sort((a, b) => a - b));
      flows.set(flow.map((holds) => holds.join()).join(';'), flow);
      return;
    }
    const holds = outs[from] ?? [];
    for (let to = 0; to < over.length; to++) {
      const wanted = (over[to] ?? 0) < 0 ? 1 : 0;
      if (to === from || toPlace - wanted > budget - 1 || leads(outs, to, from)) continue;
      if (flows.size >= MOST_FLOWS || ++steps > MOST_STEPS) {
        complete = false;
        return;
      }
      holds.push(to);
      if (problem.room(from, holds)) {
        add(from, -1);
        add(to, 1);
        toPlace -= wanted;
        walk(budget - 1);
        toPlace += wanted;
        add(to, -1);
        add(from, 1);
      }
      holds.pop();
    }
  };

  walk(problem.bound);
  return { flows: [...flows.values()], complete };
}

/** Kinds with wrong holes in the order in which one follows the arrows, from what is over to what is missing. */
export function alongArrows(flow: Flow): number[] {
  const left = flow.flatMap((holds, kind) => (holds.length > 0 ? [kind] : []));
  const order: number[] = [];
  while (left.length > 0) {
    const first = left.findIndex((kind) => !left.some((other) => flow[other]?.includes(kind)));
    order.push(...left.splice(Math.max(0, first), 1));
  }
  return order;
}

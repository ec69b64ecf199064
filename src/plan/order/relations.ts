/**
 * The steps of a job and what must be finished before what (finish to start).
 *
 * A piece makes two steps, `alternator off` and `alternator on`; a task makes one, by its name. Relations come
 * from `under` (B over A: B off before A off, A on before B on), from `before`, `after` and `while` of tasks,
 * and from each piece being off before it is on. What really happened is added in `standing.ts`.
 */
import { type Overs, oversOf } from '../../job/fold/overs.ts';
import type { PieceSpec, TaskSpec, TaskVerb } from '../../model/types.ts';
import {
  arrowsOf,
  circleThrough,
  components,
  type Graph,
  graphOf,
  type Pair,
  topological,
} from './graph.ts';

export type StepKind = 'off' | 'on' | TaskVerb;

export interface PlanStep {
  step: string;
  kind: StepKind;
  /** Of the piece or the task. */
  key: string;
}

/** Steps that wait for each other all round. */
export interface Circle {
  /** Each waits for the one before it, the first for the last. */
  steps: string[];
  /** Their pieces and tasks, each once, in the order of the circle. */
  keys: string[];
}

export interface Relations {
  /** Off of all pieces, on of all pieces, tasks: each in the order of the file. */
  steps: readonly PlanStep[];
  /** Place of a step in `steps`. */
  at: ReadonlyMap<string, number>;
  /** Over places in `steps`. Without circles: what is in one has only the relations that lead in and out. */
  graph: Graph;
  circles: Circle[];
}

interface Parts {
  pieces: readonly PieceSpec[];
  tasks: readonly TaskSpec[];
}

export function relationsOf({ pieces, tasks }: Parts, overs = oversOf(pieces)): Relations {
  const steps = stepsOf({ pieces, tasks });
  const at = new Map(steps.map((step, i) => [step.step, i]));
  const pairs: Pair[] = [];
  const own: Pair[] = [];
  const add = (to: Pair[], before: string, after: string): void => {
    const [a, b] = [at.get(before), at.get(after)];
    // What the file names and the job has not is told by `check`, and not waited for.
    if (a !== undefined && b !== undefined) to.push([a, b]);
  };
  for (const { key } of pieces) add(own, `${key} off`, `${key} on`);
  for (const [key, over] of overs) {
    for (const upper of over) {
      add(pairs, `${upper} off`, `${key} off`);
      add(pairs, `${key} on`, `${upper} on`);
    }
  }
  for (const task of tasks) {
    for (const step of task.before) add(pairs, task.key, spoken(step));
    for (const step of task.after) add(pairs, spoken(step), task.key);
    for (const step of task.while.map(spoken)) {
      const piece = /^(\S+) off$/.exec(step)?.[1];
      const meanwhile = tasks.find((other) => other.key === step);
      if (piece !== undefined) add(pairs, task.key, `${piece} on`);
      // `while:` a task, often a wait: this one can begin as soon as that one can.
      const from = meanwhile ? [...meanwhile.after, ...meanwhile.while].map(spoken) : [step];
      for (const earlier of from) add(pairs, earlier, task.key);
    }
  }
  return { steps, at, ...withoutCircles(steps, pairs, own) };
}

function stepsOf({ pieces, tasks }: Parts): PlanStep[] {
  const ways = ['off', 'on'] as const;
  return [
    ...ways.flatMap((kind) =>
      pieces.map(({ key }): PlanStep => ({ step: `${key} ${kind}`, kind, key })),
    ),
    ...tasks.map(({ key, verb }): PlanStep => ({ step: key, kind: verb, key })),
  ];
}

const SPACED = /^\s|\s\s|\s$|[^\S ]/;

/** A step as the file may space it. */
export function spoken(step: string): string {
  return SPACED.test(step) ? step.trim().replace(/\s+/g, ' ') : step;
}

/** What lies over what among these pieces alone: one that is left out hands on what lies over it. */
export function oversAmong(overs: Overs, keys: ReadonlySet<string>): Overs {
  return new Map(
    [...keys].map((key) => {
      const up = new Set(overs.get(key));
      for (const over of up) {
        if (!keys.has(over)) for (const further of overs.get(over) ?? []) up.add(further);
      }
      return [key, new Set([...up].filter((over) => keys.has(over)))];
    }),
  );
}

/** Circles found, named and opened: of the relations inside one, only those of a piece with itself stay. */
function withoutCircles(steps: readonly PlanStep[], pairs: Pair[], own: Pair[]) {
  const whole = graphOf(steps.length, [...own, ...pairs]);
  const anyOrder = steps.map((_, i) => i);
  if (topological(whole, anyOrder).length === steps.length) return { graph: whole, circles: [] };
  const part = components(whole);
  const inside = arrowsOf(whole).filter(([a, b]) => part[a] === part[b]);
  const knot = graphOf(steps.length, inside);
  const circles: Circle[] = [];
  const named = new Set<string>();
  const told = new Set<number>();
  for (const [node] of inside.toSorted(([a], [b]) => a - b)) {
    const way = told.has(node) ? null : circleThrough(knot, node);
    if (!way) continue;
    for (const member of way) told.add(member);
    const circle = circleOf(way.flatMap((member) => steps[member] ?? []));
    // Pieces under each other in a circle wait for each other both ways: told once.
    const name = circle.keys.toSorted().join(' ');
    if (!named.has(name)) circles.push(circle);
    named.add(name);
  }
  const open = pairs.filter(([a, b]) => part[a] !== part[b]);
  return { graph: graphOf(steps.length, [...own, ...open]), circles };
}

function circleOf(steps: readonly PlanStep[]): Circle {
  return { steps: steps.map((s) => s.step), keys: [...new Set(steps.map((s) => s.key))] };
}

/** Steps that wait for each other in a circle, by `under` and by tasks; for `check`, which knows their lines. */
export function circlesOf(upper: {
  pieces: ReadonlyMap<string, PieceSpec>;
  tasks: ReadonlyMap<string, TaskSpec>;
}): Circle[] {
  return relationsOf({ pieces: [...upper.pieces.values()], tasks: [...upper.tasks.values()] })
    .circles;
}

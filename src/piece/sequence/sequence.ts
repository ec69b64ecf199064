/**
 * In which order the bolts of a piece are tightened and loosened, and how evenly that pulls it down.
 *
 * Pure and deterministic. The screens show order numbers; the figures are for the JSON and those who ask.
 */
import { tidy } from '../../bolt/numbers.ts';
import type { Care, Kind, PieceSpec } from '../../model/types.ts';
import { orderCare } from '../care.ts';
import { type Layout, layout } from '../map.ts';
import { holeNames } from '../order.ts';
import { BOUND, isFree } from './bound.ts';
import { type Chosen, choose, listed, type Pattern, restOf } from './choose.ts';
import { computedOrder } from './computed.ts';
import type { Computed } from './exact.ts';
import { remember } from './memory.ts';
import { groupsOf, ranks } from './ranks.ts';
import { tips } from './tips.ts';
import { EPSILON, measure, type Task, vectors } from './vectors.ts';

export interface SequenceInput {
  layout: Layout;
  /** In the order of the file. */
  names: readonly string[];
  /** The maker's order, as printed. */
  list: readonly string[] | null;
  care: Care | null;
  first: readonly string[];
  /** Group of a hole, by its name. */
  groups: ReadonlyMap<string, string>;
  /** Tight already. */
  done: readonly string[];
  /** Can not be tightened now: nothing is in, or it will not hold. */
  skip?: readonly string[];
}

export interface Balance {
  /** Largest imbalance over the steps of the order, as a share of R; and its mean over the steps. */
  peak: number;
  mean: number;
  /** The least peak an order can have; the least known where not `exact`. */
  best: number;
  exact: boolean;
  /** √5/2; null where holes that come first, groups or what is done void the theorem. */
  bound: number | null;
  /** The order goes beyond the bound. */
  over: boolean;
  /** Steps from a hole to one next to it. */
  neighbours: number;
  /** What would be computed where the order is not; null for the computed one. */
  computed: { order: string[]; peak: number } | null;
}

export interface Sequence {
  pattern: Pattern;
  /** In a phrase, for the person. */
  why: string;
  /** What is left, in its order. */
  tighten: string[];
  loosen: string[];
  balance: Balance;
  /** The maker alone can order this piece, and the file has no list: ask for it. */
  asks: Care | null;
  tips: { tighten: string[]; loosen: string[] };
}

/** The order of a piece as its file has it. `done` are tight already. `kinds` do not change the order. */
export function sequence(
  spec: PieceSpec,
  _kinds?: ReadonlyMap<string, Kind>,
  names: readonly string[] = holeNames(spec),
  done: readonly string[] = [],
  skip: readonly string[] = [],
): Sequence {
  return sequenceFrom({
    layout: layout(spec, names),
    names,
    list: spec.sequence,
    care: orderCare(spec),
    first: spec.first,
    groups: groupsOf(spec),
    done,
    skip,
  });
}

export function sequenceFrom(input: SequenceInput): Sequence {
  const groups = [...input.groups].flat();
  const { places } = input.layout;
  const { names, list, care, first, done, skip } = input;
  const key = JSON.stringify([places, names, list, care, first, groups, done, skip]);
  return remember(key, () => work(input));
}

function work(input: SequenceInput): Sequence {
  const { names, care } = input;
  const index = new Map(names.map((name, i) => [name, i]));
  const indices = (some: readonly string[]) => [
    ...new Set(some.flatMap((name) => index.get(name) ?? [])),
  ];
  const place = new Map(input.layout.places.map((p) => [p.name, p]));
  const points = names.map((name) => place.get(name) ?? { x: 0, y: 0 });
  const done = indices(input.done);
  const away = new Set([...done, ...indices(input.skip ?? [])]);
  const task: Task = {
    v: vectors(points),
    rank: ranks(names, input.first, input.groups),
    done,
    left: [...names.keys()].filter((i) => !away.has(i)),
  };
  let made: Computed | null = null;
  const computed = () => {
    made ??= computedOrder(task);
    return made;
  };
  const list = input.list === null ? null : listed(input.list, names);
  const chosen =
    list === null
      ? choose(task, indices(input.first), computed)
      : {
          pattern: 'list' as const,
          why: "the maker's order, as the file gives it",
          order: restOf(list, task) ?? list.filter((i) => task.left.includes(i)),
        };
  const named = (order: readonly number[]) => order.flatMap((i) => names[i] ?? []);
  const asks = list === null ? care : null;
  const tighten = named(chosen.order);
  return {
    pattern: chosen.pattern,
    why: asks === null ? chosen.why : `not the maker's order, which is wanted here: ${chosen.why}`,
    tighten,
    loosen: [...tighten].reverse(),
    balance: balance(task, chosen, computed(), named),
    asks,
    tips: tips(names, points, care),
  };
}

function balance(
  task: Task,
  { pattern, order }: Chosen,
  computed: Computed,
  named: (order: readonly number[]) => string[],
): Balance {
  const { peak, mean, neighbours } = measure(task, order);
  const bound = isFree(task) ? BOUND : null;
  return {
    peak: tidy(peak),
    mean: tidy(mean),
    best: tidy(computed.best),
    exact: computed.exact,
    bound,
    over: bound !== null && peak > bound + EPSILON,
    neighbours,
    computed:
      pattern === 'star'
        ? null
        : { order: named(computed.order), peak: tidy(measure(task, computed.order).peak) },
  };
}

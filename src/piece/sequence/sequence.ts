/**
 * In which order the bolts of a piece are tightened and loosened, and how evenly that pulls it down.
 *
 * Pure and deterministic. The screens show order numbers; the figures are for the JSON and those who ask.
 */
import { tidy } from '../../bolt/read/numbers.ts';
import type { Care, Kind, PieceSpec } from '../../model/types.ts';
import { hasGasket, orderCare, shapeMatters } from '../care.ts';
import { type Layout, layout } from '../map.ts';
import { holeNames } from '../order.ts';
import { BOUND, isFree } from './bound.ts';
import { type ChosenOrder, choose, indicesOf, type OrderPattern, restOf } from './choose.ts';
import { computedOrder } from './computed.ts';
import type { Computed } from './exact.ts';
import { wellInside } from './hull.ts';
import { keepOrder } from './memory.ts';
import { type Pull, pullsOf } from './pull.ts';
import { groupsOf, ranks } from './ranks.ts';
import { tips, topmost } from './tips.ts';
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
  /** How hard each bolt pulls, in the order of the names; none: all alike. */
  pulls?: readonly Pull[];
  /** There is a gasket under it. */
  gasket?: boolean;
  /** Why it matters where its holes are, in a phrase; null or none: it does not. */
  matters?: string | null;
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
  pattern: OrderPattern;
  /** In a phrase, for the person. */
  why: string;
  /** What is left, in its order. */
  tighten: string[];
  loosen: string[];
  balance: Balance;
  /** The maker alone can order this piece, and the file has no list: ask for it. */
  asks: Care | null;
  /** Where the holes are nobody has drawn: a ring is assumed. */
  assumed: boolean;
  /** It matters where they are: ask for the picture. Null where it does not; else why it does, in a phrase. */
  picture: string | null;
  tips: { tighten: string[]; loosen: string[] };
}

/** The order of a piece as its file has it. `done` are tight already. */
export function sequence(
  spec: PieceSpec,
  kinds: ReadonlyMap<string, Kind> = NO_KINDS,
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
    pulls: pullsOf(spec, kinds, names),
    gasket: hasGasket(spec),
    matters: shapeMatters(spec),
    done,
    skip,
  });
}

const NO_KINDS: ReadonlyMap<string, Kind> = new Map();

export function sequenceFrom(input: SequenceInput): Sequence {
  const groups = [...input.groups].flat();
  const { from, places } = input.layout;
  const { names, list, care, first, pulls, gasket, matters, done, skip } = input;
  const key = JSON.stringify([
    ...[from, places, names, list, care, first, groups, pulls, gasket, matters, done, skip],
  ]);
  return keepOrder(key, () => workOut(input));
}

/** The places of these names among all, each once. */
function placesOf(some: readonly string[], names: readonly string[]): number[] {
  const index = new Map(names.map((name, i) => [name, i]));
  return [...new Set(some.flatMap((name) => index.get(name) ?? []))];
}

/** What is to be put in order, and what of the holes is told beside the order. */
function taskOf(input: SequenceInput) {
  const { names, first, groups, pulls = [] } = input;
  const place = new Map(input.layout.places.map((p) => [p.name, p]));
  const points = names.map((name) => place.get(name) ?? { x: 0, y: 0 });
  const done = placesOf(input.done, names);
  const away = new Set([...done, ...placesOf(input.skip ?? [], names)]);
  const at = vectors(points);
  const forces = pulls.map((pull) => pull.force);
  const sizes = pulls.map((pull) => pull.size);
  const inside = input.layout.from === 'ring' ? [] : wellInside(at);
  const task: Task = {
    at,
    v: forces.some((force) => force !== forces[0]) ? vectors(points, forces) : at,
    rank: ranks(names, { first, groups, sizes, inside }),
    done,
    left: [...names.keys()].filter((i) => !away.has(i)),
  };
  return { task, points, sizes, inside };
}

function workOut(input: SequenceInput): Sequence {
  const { names, care } = input;
  const { task, points, sizes, inside } = taskOf(input);
  let made: Computed | null = null;
  const computed = () => {
    made ??= computedOrder(task);
    return made;
  };
  const list = input.list === null ? null : indicesOf(input.list, names);
  const chosen =
    list === null
      ? choose(task, placesOf(input.first, names), computed)
      : {
          pattern: 'list' as const,
          why: "the maker's order, as the file gives it",
          order: restOf(list, task) ?? list.filter((i) => task.left.includes(i)),
        };
  const named = (order: readonly number[]) => order.flatMap((i) => names[i] ?? []);
  const asks = list === null ? care : null;
  const assumed = list === null && input.layout.from === 'ring' && names.length >= LEAST_RING;
  const tighten = named(chosen.order);
  const off = [...tighten].reverse();
  const top = care === 'spring' ? null : topmost(names, points, sizes);
  // Where the maker's order counts, it counts from its end; elsewhere a piece may hang on its top bolt.
  const free = list === null && care === null;
  const last = top !== null && (free ? off.includes(top) : off.at(-1) === top) ? top : null;
  const why = [
    ...(asks === null ? [] : ["not the maker's order, which is wanted here"]),
    assumed ? whyAssumed(names.length, chosen) : chosen.why,
  ];
  return {
    pattern: chosen.pattern,
    why: why.join(': ') + (list === null ? lots({ inside, sizes }, chosen.pattern) : ''),
    tighten,
    loosen: last === null ? off : [...off.filter((name) => name !== last), last],
    balance: balance(task, chosen, computed(), named),
    asks,
    assumed,
    picture: assumed && names.length > MOST_ASSUMED ? (input.matters ?? null) : null,
    tips: tips({ count: names.length, care, last, gasket: gasketUnder(input, chosen.pattern) }),
  };
}

/** Nothing that holds of a ring is known of it, and so nothing published. */
function whyAssumed(n: number, { pattern, why }: ChosenOrder): string {
  const how = pattern !== 'cross' ? why : n > LEAST_RING ? 'crosswise' : 'one after the other';
  return `not drawn, so a ring of ${n} is assumed: ${how}`;
}

/** From here on a ring is a shape. */
const LEAST_RING = 3;
/** So many bolts may be taken as a ring without asking. */
const MOST_ASSUMED = 5;

/** What goes before what, where bolts differ. */
function lots(
  { inside, sizes }: { inside: readonly boolean[]; sizes: readonly number[] },
  pattern: OrderPattern,
): string {
  const larger = new Set(sizes).size > 1 ? ', the larger before the smaller' : '';
  const inner =
    pattern !== 'centre-out' && inside.some(Boolean) ? ', the inner before the rim' : '';
  return larger + inner;
}

/** Both ways are in use for a cover with a gasket; on a circle nobody asks. */
function gasketUnder({ gasket, list, care, names }: SequenceInput, pattern: OrderPattern) {
  const cover = gasket === true && list === null && care === null && names.length > 4;
  return cover && (pattern === 'star' || pattern === 'centre-out') ? pattern : null;
}

function balance(
  task: Task,
  { pattern, order }: ChosenOrder,
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

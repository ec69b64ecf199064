/**
 * The passes of a piece in the order in which they are gone through, each with its holes and their order. Stage by
 * stage, the larger bolts first in each (as `ranks` has it); where holes are put in groups and their torques are printed
 * in stages, group by group, each with all its stages: manuals print both.
 */
import { kept } from '../../model/kept.ts';
import type { Kind, PassSpec, PieceSpec, Quantity } from '../../model/types.ts';
import { type Layout, layout } from '../map.ts';
import { holeNames } from '../order.ts';
import { isStaged, type Passes, passAt, passesAt, passesOf, passPlan } from '../passes.ts';
import { pullsOf } from './pull.ts';
import { groupPlaces, groupsOf, ranks } from './ranks.ts';

type Kinds = ReadonlyMap<string, Kind>;

/** One pass over some holes, before the next is begun. */
export interface RoundStage {
  pass: PassSpec;
  /** In the order of the file. */
  holes: string[];
}

/** What every bolt has before any group begins, and after the last has ended. */
const EARLY = ['snug'];
const LATE = ['final', 'again'];

/** Shared: not to be changed. */
export function stagesOf(
  spec: PieceSpec,
  kinds: Kinds,
  names: readonly string[],
): readonly RoundStage[] {
  const make = () => findStages(spec, kinds, names);
  return kept(spec, `stages of ${names.join(' ')}`, make, kinds);
}

function findStages(spec: PieceSpec, kinds: Kinds, names: readonly string[]): RoundStage[] {
  const has = new Map(
    names.map((name) => [name, new Set(passesAt(spec, kinds, name).map((p) => p.name))]),
  );
  const over = (pass: PassSpec, holes: readonly string[]): RoundStage[] => {
    const own = holes.filter((name) => has.get(name)?.has(pass.name));
    return own.length > 0 ? [{ pass, holes: own }] : [];
  };
  const passes = passesOf(spec, kinds);
  const groups = isStaged(spec, kinds) ? groupsIn(spec, kinds, names) : [];
  if (groups.length < 2) return passes.flatMap((pass) => over(pass, names));
  const named = (some: readonly string[]) => passes.filter(({ name }) => some.includes(base(name)));
  const middle = passes.filter(({ name }) => ![...EARLY, ...LATE].includes(base(name)));
  return [
    ...named(EARLY).flatMap((pass) => over(pass, names)),
    ...groups.flatMap((group) => middle.flatMap((pass) => over(pass, group))),
    ...named(LATE).flatMap((pass) => over(pass, names)),
  ];
}

/** `part` of `part 2`. */
function base(name: string): string {
  return name.split(' ')[0] ?? '';
}

/** The holes of each group, in the turn of the groups. */
function groupsIn(spec: PieceSpec, kinds: Kinds, names: readonly string[]): string[][] {
  const sizes = pullsOf(spec, kinds, names).map((pull) => pull.size);
  const places = groupPlaces(names, groupsOf(spec), sizes);
  const turns = [...new Set(places)].sort((a, b) => a - b);
  return turns.map((turn) => names.filter((_, i) => places[i] === turn));
}

/** Once round, the larger bolts first. */
export function roundOf(spec: PieceSpec, kinds: Kinds, names: readonly string[]): string[] {
  const sizes = pullsOf(spec, kinds, names).map((pull) => pull.size);
  const rank = ranks(names, { first: [], groups: groupsOf(spec), sizes, inside: [] });
  const turn = new Map(names.map((name, i) => [name, rank[i] ?? 0]));
  return around(layout(spec, names)).sort((a, b) => (turn.get(a) ?? 0) - (turn.get(b) ?? 0));
}

/** All holes once round: clockwise by angle about their middle, from the first one. */
function around(at: Layout): string[] {
  const n = at.places.length || 1;
  const [cx, cy] = at.places.reduce(([x, y], p) => [x + p.x / n, y + p.y / n], [0, 0]);
  const turns = at.places.map((p) => ({ name: p.name, turn: Math.atan2(p.y - cy, p.x - cx) }));
  const start = turns[0]?.turn ?? 0;
  const full = 2 * Math.PI;
  const from = (turn: number) => (turn - start + full + 1e-9) % full;
  return turns.sort((a, b) => from(a.turn) - from(b.turn)).map((t) => t.name);
}

export interface Pass {
  name: string;
  torque: Quantity | null;
  angle: number | null;
  after: string | null;
  order: string[];
  /** What to watch for; empty for nothing. */
  say: string;
}

const SAY: Record<string, string> = {
  loosen: 'Back by so much, all round, before the next.',
  printed: 'Not read whole: do it as it is printed, all of it, and say so.',
  snug: 'By fingers and wrist, square down on the dowels.',
  angle: 'Such bolts are often used once. Never click them again afterwards.',
  final: 'Once round. A bolt that keeps turning is a fault, not another round.',
  again: 'Stone cold, and never where threadlocker has set or after an angle.',
};

/**
 * Each pass with its torque and order, for a piece whose order of tightening is `tighten`. Holes with a torque
 * of their own make entries of their own under the same name, wherever the order comes to them.
 */
export function rounds(
  spec: PieceSpec,
  kinds: Kinds,
  tighten: readonly string[],
  names: readonly string[] = holeNames(spec),
): Passes & { rounds: Pass[] } {
  const round = roundOf(spec, kinds, names).filter((name) => tighten.includes(name));
  const all = stagesOf(spec, kinds, names).flatMap(({ pass, holes }) => {
    const whole = pass.name === 'final' && spec.sequence === null ? round : tighten;
    const order = whole.filter((name) => holes.includes(name));
    const { name, angle, after } = pass;
    const common = { name, angle, after, say: SAY[base(name)] ?? '' };
    return byTorque(spec, kinds, pass, order).map((part) => ({ ...common, ...part }));
  });
  return { ...passPlan(spec, kinds), rounds: all };
}

/** The order of a pass, cut where another torque or angle begins to hold. */
function byTorque(spec: PieceSpec, kinds: Kinds, pass: PassSpec, order: readonly string[]) {
  const runs: { torque: Quantity | null; angle: number | null; order: string[] }[] = [];
  for (const hole of order) {
    const own = passAt(spec, kinds, pass, hole);
    const [torque, angle] = [own.torque?.quantity ?? null, own.angle];
    const run = runs.at(-1);
    const same =
      run && run.angle === angle && JSON.stringify(run.torque) === JSON.stringify(torque);
    if (same) run.order.push(hole);
    else runs.push({ torque, angle, order: [hole] });
  }
  return runs;
}

/**
 * How often one goes round the bolts of a piece, and at what torque.
 *
 * `snug` by fingers and wrist, square down on the dowels; `part` at a share of the torque, so that the joint
 * comes down evenly; `full`; `angle` further by degrees; `final` once more round at full torque, where nothing
 * may turn on; `loosen` back by degrees between two of them; `again` later, only where the maker says so. A printed
 * torque that was not read whole is one pass, `printed`: what stands there is done as it stands. All common practice, no source, but the shares:
 * half is the middle of 50 to 70 % in the second round of ASME PCC-1's legacy method.
 */

import { readStages, readTorque } from '../bolt/stages.ts';
import { threadOf } from '../bolt/threads.ts';
import { printQuantity, readQuantity } from '../bolt/units.ts';
import type { Kind, PassSpec, PieceSpec, Quantity, Torque } from '../model/types.ts';
import type { Layout } from './map.ts';
import { layout } from './map.ts';
import { holeNames } from './order.ts';

const NAMES = ['snug', 'part', 'full', 'angle', 'loosen', 'final', 'again'];

/**
 * One entry of `passes:`: a name, then a torque or a share (`part 50 %`), degrees, `after …`, as far as they
 * are said. Null when it is none.
 */
export function readPass(text: string): PassSpec | null {
  const found = /^([a-z]+)\b(.*?)(?:\bafter\s+(\S.*))?$/i.exec(text.trim());
  const name = found?.[1]?.toLowerCase() ?? '';
  const said = found?.[2]?.trim() ?? '';
  const after = found?.[3]?.trim() ?? null;
  if (!NAMES.includes(name) || (name === 'again') !== (after !== null)) return null;
  if (name === 'angle') {
    const angle = readAngle(said);
    return angle === null ? null : { name, torque: null, angle, after };
  }
  if (said === '') return { name, torque: null, angle: null, after };
  if (name === 'loosen') {
    const angle = readAngle(said);
    return angle === null ? null : { name, torque: null, angle, after };
  }
  const torque = readShare(said) ?? readTorque(said);
  return torque.quantity === null ? null : { name, torque, angle: null, after };
}

/** `90°`, `+90 deg`, `90`. */
function readAngle(text: string): number | null {
  const bare = text.replace(/^\+\s*/, '');
  const degrees = /^\d+(?:\.\d+)?$/.test(bare) ? `${bare}°` : bare;
  const quantity = readQuantity(degrees);
  return quantity?.unit === '°' && quantity.to === null && quantity.value > 0
    ? quantity.value
    : null;
}

function readShare(text: string): Torque | null {
  const value = Number(/^(\d+(?:\.\d+)?)\s*%$/.exec(text)?.[1] ?? Number.NaN);
  return value > 0 && value <= 100
    ? { text, quantity: { value, to: null, unit: '%' }, where: null }
    : null;
}

/** From here on a part pass is due: bolts that pull a cover askew before they pull it flat. mm. */
const PART_FROM = 8;
/** 5/16 in is 7.94 mm and stands in for M8. */
const NEARLY = 0.1;

export interface Passes {
  passes: PassSpec[];
  /** Why so many, in a phrase. */
  why: string;
}

/** The passes of a piece, each under a name of its own, with its torque: as the file says, or the usual ones. */
export function passPlan(
  spec: Pick<PieceSpec, 'passes' | 'row' | 'torque'>,
  kinds: ReadonlyMap<string, Kind>,
): Passes {
  if (spec.passes !== null && spec.passes.length > 0) {
    return {
      passes: apart(spec.passes.map((p) => resolve(p, spec.torque))),
      why: 'as the file says',
    };
  }
  const printed = spec.torque === null ? null : printedPasses(spec.torque);
  if (printed) return printed;
  const largest = (spec.row ?? []).reduce<{ d: number; name: string } | null>((most, item) => {
    const thread = threadOf(kinds.get(item.kind)?.thread ?? null);
    const name = kinds.get(item.kind)?.thread ?? '';
    return thread !== null && thread.d > (most?.d ?? 0) ? { d: thread.d, name } : most;
  }, null);
  const snug: PassSpec = { name: 'snug', ...BARE };
  const full: PassSpec = { name: 'full', ...BARE, torque: spec.torque };
  if (largest === null || largest.d < PART_FROM - NEARLY) {
    const why =
      largest === null ? 'snug and full: the usual two' : `${largest.name}: snug and full will do`;
    return { passes: [snug, full], why };
  }
  const part = { name: 'part', ...BARE, torque: share(spec.torque, 50) };
  return {
    passes: [snug, part, full],
    why: `${largest.name}: a part pass between, so that the joint comes down evenly`,
  };
}

const BARE = { torque: null, angle: null, after: null };

/** The passes that a printed torque itself has; null where it is one figure, or only says where to look. */
function printedPasses(torque: Torque): Passes | null {
  const { stages, rest } = readStages(torque.text);
  const snug: PassSpec = { name: 'snug', ...BARE };
  if (stages.length > 0 && rest.length > 0) {
    const printed = { name: 'printed', ...BARE, torque: { ...torque, quantity: null } };
    return { passes: [snug, printed], why: 'not read whole: done as it is printed' };
  }
  const last = stages.findLastIndex((s) => s.do === 'torque');
  if (stages.length === 0 || (stages.length === 1 && last === 0)) return null;
  const passes = stages.flatMap((stage, i): PassSpec[] => {
    if (stage.do === 'snug') return [];
    if (stage.do === 'angle') return [{ name: 'angle', ...BARE, angle: stage.degrees }];
    if (stage.do === 'loosen') return [{ name: 'loosen', ...BARE, angle: stage.degrees }];
    const { quantity, most } = stage;
    const text = `${most ? 'max ' : ''}${printQuantity(quantity)}`;
    const name = i === last ? 'full' : 'part';
    return [{ name, ...BARE, torque: { text, quantity, where: torque.where } }];
  });
  return { passes: apart([snug, ...passes]), why: 'the stages as they are printed' };
}

export function passesOf(
  spec: Pick<PieceSpec, 'passes' | 'row' | 'torque'>,
  kinds: ReadonlyMap<string, Kind>,
): PassSpec[] {
  return passPlan(spec, kinds).passes;
}

/**
 * A pass at one hole: at the torque of its own where it has one. Where that has other stages than the piece, it stands
 * as it is printed, with no figure to set.
 */
export function passAt(
  spec: PieceSpec,
  kinds: ReadonlyMap<string, Kind>,
  pass: PassSpec,
  hole: string,
): PassSpec {
  const own = spec.holes.get(hole)?.torque ?? null;
  if (own === null) return pass;
  const whole = passesOf(spec, kinds);
  const passes = passesOf({ ...spec, torque: own }, kinds);
  const same = whole.length === passes.length && whole.every((p, i) => p.name === passes[i]?.name);
  const found = passes.find((p) => p.name === pass.name);
  if (found && (same || found.name !== lastPass(whole))) return found;
  return { ...pass, angle: null, torque: { ...own, quantity: null } };
}

/** Shares become torques; a full or final pass without a figure takes the piece's. */
function resolve(pass: PassSpec, torque: Torque | null): PassSpec {
  const { quantity } = pass.torque ?? {};
  if (quantity?.unit === '%') return { ...pass, torque: share(torque, quantity.value) };
  const takes = pass.name === 'full' || pass.name === 'final' || pass.name === 'again';
  return takes && pass.torque === null ? { ...pass, torque } : pass;
}

function share(torque: Torque | null, percent: number): Torque | null {
  const of = torque?.quantity;
  if (!torque || !of) return null;
  const part = (value: number) => Math.round(value * percent * 1e4) / 1e6;
  const quantity = { ...of, value: part(of.value), to: of.to === null ? null : part(of.to) };
  return { text: `${percent} % of ${torque.text}`, quantity, where: torque.where };
}

/** A second `part` or `angle` is `part 2`, `angle 2`: marks go by the name. */
function apart(passes: readonly PassSpec[]): PassSpec[] {
  const met = new Map<string, number>();
  return passes.map((pass) => {
    const count = (met.get(pass.name) ?? 0) + 1;
    met.set(pass.name, count);
    return count === 1 ? pass : { ...pass, name: `${pass.name} ${count}` };
  });
}

/** Name of the pass after which a bolt is tight: the last that does not wait for later. */
export function lastPass(passes: readonly PassSpec[]): string {
  return (passes.findLast((pass) => pass.after === null) ?? passes.at(-1))?.name ?? 'full';
}

/** All holes once round: clockwise by angle about their middle, from the first one. */
export function around(at: Layout): string[] {
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
export function passes(
  spec: PieceSpec,
  kinds: ReadonlyMap<string, Kind>,
  tighten: readonly string[],
  names: readonly string[] = holeNames(spec),
): Passes & { rounds: Pass[] } {
  const plan = passPlan(spec, kinds);
  const left = new Set(tighten);
  const round = around(layout(spec, names)).filter((name) => left.has(name));
  const rounds = plan.passes.flatMap((pass) => {
    const order = pass.name === 'final' && spec.sequence === null ? round : [...tighten];
    const [kind = ''] = pass.name.split(' ');
    const { name, angle, after } = pass;
    const base = { name, angle, after, say: SAY[kind] ?? '' };
    return byTorque(spec, kinds, pass, order).map((part) => ({ ...base, ...part }));
  });
  return { ...plan, rounds };
}

/** The order of a pass, cut where another torque begins to hold. */
function byTorque(
  spec: PieceSpec,
  kinds: ReadonlyMap<string, Kind>,
  pass: PassSpec,
  order: readonly string[],
): { torque: Quantity | null; order: string[] }[] {
  const runs: { torque: Quantity | null; order: string[] }[] = [];
  for (const hole of order) {
    const torque = passAt(spec, kinds, pass, hole).torque?.quantity ?? null;
    const run = runs.at(-1);
    if (run && JSON.stringify(run.torque) === JSON.stringify(torque)) run.order.push(hole);
    else runs.push({ torque, order: [hole] });
  }
  return runs;
}

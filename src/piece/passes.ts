/**
 * How often one goes round the bolts of a piece, and at what torque.
 *
 * `snug` by fingers and wrist, square down on the dowels; `part` at a share of the torque, so that the joint
 * comes down evenly; `full`; `angle` further by degrees; `final` once more round at full torque, where nothing
 * may turn on; `loosen` back by degrees between two of them; `again` later, only where the maker says so. A printed
 * torque that was not read whole is one pass, `printed`: what stands there is done as it stands. All common practice, no source, but the shares:
 * half is the middle of 50 to 70 % in the second round of ASME PCC-1's legacy method.
 */

import { printQuantity, readQuantity } from '../bolt/read/units.ts';
import { threadOf } from '../bolt/thread/threads.ts';
import { aimedAngle, readStages, readTorque } from '../bolt/torque/stages.ts';
import { kept } from '../model/kept.ts';
import { asPrinted } from '../model/said.ts';
import type { Kind, PassSpec, PieceSpec, Torque } from '../model/types.ts';
import { hasGasket, isAlone } from './care.ts';
import { holeNames } from './order.ts';

const BARE = { torque: null, angle: null, after: null, printed: null };
/** Names that may stand alone. */
const ALONE = ['snug', 'part', 'full', 'loosen', 'final'];
const NAMES = [...ALONE, 'angle', 'again'];

/**
 * One entry of `passes:`: a name, then a torque or a share (`part 50 %`), degrees, `after …`, as far as they
 * are said. Null when it is none.
 */
export function readPass(text: string): PassSpec | null {
  if (ALONE.includes(text)) return { ...BARE, name: text, after: null };
  const found = /^([a-z]+)\b(.*?)(?:\bafter\s+(\S.*))?$/i.exec(text.trim());
  const name = found?.[1]?.toLowerCase() ?? '';
  const said = found?.[2]?.trim() ?? '';
  const after = found?.[3]?.trim() ?? null;
  if (!NAMES.includes(name) || (name === 'again') !== (after !== null)) return null;
  if (name === 'angle') {
    const angle = readAngle(said);
    return angle === null ? null : { ...BARE, name, angle, after };
  }
  if (said === '') return { ...BARE, name, after };
  if (name === 'loosen') {
    const angle = readAngle(said);
    return angle === null ? null : { ...BARE, name, angle, after };
  }
  const torque = readShare(said) ?? readTorque(said);
  return torque.quantity === null ? null : { ...BARE, name, torque, after };
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
    ? { ...asPrinted(text), quantity: { value, to: null, unit: '%' }, where: null }
    : null;
}

/** From here on a part pass is due: bolts that pull a cover askew before they pull it flat. mm. */
const PART_FROM = 8;
/** 5/16 in is 7.94 mm and stands in for M8. */
const NEARLY = 0.1;
/** More bolts than these are gone round once more. */
const FEW = 4;

export interface Passes {
  passes: PassSpec[];
  /** Why so many, in a phrase. */
  why: string;
}

type Kinds = ReadonlyMap<string, Kind>;

/** A piece with its passes: those of all holes together, and those of each hole. */
interface Plan extends Passes {
  /** At the torque of the piece itself. */
  base: PassSpec[];
  /** Of holes with a torque of their own. */
  own: ReadonlyMap<string, PassSpec[]>;
  /** Some torque is printed in stages. */
  staged: boolean;
}

/** It is asked for each hole. */
function planOf(spec: PieceSpec, kinds: Kinds): Plan {
  return kept(spec, 'passes', () => makePlan(spec, kinds), kinds);
}

function makePlan(spec: PieceSpec, kinds: Kinds): Plan {
  const names = holeNames(spec);
  const torques = [...spec.holes].flatMap(([name, { torque }]) =>
    torque !== null && names.includes(name) ? [{ name, torque }] : [],
  );
  const given = spec.passes !== null && spec.passes.length > 0 ? spec.passes : null;
  if (given) {
    const at = (torque: Torque | null) => numbered(given.map((p) => resolve(p, torque)));
    const own = new Map(torques.map(({ name, torque }) => [name, at(torque)]));
    const base = at(spec.torque);
    return { passes: base, base, own, why: 'as the file says', staged: false };
  }
  const texts = [spec.torque, ...torques.map((t) => t.torque)].flatMap((t) => t?.text ?? []);
  const read = texts.map((text) => readStages(text).stages);
  const staged = read.some((stages) => stages.length > 1);
  const turned = read.some((stages) => stages.some((s) => s.do === 'angle'));
  const usual = usualOf(spec, kinds, names.length);
  const to: Usual = { ...usual, part: usual.part && !staged, final: usual.final && !turned };
  const base = passesTo(spec.torque, to);
  const own = new Map(torques.map(({ name, torque }) => [name, passesTo(torque, to).passes]));
  const all = own.size > 0 && own.size === names.length;
  const lists = [...(all ? [] : [base.passes]), ...own.values()];
  const passes = together(lists);
  for (const [name, list] of own) {
    if (!isWithin(list, passes)) own.set(name, unreadPasses(spec.holes.get(name)?.torque, passes));
  }
  const why = staged ? 'the stages as they are printed' : base.why;
  return { passes, base: base.passes, own, why: base.unread ? base.why : why, staged };
}

/** The passes of a piece, each under a name of its own, with its torque: as the file says, or the usual ones. */
export function passPlan(spec: PieceSpec, kinds: Kinds): Passes {
  const { passes, why } = planOf(spec, kinds);
  return { passes, why };
}

export function passesOf(spec: PieceSpec, kinds: Kinds): PassSpec[] {
  return planOf(spec, kinds).passes;
}

/** Those at the torque of the piece itself, without what only holes with one of their own have. */
export function piecePasses(spec: PieceSpec, kinds: Kinds): PassSpec[] {
  return planOf(spec, kinds).base;
}

/** Some torque of the piece is printed in stages. */
export function isStaged(spec: PieceSpec, kinds: Kinds): boolean {
  return planOf(spec, kinds).staged;
}

/** The passes that one hole goes through, in their order. */
export function passesAt(spec: PieceSpec, kinds: Kinds, hole: string): PassSpec[] {
  const { own, base } = planOf(spec, kinds);
  return own.get(hole) ?? base;
}

/** A pass at one hole: at the torque of its own where it has one. */
export function passAt(spec: PieceSpec, kinds: Kinds, pass: PassSpec, hole: string): PassSpec {
  return passesAt(spec, kinds, hole).find((p) => p.name === pass.name) ?? pass;
}

/**
 * The pass after which the bolt of one hole is tight. A round at the end that only is usual comes behind it: it is asked
 * for, and a bolt that has not had it is tight all the same.
 */
export function lastPassAt(spec: PieceSpec, kinds: Kinds, hole: string): string {
  const passes = passesAt(spec, kinds, hole);
  const given = spec.passes !== null && spec.passes.length > 0;
  return lastPass(given ? passes : passes.filter((p) => p.name !== 'final'));
}

/** Whether the bolt of a hole is tight once it had this pass. */
export function makesTight(spec: PieceSpec, kinds: Kinds, hole: string, pass: string): boolean {
  const last = lastPassAt(spec, kinds, hole);
  const names = passesAt(spec, kinds, hole).map((p) => p.name);
  return pass === last || names.indexOf(pass) > names.indexOf(last);
}

interface Usual {
  /** What the passes hang on, in a phrase. */
  why: string;
  part: boolean;
  final: boolean;
}

/** What is usual for the bolts of a piece, however its torque is printed. */
function usualOf(spec: PieceSpec, kinds: Kinds, count: number): Usual {
  if (isAlone(spec, kinds, count))
    return { why: 'by itself: snug and full', part: false, final: false };
  const final = hasGasket(spec) || count > FEW;
  const largest = (spec.row ?? []).reduce<{ d: number; name: string } | null>((most, item) => {
    const thread = threadOf(kinds.get(item.kind)?.thread ?? null);
    const name = kinds.get(item.kind)?.thread ?? '';
    return thread !== null && thread.d > (most?.d ?? 0) ? { d: thread.d, name } : most;
  }, null);
  if (largest === null || largest.d < PART_FROM - NEARLY) {
    const why =
      largest === null ? 'snug and full: the usual two' : `${largest.name}: snug and full will do`;
    return { why, part: false, final };
  }
  const why = `${largest.name}: a part pass between, so that the joint comes down evenly`;
  return { why, part: true, final };
}

const SNUG: PassSpec = { name: 'snug', ...BARE };

/** Passes to one torque: its stages where it has some, else the usual ones. */
function passesTo(torque: Torque | null, usual: Usual): Passes & { unread: boolean } {
  const printed = torque === null ? null : printedPasses(torque);
  const part = { name: 'part', ...BARE, torque: share(torque, 50) };
  const full: PassSpec = { name: 'full', ...BARE, torque };
  const found = printed ?? {
    passes: [SNUG, ...(usual.part ? [part] : []), full],
    why: usual.why,
    unread: false,
  };
  const last = found.passes.at(-1);
  // Nothing is gone round with where no figure is known, and never after an angle.
  if (!usual.final || last?.name !== 'full' || !last.torque?.quantity) return found;
  return {
    ...found,
    passes: [...found.passes, { ...last, name: 'final' }],
    why: `${found.why}; then once round at full torque`,
  };
}

/** The passes that a printed torque itself has; null where it is one figure, or only says where to look. */
function printedPasses(torque: Torque): (Passes & { unread: boolean }) | null {
  const { stages, rest } = readStages(torque.text);
  if (stages.length > 0 && rest.length > 0) {
    const printed = { name: 'printed', ...BARE, torque: { ...torque, quantity: null } };
    return { passes: [SNUG, printed], why: 'not read whole: done as it is printed', unread: true };
  }
  const last = stages.findLastIndex((s) => s.do === 'torque');
  if (stages.length === 0 || (stages.length === 1 && last === 0)) return null;
  const passes = stages.flatMap((stage, i): PassSpec[] => {
    if (stage.do === 'snug') return [];
    if (stage.do === 'angle') return [{ name: 'angle', ...BARE, angle: aimedAngle(stage) }];
    if (stage.do === 'loosen') return [{ name: 'loosen', ...BARE, angle: stage.degrees }];
    const { quantity, most } = stage;
    const text = `${most ? 'max ' : ''}${printQuantity(quantity)}`;
    const name = i === last ? 'full' : 'part';
    return [{ name, ...BARE, torque: { ...asPrinted(text), quantity, where: torque.where } }];
  });
  const why = 'the stages as they are printed';
  return { passes: numbered([SNUG, ...passes]), why, unread: false };
}

/** Round once more, and later again: behind all others, whatever those are. */
const isLate = ({ name }: PassSpec) => name === 'final' || name === 'again';

/**
 * One list that has each of these in its order, the first of them as it stands; a pass goes as late as its own list lets
 * it. One that runs the other way round is left out.
 */
function together(lists: readonly PassSpec[][]): PassSpec[] {
  const [first = [], ...others] = lists;
  let all = first.filter((p) => !isLate(p));
  for (const list of others) {
    const early = list.filter((p) => !isLate(p));
    const more = withAll(all, early);
    if (isWithin(early, more)) all = more;
  }
  const late = lists.flat().filter(isLate);
  const names = [...new Set(late.map((p) => p.name))];
  return [...all, ...names.flatMap((name) => late.find((p) => p.name === name) ?? [])];
}

function withAll(passes: readonly PassSpec[], list: readonly PassSpec[]): PassSpec[] {
  const all = [...passes];
  let before = all.length;
  for (const pass of [...list].reverse()) {
    const at = all.findIndex((p) => p.name === pass.name);
    if (at >= 0) before = at;
    else all.splice(before, 0, pass);
  }
  return all;
}

/** Each of these stands in `whole`, in the same order. */
function isWithin(list: readonly PassSpec[], whole: readonly PassSpec[]): boolean {
  const at = list.map((pass) => whole.findIndex((p) => p.name === pass.name));
  return at.every((place, k) => place >= 0 && place > (at[k - 1] ?? -1));
}

/** A hole whose stages run otherwise than those of its piece: what is printed, with no figure to set, in the last pass. */
function unreadPasses(torque: Torque | null | undefined, passes: readonly PassSpec[]): PassSpec[] {
  const last = {
    name: lastPass(passes),
    ...BARE,
    torque: torque ? { ...torque, quantity: null } : null,
  };
  return last.name === SNUG.name ? [last] : [SNUG, last];
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
  return { ...asPrinted(`${percent} % of ${torque.text}`), quantity, where: torque.where };
}

/** A second `part` or `angle` is `part 2`, `angle 2`: marks go by the name. */
function numbered(passes: readonly PassSpec[]): PassSpec[] {
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

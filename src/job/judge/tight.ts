/** May this bolt be noted as tight? Any order is let through, but leaving the maker's list is asked about. */
import { printQuantity } from '../../bolt/units.ts';
import type {
  HoleNow,
  Job,
  Kind,
  PassSpec,
  PieceNow,
  PieceSpec,
  Refusal,
  Verdict,
  Warning,
} from '../../model/types.ts';
import { passAt, passesAt, passesOf } from '../../piece/passes.ts';
import { nextHole } from '../../piece/sequence/next.ts';
import { type Stage, stagesOf } from '../../piece/sequence/rounds.ts';
import {
  already,
  holeField,
  list,
  meant,
  names,
  noPiece,
  pickHoles,
  refuse,
  type Stamp,
  type Wished,
  write,
  wrong,
} from './parts.ts';

type Kinds = ReadonlyMap<string, Kind>;

export function judgeTight(job: Job, wish: Wished<'tight'>, stamp: Stamp): Verdict {
  const piece = job.pieces.get(wish.piece);
  if (!piece) return noPiece(job, wish.piece);
  const picked = pickHoles(piece, wish.holes);
  if ('ok' in picked) return picked;
  if (picked.length === 0) return wrong('no-holes', `${piece.spec.name} has no bolts.`);
  const { kinds } = job.upper;
  const meantHoles = wish.holes ? picked : worked(picked);
  const chosen = choosePass(piece, kinds, meantHoles, wish.pass);
  if (chosen && 'ok' in chosen) return chosen;
  const pass = chosen?.pass ?? null;
  const due = chosen === null ? [] : meantHoles.filter((h) => isIn(chosen, h, wish.holes));
  const open = pass ? due.filter((h) => !h.passes.includes(pass.name)) : [];
  const forced = wish.because !== undefined;
  const stopped = forced ? null : stop(meantHoles);
  if (stopped) return stopped;
  if (!pass || open.length === 0) return already();

  const order = nextHole(piece, job.upper.kinds, pass.name);
  const leaves = order && !startsOrder(order.rest, names(open)) ? order : null;
  if (leaves?.printed && !forced) {
    const say = `The maker's list says ${leaves.next} next, not ${list(names(open))}.`;
    return refuse('out-of-order', say, { next: leaves.next });
  }
  const warnings: Warning[] = leaves
    ? [{ code: 'other-order', say: `${leaves.next} would be next; the rest is ordered anew.` }]
    : [];
  const set = wish.set ?? figureOf(job, piece, pass, open);
  const entry = {
    verb: 'tight',
    value: pass.name,
    piece: piece.spec.key,
    ...holeField(piece, open),
    ...(set === undefined ? {} : { set }),
    ...(leaves ? { says: `${leaves.next} was next` } : {}),
  } as const;
  return write(stamp, wish, entry, { warnings });
}

/** What the wrench is set to, where all these holes take the same; a hole may have a torque of its own. */
function figureOf(job: Job, { spec }: PieceNow, pass: PassSpec, holes: readonly HoleNow[]) {
  const figures = holes.map((hole) => {
    const { torque } = passAt(spec, job.upper.kinds, pass, hole.name);
    return torque?.quantity ? printQuantity(torque.quantity) : undefined;
  });
  const [first, ...rest] = figures;
  return rest.every((figure) => figure === first) ? first : undefined;
}

/** The holes that were worked on in this round; all of them where none was. */
function worked(holes: readonly HoleNow[]): readonly HoleNow[] {
  const touched = holes.filter((h) => h.state !== 'home');
  return touched.length > 0 ? touched : holes;
}

/** Named holes go through the pass wherever they have it; the piece as a whole only as far as its turn is now. */
function isIn(stage: Stage, hole: HoleNow, named: readonly string[] | undefined): boolean {
  return named !== undefined || stage.holes.includes(hole.name);
}

/** The pass that was named, else the earliest that one of these holes still lacks; null when all are done. */
function choosePass(
  piece: PieceNow,
  kinds: Kinds,
  holes: readonly HoleNow[],
  name?: string,
): Stage | { ok: false; refused: Refusal } | null {
  const { spec } = piece;
  if (name !== undefined) return namedPass(spec, kinds, holes, name);
  const due = new Map(holes.map((h) => [h.name, nextPass(spec, kinds, h)]));
  const stages = stagesOf(spec, kinds, names(piece.holes));
  return stages.find((s) => s.holes.some((hole) => due.get(hole) === s.pass.name)) ?? null;
}

function namedPass(spec: PieceSpec, kinds: Kinds, holes: readonly HoleNow[], name: string) {
  const all = passesOf(spec, kinds);
  const pass = all.find((p) => p.name === name);
  const passes = all.map((p) => p.name);
  if (!pass)
    return wrong('no-such-pass', `No pass ${name} here.${meant(name, passes)}`, { passes });
  const without = holes.filter((h) => !passesAt(spec, kinds, h.name).some((p) => p.name === name));
  if (without.length === holes.length && holes.length > 0) {
    return wrong('no-such-pass', `${list(names(without))}: no pass ${name}.`, { passes });
  }
  return { pass, holes: names(holes.filter((h) => !without.includes(h))) };
}

/** What a bolt lacks behind the last pass that it had; undefined when it had all. */
function nextPass(spec: PieceSpec, kinds: Kinds, hole: HoleNow): string | undefined {
  const own = passesAt(spec, kinds, hole.name).map((p) => p.name);
  return own[own.findLastIndex((name) => hole.passes.includes(name)) + 1];
}

function stop(holes: readonly HoleNow[]): { ok: false; refused: Refusal } | null {
  const out = holes.filter((h) => h.state === 'out');
  if (out.length > 0) {
    return refuse('not-in', `${list(names(out))}: no bolt is in it yet.`, { holes: names(out) });
  }
  const bad = holes.filter((h) => h.trouble !== null || h.conflict !== null);
  const first = bad[0];
  if (!first) return null;
  const what = first.conflict ? first.conflict.say : `noted as ${first.trouble}`;
  return refuse('trouble', `${first.name}: ${what}. Mend it first, and say so.`, {
    holes: names(bad),
  });
}

/** These holes are the next ones of the order, in any order among themselves. */
function startsOrder(rest: readonly string[], holes: readonly string[]): boolean {
  const head = new Set(rest.slice(0, holes.length));
  return holes.every((h) => head.has(h));
}

/** Used by the screens to show which pass is on: the earliest pass that a hole of the piece lacks. */
export function passNow(piece: PieceNow, kinds: Kinds): PassSpec | null {
  const chosen = choosePass(piece, kinds, worked(piece.holes));
  return chosen && !('ok' in chosen) ? chosen.pass : null;
}

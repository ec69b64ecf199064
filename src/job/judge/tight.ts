/** May this bolt be noted as tight? Any order is let through, but leaving the maker's list is asked about. */
import { hardestOf, readStages } from '../../bolt/stages.ts';
import { printQuantity } from '../../bolt/units.ts';
import type {
  HoleNow,
  Job,
  PassSpec,
  PieceNow,
  Refusal,
  Verdict,
  Warning,
} from '../../model/types.ts';
import { passAt, passesOf } from '../../piece/passes.ts';
import { nextHole } from '../../piece/sequence/next.ts';
import { heldTorque, LOOK_UP, sayBreaks, wouldBreak } from '../fold/against.ts';
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

export function judgeTight(job: Job, wish: Wished<'tight'>, stamp: Stamp): Verdict {
  const piece = job.pieces.get(wish.piece);
  if (!piece) return noPiece(job, wish.piece);
  const picked = pickHoles(piece, wish.holes);
  if ('ok' in picked) return picked;
  if (picked.length === 0) return wrong('no-holes', `${piece.spec.name} has no bolts.`);
  const passes = passesOf(piece.spec, job.upper.kinds);
  const meantHoles = wish.holes ? picked : worked(picked);
  const pass = choosePass(passes, meantHoles, wish.pass);
  if (pass && 'ok' in pass) return pass;
  const open = pass ? meantHoles.filter((h) => !h.passes.includes(pass.name)) : [];
  const forced = wish.because !== undefined;
  const stopped = forced ? null : stop(meantHoles);
  if (stopped) return stopped;
  if (!pass || open.length === 0) return already();
  const breaks = breaking(job, piece, pass, open, wish.set);
  if (breaks && !forced && !overruled(job, piece, pass)) return breaks;

  const order = nextHole(piece, job.upper.kinds, pass.name);
  const leaves = order && !startsOrder(order.rest, names(open)) ? order : null;
  if (leaves?.printed && !forced) {
    const say = `The maker's list says ${leaves.next} next, not ${list(names(open))}.`;
    return refuse('out-of-order', say, { next: leaves.next });
  }
  const warnings: Warning[] = [
    ...(breaks ? [{ code: 'would-break', say: breaks.refused.say }] : []),
    ...(leaves
      ? [{ code: 'other-order', say: `${leaves.next} would be next; the rest is ordered anew.` }]
      : []),
  ];
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

/** The figure of this pass, or what was set, held against each of these holes: the first that it would break. */
function breaking(
  job: Job,
  piece: PieceNow,
  pass: PassSpec,
  open: readonly HoleNow[],
  set: string | undefined,
): { ok: false; refused: Refusal } | null {
  const { kinds } = job.upper;
  const typed = set === undefined ? null : hardestOf(readStages(set));
  for (const hole of open) {
    const { torque, angle } = passAt(piece.spec, kinds, pass, hole.name);
    // A pass that is not read whole is done as it is printed, with the hardest of its figures.
    const figure = typed ?? torque?.quantity ?? null;
    if (figure === null && (torque === null || angle !== null)) continue;
    const held = heldTorque(piece, hole, kinds, figure);
    if (held && wouldBreak(held)) {
      const { verdict } = held.against;
      return refuse('would-break', `${hole.name}: ${sayBreaks(held)} ${LOOK_UP}`, {
        hole: hole.name,
        verdict,
      });
    }
  }
  return null;
}

/** Somebody gave a reason for this pass on this piece in this round already, and was told what would break. */
function overruled(job: Job, { spec, round }: PieceNow, pass: PassSpec): boolean {
  return job.entries.some(
    (e) =>
      e.verb === 'tight' &&
      e.piece === spec.key &&
      e.value === pass.name &&
      e.because !== undefined &&
      job.living.has(e.id) &&
      (job.rounds.get(e.id) ?? round) === round,
  );
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

/** The pass that was named, else the earliest that one of these holes still lacks; null when all are done. */
function choosePass(
  passes: readonly PassSpec[],
  holes: readonly HoleNow[],
  name: string | undefined,
): PassSpec | { ok: false; refused: Refusal } | null {
  if (name !== undefined) {
    const pass = passes.find((p) => p.name === name);
    const all = passes.map((p) => p.name);
    return (
      pass ?? wrong('no-such-pass', `No pass ${name} here.${meant(name, all)}`, { passes: all })
    );
  }
  const doneTo = (h: HoleNow) => passes.findLastIndex((p) => h.passes.includes(p.name));
  const next = Math.min(...holes.map((h) => doneTo(h) + 1));
  return passes[next] ?? null;
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
export function passNow(piece: PieceNow, passes: readonly PassSpec[]): PassSpec | null {
  const chosen = choosePass(passes, worked(piece.holes), undefined);
  return chosen && !('ok' in chosen) ? chosen : null;
}

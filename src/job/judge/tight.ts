/** May this bolt be noted as tight? Any order is let through, but leaving the maker's list is asked about. */
import { printQuantity } from '../../bolt/units.ts';
import type {
  HoleNow,
  Job,
  PassSpec,
  PieceNow,
  Quantity,
  Refusal,
  Verdict,
  Warning,
} from '../../model/types.ts';
import { passesOf } from '../../piece/passes.ts';
import { nextHole } from '../../piece/sequence/next.ts';
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
import { breaking, figureOf, overruled, printedFor, setSaid } from './tight-set.ts';
import { asksOnce, onceSaid, unnotedOnce, usedOnce } from './used-once.ts';

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
  // A bolt that never came out is not put back; one that is in goes by what is in.
  const back = open.filter((h) => h.state !== 'home');
  const old = usedOnce(
    job,
    piece,
    back,
    back.map((h) => h.holds),
  );
  const asks = forced ? null : asksOnce(job, piece, old);
  if (asks) return asks;
  const breaks = breaking(job, piece, pass, open, wish.set);
  if (breaks && !forced && !overruled(job, piece, pass)) return breaks;

  const order = nextHole(piece, job.upper.kinds, pass.name);
  const leaves = order && !startsOrder(order.rest, names(open)) ? order : null;
  if (leaves?.printed && !forced) {
    const say = `The maker's list says ${leaves.next} next, not ${list(names(open))}.`;
    return refuse('out-of-order', say, { next: leaves.next });
  }
  const figure = figureOf(job, piece, pass, open);
  const warnings: Warning[] = [
    ...onceSaid(old.filter((o) => o.bolts)),
    ...(back.length === 0 || piece.holes.some((h) => h.passes.length > 0)
      ? []
      : onceSaid(unnotedOnce(job, piece))),
    ...(breaks ? [{ code: 'would-break', say: breaks.refused.say }] : []),
    ...(wish.set === undefined ? [] : setSaid(wish.set, figure)),
    ...(leaves
      ? [{ code: 'other-order', say: `${leaves.next} would be next; the rest is ordered anew.` }]
      : []),
  ];
  const set = wish.set ?? (figure && printQuantity(figure));
  const printed = printedFor(job, piece, pass, open);
  const entry = {
    verb: 'tight',
    value: pass.name,
    piece: piece.spec.key,
    ...holeField(piece, open),
    ...(set === undefined ? {} : { set }),
    ...(printed === undefined ? {} : { printed }),
    ...(leaves ? { says: `${leaves.next} was next` } : {}),
  } as const;
  return write(stamp, wish, entry, { warnings });
}

/** The one figure that a wish asks to set, for whoever knows the wrenches; null where there is none. */
export function figureToSet(job: Job, wish: Wished<'tight'>): Quantity | null {
  const piece = job.pieces.get(wish.piece);
  const picked = piece ? pickHoles(piece, wish.holes) : [];
  if (!piece || 'ok' in picked) return null;
  const holes = wish.holes ? picked : worked(picked);
  const pass = choosePass(passesOf(piece.spec, job.upper.kinds), holes, wish.pass);
  if (!pass || 'ok' in pass) return null;
  const open = holes.filter((h) => !h.passes.includes(pass.name));
  return figureOf(job, piece, pass, open) ?? null;
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

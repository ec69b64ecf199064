/** May this bolt be noted as tight? Any order is let through, but leaving the maker's list is asked about. */
import { printQuantity } from '../../../bolt/read/units.ts';
import type {
  HoleNow,
  Job,
  Kind,
  PassSpec,
  PieceNow,
  PieceSpec,
  Quantity,
  Verdict,
  Warning,
} from '../../../model/types.ts';
import { passesAt, passesOf } from '../../../piece/passes.ts';
import { nextHole } from '../../../piece/sequence/next.ts';
import type { RoundStage } from '../../../piece/sequence/rounds.ts';
import { byNoFigure, hasNoFigure, NO_TORQUE } from '../../fold/no-figure.ts';
import { lastFigure, otherFigure, otherThread } from '../../fold/other-figure.ts';
import {
  already,
  holeField,
  list,
  meant,
  namesOf,
  noPiece,
  pickHoles,
  type Refused,
  refuse,
  type Stamp,
  type Wished,
  write,
  wrong,
} from '../base/verdict.ts';
import { stageDue, worked } from './pass-due.ts';
import {
  asksOtherThread,
  asksUnread,
  breaking,
  figureOfPass,
  printedFor,
  sayBreaking,
  setSaid,
  stopsBreaking,
} from './tight-set.ts';
import { asFitted, asksOnce, onceSaid, unnotedOnce, usedOnce } from './used-once.ts';

type Kinds = ReadonlyMap<string, Kind>;

export function judgeTight(job: Job, wish: Wished<'tight'>, stamp: Stamp): Verdict {
  const piece = job.pieces.get(wish.piece);
  if (!piece) return noPiece(job, wish.piece);
  if (wish.set?.trim() === '') {
    return wrong('bad-set', 'Say what the wrench was set to, in its unit: 10 N·m.');
  }
  const due = dueNow(job, piece, wish);
  if ('ok' in due) return due;
  const { pass, open } = due;
  const forced = wish.because !== undefined;
  const stopped = forced ? null : stop(due.holes);
  if (stopped) return stopped;
  if (!pass || open.length === 0) return already();
  // A bolt that never came out is not put back; one that is in goes by what is in.
  const back = open.filter((h) => h.state !== 'home');
  const old = usedOnce(job, piece, back.map(asFitted));
  const breaks = breaking(job, piece, pass, open, wish.set);
  const order = nextHole(piece, job.upper.kinds, pass.name);
  const leaves = order && !startsOrder(order.rest, namesOf(open)) ? order : null;
  const against = forced
    ? null
    : (stopAngle(piece, pass) ??
      asksOnce(job, piece, old) ??
      stopsBreaking(job, piece, pass, breaks) ??
      asksUnread(wish.set) ??
      asksOtherThread(job, piece, pass, open, wish.set) ??
      stopsOrder(leaves, open));
  if (against) return against;

  const figure = figureOfPass(job, piece, pass, open);
  const first = piece.holes.every((h) => h.passes.length === 0);
  const isOwn = open.every((h) => otherThread(job, piece, h) !== null);
  const unknown = open.filter((h) => hasNoFigure(piece.spec, job.upper.kinds, h.name));
  const warnings: Warning[] = [
    ...onceSaid(old.filter((o) => first || o.bolts)),
    ...(back.length > 0 && first ? onceSaid(unnotedOnce(job, piece)) : []),
    ...(wish.set === undefined && pass.name !== 'snug' && unknown.length > 0
      ? [{ code: 'no-torque', say: NO_TORQUE }]
      : []),
    ...(breaks.length > 0 ? [{ code: 'would-break', say: sayBreaking(breaks) }] : []),
    ...(wish.set === undefined ? [] : setSaid(wish.set, isOwn ? undefined : figure)),
    ...(pass.name === 'snug' ? [] : setHigher(job, piece, open)),
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
    ...(leaves ? { says: `out of turn, ${leaves.next} was next` } : {}),
  } as const;
  return write(stamp, wish, entry, { warnings });
}

/** `leaves`: the hole that would be next, where the wish leaves the order; only the maker's own list stops. */
function stopsOrder(leaves: ReturnType<typeof nextHole>, open: readonly HoleNow[]): Refused | null {
  if (!leaves?.printed) return null;
  const say = `The maker's list says ${leaves.next} next, not ${list(namesOf(open))}.`;
  return refuse('out-of-order', say, { next: leaves.next });
}

/** The one figure that a wish asks to set, for whoever knows the wrenches; null where there is none. */
export function figureToSet(job: Job, wish: Wished<'tight'>): Quantity | null {
  const piece = job.pieces.get(wish.piece);
  const due = piece && dueNow(job, piece, wish);
  if (!due || 'ok' in due || due.pass === null) return null;
  return figureOfPass(job, piece, due.pass, due.open) ?? null;
}

/** What a wish is about: its pass (null: all are done), the holes it means, and those of them that lack it. */
interface Due {
  pass: PassSpec | null;
  holes: readonly HoleNow[];
  open: readonly HoleNow[];
}

function dueNow(job: Job, piece: PieceNow, wish: Wished<'tight'>): Due | Refused {
  const { kinds } = job.upper;
  const picked = pickHoles(piece, wish.holes);
  if ('ok' in picked) return picked;
  if (picked.length === 0) return wrong('no-holes', `${piece.spec.name} has no bolts.`);
  const holes = wish.holes ? picked : worked(picked);
  const stage =
    choosePass(piece, kinds, holes, wish.pass) ?? passAgain(job, piece, holes, wish.set);
  if (stage && 'ok' in stage) return stage;
  if (stage === null) return { pass: null, holes, open: [] };
  const { pass } = stage;
  // What the wrench was set to may be said afterwards, where neither file nor diary has a figure.
  const unset = wish.set === undefined || pass.name === 'snug' ? [] : toSetAgain(job, piece);
  const open = holes.filter(
    (h) => isIn(stage, h, wish.holes) && (!h.passes.includes(pass.name) || unset.includes(h.name)),
  );
  return { pass, holes, open };
}

/** A wrench clicks at once on what is tighter already, and nothing turns. */
function setHigher(job: Job, piece: PieceNow, open: readonly HoleNow[]): Warning[] {
  const higher = otherFigure(job, { ...piece, holes: [...open] }).filter((o) => o.way === 'above');
  if (higher.length === 0) return [];
  const [first] = higher;
  const which = list(higher.map((o) => o.hole));
  const [was, it] = higher.length === 1 ? ['was', 'it is'] : ['were', 'they are'];
  const say = `${which} ${was} set to ${first?.set} before: ${it} let go and tightened anew, for a wrench clicks at once on what is tighter.`;
  return [{ code: 'set-higher', say }];
}

/** What may be set once more by a figure: nobody noted one, or another than is printed. */
function toSetAgain(job: Job, piece: PieceNow): string[] {
  return [...byNoFigure(job, piece), ...otherFigure(job, piece).map((o) => o.hole)];
}

/** All is tight, and some of it was set to another figure: the last pass that has one, for those. */
function passAgain(job: Job, piece: PieceNow, holes: readonly HoleNow[], set: string | undefined) {
  const again = set === undefined ? [] : otherFigure(job, piece).map((o) => o.hole);
  const [first] = holes.filter((h) => again.includes(h.name));
  const pass = first && lastFigure(job, piece, first);
  return pass ? { pass, holes: again } : null;
}

/** Named holes go through the pass wherever they have it; the piece as a whole only as far as its turn is now. */
function isIn(stage: RoundStage, hole: HoleNow, named: readonly string[] | undefined): boolean {
  return named !== undefined || stage.holes.includes(hole.name);
}

/** The pass that was named, else the earliest that one of these holes still lacks; null when all are done. */
function choosePass(
  piece: PieceNow,
  kinds: Kinds,
  holes: readonly HoleNow[],
  name?: string,
): RoundStage | Refused | null {
  if (name !== undefined) return namedPass(piece.spec, kinds, holes, name);
  return stageDue(piece, kinds, holes);
}

function namedPass(spec: PieceSpec, kinds: Kinds, holes: readonly HoleNow[], name: string) {
  const all = passesOf(spec, kinds);
  const pass = all.find((p) => p.name === name);
  const passes = all.map((p) => p.name);
  if (!pass)
    return wrong('no-such-pass', `No pass ${name} here.${meant(name, passes)}`, { passes });
  const without = holes.filter((h) => !passesAt(spec, kinds, h.name).some((p) => p.name === name));
  if (without.length === holes.length && holes.length > 0) {
    return wrong('no-such-pass', `${list(namesOf(without))}: no pass ${name}.`, { passes });
  }
  return { pass, holes: namesOf(holes.filter((h) => !without.includes(h))) };
}

function stop(holes: readonly HoleNow[]): Refused | null {
  const out = holes.filter((h) => h.state === 'out');
  if (out.length > 0) {
    return refuse('not-in', `${list(namesOf(out))}: no bolt is in it yet.`, {
      holes: namesOf(out),
    });
  }
  const bad = holes.filter((h) => h.trouble !== null || h.conflict !== null);
  const first = bad[0];
  if (!first) return null;
  const what = first.conflict ? first.conflict.say : `noted as ${first.trouble}`;
  return refuse('trouble', `${first.name}: ${what}. Mend it first, and say so.`, {
    holes: namesOf(bad),
  });
}

/** Nobody turns the others by angle beside a pulled thread: the piece comes off for its mend, and they out again. */
function stopAngle({ spec, holes }: PieceNow, pass: PassSpec): Refused | null {
  const pulled = pass.angle === null ? [] : holes.filter((h) => h.trouble === 'pulled');
  if (pulled.length === 0) return null;
  const say = `${list(namesOf(pulled))}: thread pulled. ${spec.name} has to come off for the mend: the others are not turned by angle before it.`;
  return refuse('trouble', say, { holes: namesOf(pulled) });
}

/** These holes are the next ones of the order, in any order among themselves. */
function startsOrder(rest: readonly string[], holes: readonly string[]): boolean {
  const head = new Set(rest.slice(0, holes.length));
  return holes.every((h) => head.has(h));
}

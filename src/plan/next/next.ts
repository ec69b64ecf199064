/** What the hand should do next: one step, from where the pieces stand. */

import { printQuantity } from '../../bolt/read/units.ts';
import { layersOf } from '../../job/fold/overs.ts';
import { blockers, piecesOver, stillOver } from '../../job/judge/marks/blocked.ts';
import { passDue } from '../../job/judge/marks/tight.ts';
import { inWords, type Words } from '../../job/truth/said.ts';
import type { HoleNow, Job, PassSpec, PieceNow, PieceSpec, RowItem } from '../../model/types.ts';
import { list } from '../../model/words.ts';
import { passAt, passesAt } from '../../piece/passes.ts';
import { printItem } from '../../piece/row.ts';
import { loosenNext, nextHole } from '../../piece/sequence/next.ts';
import { roundLeft } from '../piece/round-left.ts';
import { sayTakes } from '../piece/say-piece.ts';

export interface NextStep {
  piece: string;
  /** Null when the step is about the whole piece. */
  hole: string | null;
  do: 'out' | 'off' | 'settle' | 'on' | 'in' | 'tight' | 'mend';
  say: string;
}

/** The step with its sentence in parts, where something of it is printed and not so. */
type Stepping = NextStep & { words?: Words };

const plain = ({ words: _, ...step }: Stepping): NextStep => step;

/** Null when nothing of the job is on its way: all at home, or all back. */
export function nextStep(job: Job): NextStep | null {
  const step = stepNext(job, true);
  return step && plain(step);
}

/**
 * The same said of the piece as a whole where many bolts are alike to it: to come out, to be tightened. Which of them
 * is next is worked out when one is at that piece; it takes longer than all the rest.
 */
export function nextWork(job: Job): Omit<NextStep, 'hole'> | null {
  const step = stepNext(job, false);
  return step && plain(step);
}

/** The piece of that step, and its sentence in parts. */
export function workInWords(job: Job): { piece: string; words: Words } | null {
  const step = stepNext(job, false);
  return step && { piece: step.piece, words: step.words ?? [step.say] };
}

function stepNext(job: Job, exact: boolean): Stepping | null {
  const pieces = byLastMark(job);
  for (const piece of pieces) {
    const step = stepUnderWay(job, piece, exact);
    if (step) return step;
  }
  const down = furtherDown(job, pieces);
  if (down) return goingOff(job, down, exact);
  const back = pieces.find((p) => p.where === 'open' && blockers(job, p).length === 0);
  if (back) return backOn(job, back);
  const untouched = pieces.every((p) => p.where === 'home');
  const first = [...job.pieces.values()].find((p) => !layersOf(job).overs.get(p.spec.key)?.size);
  return untouched && first ? goingOff(job, first, exact) : null;
}

/** Of a piece that is neither home nor away. */
function stepUnderWay(job: Job, piece: PieceNow, exact: boolean): Stepping | null {
  if (piece.where === 'off') return goingOff(job, piece, exact);
  if (piece.where === 'on' && piece.holes.length > 0) return goingOn(job, piece, exact);
  return roundLeft(job, piece).length > 0 ? tighten(job, piece, exact) : null;
}

/** The piece that was worked on last comes first; the others in the order of the file. */
function byLastMark(job: Job): PieceNow[] {
  const last = new Map<string, number>();
  job.entries.forEach((entry, i) => {
    if (entry.piece !== undefined && job.living.has(entry.id)) last.set(entry.piece, i);
  });
  const at = (piece: PieceNow) => last.get(piece.spec.key) ?? -1;
  return [...job.pieces.values()].sort((a, b) => at(b) - at(a));
}

/** On the way down, the next piece that lies free: untouched, under pieces that are all away. */
function furtherDown(job: Job, byLast: readonly PieceNow[]): PieceNow | null {
  if (byLast.some((p) => p.fitted)) return null;
  const free = [...job.pieces.values()].filter(
    (p) => p.where === 'home' && piecesOver(job, p).length > 0 && stillOver(job, p).length === 0,
  );
  return free[0] ?? waiting(job);
}

/** What still lies over a piece whose other covers are away: that one is on the way down too. */
function waiting(job: Job): PieceNow | null {
  for (const piece of job.pieces.values()) {
    if (piece.where !== 'home') continue;
    const still = stillOver(job, piece);
    if (still.length > 0 && still.length < piecesOver(job, piece).length) {
      return still.find((p) => p.where === 'home') ?? null;
    }
  }
  return null;
}

/** The step of one piece, whatever the others do; null when it is home, tight or tested. */
export function nextOf(job: Job, piece: PieceNow): NextStep | null {
  const step = stepOf(job, piece);
  return step && plain(step);
}

function stepOf(job: Job, piece: PieceNow): Stepping | null {
  switch (piece.where) {
    case 'off':
      return goingOff(job, piece, true);
    case 'on':
      return goingOn(job, piece, true);
    case 'open':
      return backOn(job, piece);
    case 'home':
    case 'tight':
    case 'tested':
      return roundLeft(job, piece).length > 0 ? tighten(job, piece, true) : null;
  }
}

function goingOff(job: Job, piece: PieceNow, exact: boolean): NextStep {
  const name = piece.spec.name;
  const loose = piece.holes.filter((h) => h.state !== 'out');
  const free = loose.filter((h) => h.trouble === null && h.conflict === null);
  if (loose.length === 0) {
    const count = piece.holes.length;
    const say =
      count === 0 ? `${name}: take it off.` : `${name}: ${count} of ${count} out, take it off.`;
    return { piece: piece.spec.key, hole: null, do: 'off', say };
  }
  if (!exact && free.length > 0) {
    const bolts = free.length === 1 ? '1 bolt' : `${free.length} bolts`;
    const say = `${name}: ${bolts} to come out.`;
    return { piece: piece.spec.key, hole: null, do: 'out', say };
  }
  const hole = loosenNext(
    piece,
    job.upper.kinds,
    free.map((h) => h.name),
  );
  if (hole !== null) {
    return { piece: piece.spec.key, hole, do: 'out', say: `${name}: ${hole} comes out next.` };
  }
  const stuck = loose.map((h) => `${h.name} ${h.trouble ?? 'in conflict'}`);
  return {
    piece: piece.spec.key,
    hole: loose[0]?.name ?? null,
    do: 'mend',
    say: `${name}: ${list(stuck)} still holds it.`,
  };
}

function goingOn(job: Job, piece: PieceNow, exact: boolean): Stepping | null {
  const odd = settleFirst(piece);
  if (odd) return odd;
  const empty = piece.holes.filter((h) => h.state === 'out');
  if (empty.length > 0) return putIn(job, piece, empty);
  const bad = piece.holes.find((h) => h.trouble !== null);
  if (bad) {
    const say = `${piece.spec.name}: ${bad.name} is ${bad.trouble}; mend it before anything is tightened.`;
    return { piece: piece.spec.key, hole: bad.name, do: 'mend', say };
  }
  return tighten(job, piece, exact);
}

function backOn(job: Job, piece: PieceNow): NextStep {
  const odd = settleFirst(piece);
  if (odd) return odd;
  if (piece.holes.length > 0)
    return putIn(
      job,
      piece,
      piece.holes.filter((h) => h.state === 'out'),
    );
  return { piece: piece.spec.key, hole: null, do: 'on', say: `${piece.spec.name} goes back on.` };
}

function settleFirst(piece: PieceNow): NextStep | null {
  const hole = piece.holes.find((h) => h.unsettled || h.conflict !== null);
  if (!hole) return null;
  const what = hole.conflict
    ? hole.conflict.say
    : `the file says ${said(hole.claim)}, ${said(hole.found)} came out`;
  const say = `${piece.spec.name}, ${hole.name}: ${what}. Settle which is true.`;
  return { piece: piece.spec.key, hole: hole.name, do: 'settle', say };
}

function putIn(job: Job, piece: PieceNow, empty: readonly HoleNow[]): NextStep {
  const hole = empty.find((h) => h.trouble === null) ?? empty[0];
  return {
    piece: piece.spec.key,
    hole: hole?.name ?? null,
    do: 'in',
    say: `${piece.spec.name}: ${hole?.name} takes ${sayTakes(job, hole?.belongs ?? null)}, by fingers.`,
  };
}

function tighten(job: Job, piece: PieceNow, exact: boolean): Stepping | null {
  const pass = passDue(piece, job.upper.kinds);
  if (!pass) return null;
  const { spec, holes } = piece;
  const hole = exact ? (nextHole(piece, job.upper.kinds, pass.name)?.next ?? null) : null;
  // A hole may have a torque of its own: then the piece as a whole has none.
  const one = exact || holes.every((h) => !spec.holes.get(h.name)?.torque);
  const mine = passAt(spec, job.upper.kinds, pass, hole ?? '');
  const torque = one && mine.torque?.quantity ? `, ${printQuantity(mine.torque.quantity)}` : '';
  const printed = one ? printedPass(job, spec, mine, hole ?? '') : null;
  const figure = { text: torque, printed };
  if (!exact) {
    const done = holes.filter((h) => h.passes.includes(pass.name)).length;
    const how = done === 0 ? '' : `, ${done} of ${holes.length} done`;
    return tightStep(spec, hole, [`${spec.name}: tighten, ${pass.name}`, figure, `${how}.`]);
  }
  return tightStep(spec, hole, [`${spec.name}: tighten ${hole}, ${pass.name}`, figure, '.']);
}

function tightStep({ key }: PieceSpec, hole: string | null, words: Words): Stepping {
  return { piece: key, hole, do: 'tight', say: inWords(words), words };
}

/** How the figure of a pass at a hole is printed, the torque's or the pass's own; null where it is so. */
function printedPass(job: Job, spec: PieceSpec, pass: PassSpec, hole: string): string | null {
  const index = spec.passes?.findIndex((p) => p.name === pass.name) ?? -1;
  const own = spec.passes?.[index];
  if (own && own.printed !== null) return own.printed;
  const figure = own?.torque?.quantity;
  if (!pass.torque || (figure && figure.unit !== '%')) return null;
  // The torque itself, a share of it or a stage: the same pass at the torque that is printed.
  const printed = (spec.holes.get(hole)?.torque ?? spec.torque)?.printed ?? null;
  const before = job.printed.pieces.get(spec.key);
  if (printed === null || !before) return null;
  const was = passesAt(before, job.upper.kinds, hole).find((p) => p.name === pass.name);
  // Printed in other stages it has no such pass: then all that is printed.
  const text = was?.torque?.text ?? printed;
  return text === pass.torque.text ? null : text;
}

function said(item: RowItem | null): string {
  return item ? printItem(item) : 'nothing';
}

/**
 * The next step of one piece in a sentence, wherever it is told: to the bolt, or of the piece as a whole where many bolts are
 * alike to it. Which bolt is next takes longer to work out than all the rest.
 */
import { printQuantity } from '../../bolt/read/units.ts';
import { passDue } from '../../job/judge/marks/pass-due.ts';
import { wasInAlready } from '../../job/judge/marks/used-once.ts';
import { inWords, type Words } from '../../job/truth/said.ts';
import type { HoleNow, Job, PassSpec, PieceNow, PieceSpec, RowItem } from '../../model/types.ts';
import { list, many } from '../../model/words.ts';
import { passAt, passesAt } from '../../piece/passes.ts';
import { printItem } from '../../piece/row.ts';
import { loosenNext, nextHole } from '../../piece/sequence/next.ts';
import { hurtHoles } from '../order/needed.ts';
import type { PlanStep } from '../order/relations.ts';
import { taskWords } from '../order/say.ts';
import { sayTakes } from './say-piece.ts';

export interface NextStep {
  piece: string;
  /** Null when the step is about the whole piece. */
  hole: string | null;
  do: 'out' | 'off' | 'settle' | 'on' | 'in' | 'tight' | 'mend';
  say: string;
}

/** The step with its sentence in parts, where something of it is printed and not so. */
export type Stepping = NextStep & { words?: Words };

/** Whose step is told: the next bolt by its name, or that of the piece as a whole. */
export type Whose = 'bolt' | 'piece';

/** What is next at a step of the plan. */
export function sayStep(job: Job, { kind, key }: PlanStep): string {
  const task = job.tasks.get(key);
  if (kind !== 'off' && kind !== 'on') return task ? inWords(taskWords(task)) : key;
  const piece = job.pieces.get(key);
  if (!piece) return key;
  if (kind === 'off') return stepOff(job, piece, 'piece').say;
  const step = piece.where === 'on' ? stepOn(job, piece, 'piece') : stepBack(job, piece);
  return step?.say ?? `${piece.spec.name} goes back on.`;
}

/** On its way off, or still to come off. */
export function stepOff(job: Job, piece: PieceNow, of: Whose): NextStep {
  const name = piece.spec.name;
  const loose = piece.holes.filter((h) => h.state !== 'out');
  const free = loose.filter((h) => h.trouble === null && h.conflict === null);
  if (loose.length === 0) {
    const count = piece.holes.length;
    const say =
      count === 0 ? `${name}: take it off.` : `${name}: ${count} of ${count} out, take it off.`;
    return { piece: piece.spec.key, hole: null, do: 'off', say };
  }
  if (of === 'piece' && free.length > 0) {
    const held = loose.filter((h) => !free.includes(h));
    const say = `${name}: ${many(free.length, 'bolt')} to come out${troubles(held)}.`;
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
  return {
    piece: piece.spec.key,
    hole: loose[0]?.name ?? null,
    do: 'mend',
    say: `${name}: ${wrongSaid(loose)} still holds it.`,
  };
}

/** On its place with something still to go in or to be tightened; null where nothing is. */
export function stepOn(job: Job, piece: PieceNow, of: Whose): Stepping | null {
  const odd = settleFirst(piece);
  if (odd) return odd;
  const empty = piece.holes.filter((h) => h.state === 'out');
  if (empty.length > 0) return putIn(job, piece, empty);
  const bad = piece.holes.find((h) => h.trouble !== null);
  if (bad) {
    const say = `${piece.spec.name}: ${bad.name} is ${bad.trouble}; mend it before anything is tightened.`;
    return { piece: piece.spec.key, hole: bad.name, do: 'mend', say };
  }
  return stepTight(job, piece, of);
}

/** Away, and free to go back. */
export function stepBack(job: Job, piece: PieceNow): NextStep {
  const odd = settleFirst(piece);
  if (odd) return odd;
  const empty = piece.holes.filter((h) => h.state === 'out');
  if (empty.length > 0) return putIn(job, piece, empty);
  // Without bolts, or none of them is out yet.
  return { piece: piece.spec.key, hole: null, do: 'on', say: `${piece.spec.name} goes back on.` };
}

function settleFirst(piece: PieceNow): NextStep | null {
  const hole = piece.holes.find((h) => h.unsettled || h.conflict !== null);
  if (!hole) return null;
  const what = hole.conflict
    ? hole.conflict.say
    : `the file says ${itemOrNothing(hole.claim)}, ${itemOrNothing(hole.found)} came out`;
  const say = `${piece.spec.name}, ${hole.name}: ${what}. Settle which is true.`;
  return { piece: piece.spec.key, hole: hole.name, do: 'settle', say };
}

function putIn(job: Job, piece: PieceNow, empty: readonly HoleNow[]): NextStep {
  const hole = empty.find((h) => h.trouble === null) ?? empty[0];
  const hurt = hurtHoles(piece);
  const mend = hurt.length === 0 ? '' : `; mend ${wrongSaid(hurt)} before anything is tightened`;
  const takes = `${hole?.name} takes ${sayTakes(job, hole?.belongs ?? null)}, by fingers`;
  // Its faces are cleaned and its gasket or sealant laid on before a bolt goes through it.
  const first =
    piece.away === 'no' || piece.spec.joint.length === 0 ? '' : 'faces and joint first, then ';
  const again = piece.holes.every((h) => h.state === 'out') ? wasInAlready(job, piece) : [];
  const asked = again.map((what) => {
    return `${what} was in there already: a new one, or does the old one do? `;
  });
  const before = asked.length > 0 ? `${asked.join('')}Then ` : '';
  const say = `${piece.spec.name}: ${before}${first}${takes}${mend}.`;
  return { piece: piece.spec.key, hole: hole?.name ?? null, do: 'in', say };
}

/** `, 9 stuck`; empty for none. */
function troubles(holes: readonly HoleNow[]): string {
  return holes.length === 0 ? '' : `, ${wrongSaid(holes)}`;
}

function wrongSaid(holes: readonly HoleNow[]): string {
  return list(holes.map((h) => `${h.name} ${h.trouble ?? 'in conflict'}`));
}

/** The pass that is due, at its next hole or said of all. */
export function stepTight(job: Job, piece: PieceNow, of: Whose): Stepping | null {
  const pass = passDue(piece, job.upper.kinds);
  if (!pass) return null;
  const { spec, holes } = piece;
  const hole = of === 'bolt' ? (nextHole(piece, job.upper.kinds, pass.name)?.next ?? null) : null;
  // A hole may have a torque of its own: then the piece as a whole has none.
  const one = of === 'bolt' || holes.every((h) => !spec.holes.get(h.name)?.torque);
  const mine = passAt(spec, job.upper.kinds, pass, hole ?? '');
  const torque = one && mine.torque?.quantity ? `, ${printQuantity(mine.torque.quantity)}` : '';
  const printed = one ? printedPass(job, spec, mine, hole ?? '') : null;
  const figure = { text: torque, printed };
  if (of === 'piece') {
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

function itemOrNothing(item: RowItem | null): string {
  return item ? printItem(item) : 'nothing';
}

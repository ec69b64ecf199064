/**
 * What can be done in a given time and left safe. Nothing is begun that could not be finished, but bolts of a piece
 * that nothing hangs on. How long a thing takes is the file's word (`takes:`), or a rule of thumb for bolts; of
 * everything else nobody knows, and it is offered apart.
 */

import type { Job, PieceNow, PieceSpec, TaskSpec } from '../model/types.ts';
import { caresOf } from './care/care.ts';
import { cautionsForTask } from './care/cautions.ts';
import { letOut } from './care/fluids.ts';
import { type Holds, holdsOf } from './holds.ts';
import { hurtHoles } from './order/needed.ts';
import type { PlanStep } from './order/relations.ts';
import { type Standing, standingOf } from './order/standing.ts';
import { sayStep } from './piece/next-step.ts';
import { heldByCure, untimedCure, willCure } from './seal/cure.ts';
import { secondsSaid } from './time/duration.ts';

export interface Doable {
  step: string;
  say: string;
  /** About, whole minutes; null when nobody knows. */
  minutes: number | null;
  /** Half of it can be left as it is. */
  partly: boolean;
  /** How it is left safe. */
  leave: string | null;
}

export interface Within {
  minutes: number;
  /** One after the other, in the time there is. */
  can: Doable[];
  /** If they are short: how long they take is not noted. */
  maybe: Doable[];
}

/** `now` is RFC 3339. */
export function withinMinutes(job: Job, minutes: number, now: string): Within {
  const standing = standingOf(job, now);
  return withinOf(standing, holdsOf(standing), minutes);
}

export function withinOf(standing: Standing, holds: Holds, minutes: number): Within {
  const { relations, finished, order, before } = standing;
  const chosen = new Set<number>();
  // Steps that would load a joint whose sealant was only laid on within this time.
  const curing = new Set<number>();
  const can: Doable[] = [];
  const maybe: Doable[] = [];
  let left = minutes;
  for (const place of order) {
    const step = relations.steps[place];
    if (!step || finished.done[place] || !isQuiet(standing, step)) continue;
    const others = holds.of(place).filter((hold) => hold.by !== 'step');
    const waits = (before.next[place] ?? []).filter((other) => !chosen.has(other));
    if (curing.has(place)) continue;
    const again = holds.of(place).length - others.length > (before.next[place] ?? []).length;
    if (others.length > 0 || waits.length > 0 || again) continue;
    const takes = minutesOf(standing, step);
    const doable = { step: step.step, say: sayStep(standing.job, step), minutes: takes };
    const leave = leaveOf(standing, step);
    if (takes === null) {
      maybe.push({ ...doable, partly: false, leave });
    } else if (takes <= left) {
      can.push({ ...doable, partly: false, leave });
      chosen.add(place);
      for (const held of heldOnceDone(standing, step)) curing.add(held);
      left -= takes;
    } else if (canBreakOff(standing, step, left)) {
      const half = 'Two bolts opposite each other stay in and hold it; note which are out.';
      can.push({ ...doable, minutes: left, partly: true, leave: half });
      left = 0;
    }
  }
  return { minutes, can, maybe };
}

function heldOnceDone(standing: Standing, { kind, key }: PlanStep): number[] {
  const piece = kind === 'on' ? standing.job.pieces.get(key) : undefined;
  const cures = piece && (willCure(standing, piece) ?? untimedCure(standing, piece)) !== null;
  return cures ? heldByCure(standing, { piece: key }) : [];
}

/**
 * Not for a short while: what only a clock ends, what has to run, pieces that carry, push, stop, steer or burn, whatever
 * the file says of their time; what lets a liquid out, and what opens one that is still to be let out.
 */
function isQuiet(standing: Standing, step: PlanStep): boolean {
  const { job } = standing;
  if (step.kind === 'wait' || step.kind === 'test') return false;
  if (step.kind !== 'off' && step.kind !== 'on') {
    const spec = job.tasks.get(step.key)?.spec;
    // A machine that is left without its oil, half of it in the pan, is not left safe.
    return !isDangerous(spec) && letOut(spec?.say.text ?? '') === null;
  }
  const spec = job.pieces.get(step.key)?.spec;
  if (spec === undefined || caresOf(spec).care.length > 0) return false;
  // With a spring behind it, it must not be left half done.
  if (spec.loose.some((said) => /\bsprings?\b/i.test(said.text))) return false;
  return step.kind === 'on' || !opensLiquid(spec) || !isToDrain(standing);
}

function isDangerous(task: TaskSpec | undefined): boolean {
  if (task === undefined) return false;
  const cared = caresOf({ key: '', name: task.say.text, care: null }).care.length > 0;
  return cared || cautionsForTask(task).some((c) => c.key === 'raised');
}

function opensLiquid(spec: PieceSpec): boolean {
  return spec.joint.length > 0 || [...spec.holes.values()].some((h) => h.wet);
}

function isToDrain({ job, relations, finished }: Standing): boolean {
  return [...job.tasks.values()].some(
    ({ spec }) =>
      letOut(spec.say.text) !== null && finished.done[relations.at.get(spec.key) ?? -1] !== true,
  );
}

/** Minutes; rules of thumb of ours, no source, on the slow side. */
const TO_BEGIN = 3;
const BOLT_OUT = 1;
/** Sorted, in by fingers, and tightened in passes. */
const BOLT_IN = 2;
/** Faces cleaned and looked at. */
const JOINT = 10;

function minutesOf({ job }: Standing, step: PlanStep): number | null {
  const isPiece = step.kind === 'off' || step.kind === 'on';
  const now = isPiece ? job.pieces.get(step.key) : job.tasks.get(step.key);
  const said = now ? secondsSaid(now.spec.takes) : null;
  if (said !== null) return Math.ceil(said / 60);
  const piece = isPiece ? job.pieces.get(step.key) : undefined;
  if (!piece || piece.holes.some((h) => h.conflict !== null)) return null;
  const hard = step.kind === 'off' ? piece.holes.filter((h) => h.trouble) : hurtHoles(piece);
  if (hard.length > 0) return null;
  if (step.kind === 'off') return TO_BEGIN + BOLT_OUT * stillIn(piece);
  const open = piece.holes.filter((h) => h.state !== 'tight').length;
  // With a bolt in already, cleaning and laying the joint is behind one.
  const begun = piece.holes.some((h) => h.state === 'in' || h.state === 'tight');
  return TO_BEGIN + BOLT_IN * open + (piece.spec.joint.length > 0 && !begun ? JOINT : 0);
}

function stillIn(piece: PieceNow): number {
  return piece.holes.filter((h) => h.state !== 'out').length;
}

function canBreakOff({ job }: Standing, step: PlanStep, left: number): boolean {
  const piece = step.kind === 'off' ? job.pieces.get(step.key) : undefined;
  return piece !== undefined && stillIn(piece) > 2 && left >= TO_BEGIN + BOLT_OUT;
}

function leaveOf({ job }: Standing, step: PlanStep): string | null {
  const spec = step.kind === 'off' ? job.pieces.get(step.key)?.spec : undefined;
  if (!spec) return null;
  return opensLiquid(spec) ? 'Cover what is open; note what you cover it with.' : null;
}

/** What is said beside a torque: in words, never a figure to set, and nothing where there is nothing to say. */

import { turning } from '../../bolt/thread/threads.ts';
import { MAKER_FIRST, sayOnce } from '../../bolt/torque/cautions.ts';
import { smeared } from '../../bolt/torque/smeared.ts';
import { readStages } from '../../bolt/torque/stages.ts';
import { heldTorque, onThread, sayHeld } from '../../job/fold/against.ts';
import { isUsedOnce, torqueOf } from '../../job/fold/once.ts';
import type { HoleNow, Job, Kind, PassSpec, PieceNow, PieceSpec } from '../../model/types.ts';
import { list } from '../../model/words.ts';
import { orderCare } from '../../piece/care.ts';
import { CARES, caresOf } from '../care/care.ts';

/** Said of the parts that keep somebody alive; null for all others. */
function licensed(spec: PieceSpec): string | null {
  return caresOf(spec).care.some((care) => CARES[care].licensed) ? MAKER_FIRST : null;
}

/** Without the maker's list, where the maker alone can order; half turns for springs, by their tip. */
export function ordered({ spec }: PieceNow, tips: readonly string[]): string[] {
  const care = orderCare(spec);
  if (care === null) return [licensed(spec)].filter((t) => t !== null);
  if (care === 'spring') return [...tips];
  const list = "Not the maker's order: find the list, write it as sequence: of this piece.";
  const asks = spec.sequence === null ? list : null;
  return [licensed(spec), asks].filter((t) => t !== null);
}

/** How the pass itself is gone through. */
export function passSaid(pass: PassSpec): string | null {
  const [kind] = pass.name.split(' ');
  if (kind === 'final') return 'Once round: a bolt that keeps turning is STOP, not another round.';
  if (kind === 'loosen') return 'Back by so much, all round, before the next pass.';
  if (kind === 'printed') return 'Not read whole: do it as it is printed, all of it.';
  if (kind !== 'angle') return null;
  const degrees = pass.angle === null ? '' : `${pass.angle}\u00b0 further each, by angle. `;
  return `${degrees}Such bolts are often used once. Never click them again afterwards.`;
}

/** Which way it turns, for the hands that get it wrong. */
export function turnSaid(kind: Kind | undefined): string | null {
  return turning(kind?.leftHand === true).say;
}

/** Oil, threadlocker or anti-seize, where joint or notes name them. */
function smear(piece: PieceNow, hole: string, kind: Kind | undefined): string | null {
  const what = onThread(piece, hole, kind ?? null);
  return what ? smeared(what).say : null;
}

/** What is set held against the hole; null when it may well be right, or in a pass without a torque. */
function odd(job: Job, piece: PieceNow, hole: HoleNow, pass: PassSpec): string | null {
  if (pass.torque === null) return null;
  const held = heldTorque(piece, hole, job.upper.kinds);
  return sayHeld(held);
}

/** Printed in a second unit that says something else: one of the two is wrong, and nobody here knows which. */
function twoFigures(piece: PieceNow, hole: string): string | null {
  const { text } = torqueOf(piece, hole) ?? {};
  const { differ, stages } = readStages(text ?? '');
  if (differ.length === 0 || stages.length === 0 || piece.spec.passes !== null) return null;
  const said = list(differ.map((d) => d.text));
  return `Printed ${text}: ${said} is not the same. One of the two is wrong: look it up first.`;
}

/**
 * All that is to be known of this bolt's torque, what hurts most first; `stopped`: that it would break something is
 * said elsewhere.
 */
export function besideTorque(
  job: Job,
  piece: PieceNow,
  hole: string,
  pass: PassSpec,
  stopped = false,
): string[] {
  const now = piece.holes.find((h) => h.name === hole);
  const kind = job.upper.kinds.get(now?.holds?.kind ?? now?.belongs?.kind ?? '');
  return [
    kind ? sayOnce(kind, isUsedOnce(piece, hole, kind)) : null,
    pass.torque === null ? null : twoFigures(piece, hole),
    now && !stopped ? odd(job, piece, now, pass) : null,
    pass.torque === null ? null : smear(piece, hole, kind),
  ].filter((t) => t !== null);
}

/** What must not be done as things stand. */

import { printInstant } from '../../model/time.ts';
import type { PieceNow } from '../../model/types.ts';
import { list, listPieces } from '../../model/words.ts';
import { CARES, caresOf } from '../care/care.ts';
import { isAway, isUndone } from '../order/needed.ts';
import type { Standing } from '../order/standing.ts';
import { sayCureOf, untoldCures } from '../seal/cure.ts';
import { notRun } from '../tests/not-run.ts';
import { testListOf } from '../tests/testlist.ts';

/** Sentences, the worst first. */
export function dontOf(standing: Standing): string[] {
  const undone = [...standing.job.pieces.values()].filter(isUndone);
  const why = notRun(standing);
  return [
    ...(why.length > 0 ? [`Don't run it: ${list(why)}.`] : []),
    ...movedSaid(undone),
    ...untoldCures(standing).map((cure) => sayCureOf(cure, printInstant(standing.now))),
  ];
}

export interface Moving {
  /** It is not to be moved, or not taken off what holds it: sentences. */
  say: string[];
  /** Nothing undone keeps it from being moved, by what the file itself says of each undone piece. */
  safe: boolean;
  /** Undone pieces of which the file does not say whether they are dangerous. */
  unsaid: PieceNow[];
  /** Back, but what holds or stops the machine by them has not passed its test. */
  untested: PieceNow[];
}

/** Whether a machine can be moved as it stands. What a name lets guess can only forbid it. */
export function movingOf(standing: Standing): Moving {
  const undone = [...standing.job.pieces.values()].filter(isUndone);
  const unsaid = undone.filter((p) => p.spec.care === null);
  const say = movedSaid(undone);
  const open = new Set(
    testListOf(standing).flatMap((t) =>
      t.state === 'passed' || t.state === 'later' ? [] : t.pieces,
    ),
  );
  const untested = [...standing.job.pieces.values()].filter(
    (p) => open.has(p.spec.key) && !isUndone(p) && p.where !== 'home' && holdsIt(p),
  );
  // Of a job without pieces nobody knows what is undone on the machine.
  const told = standing.job.pieces.size > 0;
  const safe = told && say.length === 0 && unsaid.length === 0 && untested.length === 0;
  return { say, safe, unsaid, untested };
}

function movedSaid(undone: readonly PieceNow[]): string[] {
  const moving = undone.filter((p) => caresOf(p.spec).care.some((care) => CARES[care].stays));
  const carried = undone.filter((p) => caresOf(p.spec).care.some((care) => CARES[care].held));
  // Without its caliper or drum a pressed lever pushes the pistons or shoes out.
  const braking = undone.filter((p) => isAway(p) && caresOf(p.spec).care.includes('brake'));
  return [
    ...(moving.length > 0
      ? [`Don't move it under its own weight: ${listPieces(moving)} undone.`]
      : []),
    ...(braking.length > 0
      ? [`Don't touch the brake's lever or pedal: ${listPieces(braking)} off.`]
      : []),
    ...(carried.length > 0 ? [`Don't take it off its stand: ${listPieces(carried)} undone.`] : []),
  ];
}

function holdsIt({ spec }: PieceNow): boolean {
  return caresOf(spec).care.some((care) => CARES[care].stays || CARES[care].held);
}

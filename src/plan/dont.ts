/** What must not be done as things stand. */

import { printInstant } from '../model/time.ts';
import type { Job, PieceNow } from '../model/types.ts';
import { list } from '../model/words.ts';
import { CARES, caresOf } from './care.ts';
import { sayCureOf, untoldCures } from './cure.ts';
import { fluidsOf } from './fluids.ts';
import { insideOf, sayThing } from './inside.ts';
import { isAway, isBack } from './needed.ts';
import type { Standing } from './standing.ts';

/** Sentences, the worst first. */
export function dontOf(standing: Standing): string[] {
  const { job, lines } = standing;
  const pieces = [...job.pieces.values()];
  const inside = insideOf(lines);
  const out = fluidsOf(standing).filter((fluid) => fluid.out);
  const loose = pieces.filter((p) => p.holes.some((h) => h.state === 'in'));
  const pulled = pieces.filter((p) => p.holes.some((h) => h.trouble === 'pulled'));
  const undone = pieces.filter(isUndone);
  const moving = undone.filter((p) => caresOf(p.spec).care.some((care) => CARES[care].stays));
  const carried = undone.filter((p) => caresOf(p.spec).care.some((care) => CARES[care].held));
  const why = [
    ...out.map((fluid) => `${fluid.what} is out`),
    ...inside.map(
      (thing) =>
        `${sayThing(thing)} ${thing.count === 1 ? 'is' : 'are'} inside${at(job, thing.piece)}`,
    ),
    ...(loose.length > 0
      ? [`${names(loose)} ${loose.length === 1 ? 'is' : 'are'} only finger-tight`]
      : []),
    ...(pulled.length > 0 ? [`a thread is pulled in ${names(pulled)}`] : []),
  ];
  return [
    ...(why.length > 0 ? [`Don't run it: ${list(why)}.`] : []),
    ...(moving.length > 0 ? [`Don't move it under its own weight: ${names(moving)} undone.`] : []),
    ...(carried.length > 0 ? [`Don't take it off its stand: ${names(carried)} undone.`] : []),
    ...untoldCures(standing).map((cure) => sayCureOf(cure, printInstant(standing.now))),
  ];
}

function isUndone(piece: PieceNow): boolean {
  return isAway(piece) || (piece.where !== 'home' && !isBack(piece));
}

function names(pieces: readonly PieceNow[]): string {
  return list(pieces.map((p) => p.spec.name));
}

function at(job: Job, piece: string | null): string {
  return piece === null ? '' : ` (${job.pieces.get(piece)?.spec.name ?? piece})`;
}

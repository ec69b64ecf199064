/** Which pieces the plan is about: those that came off, and those that may still have to. */
import type { Overs } from '../../job/fold/overs.ts';
import { troubleOf } from '../../model/states/troubles.ts';
import type { HoleNow, Job, PieceNow, TaskNow } from '../../model/types.ts';
import { spoken } from './relations.ts';

/** It came off, or moved aside, in this round; a piece whose bolts are tight need not come off any more. */
export function cameOff(piece: PieceNow): boolean {
  return piece.away !== 'no' || piece.where === 'open' || piece.fitted || isBack(piece);
}

/** On its place again: without bolts as soon as it lies there, with bolts when the last pass is done. */
export function isBack(piece: PieceNow): boolean {
  if (piece.holes.length === 0) return piece.fitted;
  return piece.where === 'tight' || piece.where === 'tested';
}

/** Off, moved aside or open, and not back. */
export function isUndone(piece: PieceNow): boolean {
  return isAway(piece) || (piece.where !== 'home' && !isBack(piece));
}

/** Not on the machine at this moment. */
export function isAway(piece: PieceNow): boolean {
  return piece.away !== 'no' || piece.where === 'open';
}

/** Holes that no bolt holds in until they are mended; every other trouble is over once a bolt is in. */
export function hurtHoles(piece: PieceNow): HoleNow[] {
  return piece.holes.filter((h) => h.trouble !== null && troubleOf(h.trouble).barsBolt);
}

/**
 * Pieces without those that turned out not to be in the way. A piece that nobody touched is left out when
 * something over it has gone back already, or when all that lies under it came off without it; never when a task
 * that is still open speaks of it, or of something under it that would have to come off.
 */
export function neededPieces(job: Job, overs: Overs): PieceNow[] {
  const pieces = [...job.pieces.values()];
  const unders = new Map(pieces.map((p) => [p.spec.key, [] as PieceNow[]]));
  for (const piece of pieces) {
    for (const over of overs.get(piece.spec.key) ?? []) unders.get(over)?.push(piece);
  }
  const untouched = (key: string) => job.pieces.get(key)?.where === 'home';
  const spokenOf = [...piecesOfOpenTasks(job.tasks.values())].filter(untouched);
  const wanted = spread(spokenOf, (key) => [...(overs.get(key) ?? [])].filter(untouched));
  const back = pieces.filter((p) => p.away === 'no' && p.where !== 'home' && cameOff(p));
  const passed = spread(
    back.map((p) => p.spec.key),
    (key) => (unders.get(key) ?? []).map((p) => p.spec.key).filter(untouched),
  );
  return pieces.filter((piece) => {
    const { key } = piece.spec;
    if (!untouched(key) || wanted.has(key)) return true;
    const below = unders.get(key) ?? [];
    return !passed.has(key) && !(below.length > 0 && below.every(cameOff));
  });
}

/** The starts, and all keys to which one or the other of them leads. */
function spread(starts: Iterable<string>, leadsTo: (key: string) => string[]): Set<string> {
  const seen = new Set(starts);
  for (const key of seen) for (const to of leadsTo(key)) seen.add(to);
  return seen;
}

function piecesOfOpenTasks(tasks: Iterable<TaskNow>): Set<string> {
  const named = new Set<string>();
  for (const { spec, done } of tasks) {
    if (done !== null) continue;
    for (const step of [...spec.before, ...spec.after, ...spec.while]) {
      named.add(spoken(step).split(' ')[0] ?? '');
    }
  }
  return named;
}

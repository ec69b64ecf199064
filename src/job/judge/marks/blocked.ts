/** What must be back before a piece can go on: pieces under it that came off and are not finished. */

import type { Job, PieceNow, Warning } from '../../../model/types.ts';
import { listPieces } from '../../../model/words.ts';
import { livingAt } from '../../fold/living-of.ts';
import { carrierOf, layersOf } from '../../fold/overs.ts';
import { inWords, type Words } from '../../truth/said.ts';

/**
 * A is under B: B comes off before A and goes back after it. What lies further down is meant too where all between is
 * back already, or never came off.
 */
export function blockers(job: Job, piece: PieceNow): PieceNow[] {
  const { unders } = layersOf(job);
  const through = new Set([piece.spec.key]);
  const found = new Set<PieceNow>();
  for (const over of through) {
    for (const key of unders.get(over) ?? []) {
      const below = job.pieces.get(key);
      if (!below) continue;
      if (isBack(below)) through.add(key);
      else found.add(below);
    }
  }
  return [...found];
}

/** Pieces over this one; what it comes off with is none of them. */
export function piecesOver(job: Job, { spec }: PieceNow): PieceNow[] {
  const keys = [...(layersOf(job).overs.get(spec.key) ?? [])].filter(
    (key) => !spec.along.includes(key),
  );
  return keys.flatMap((key) => job.pieces.get(key) ?? []);
}

/** Those of them that are still on the machine. */
export function stillOver(job: Job, piece: PieceNow): PieceNow[] {
  return piecesOver(job, piece).filter(
    (over) => over.away === 'no' && over.where !== 'open' && !carrierOf(job, over),
  );
}

export function overSaid(job: Job, piece: PieceNow): Warning[] {
  return stillOver(job, piece).map((over) => ({
    code: 'still-over',
    say: `${over.spec.name} is noted as over it, and is still on.`,
  }));
}

/**
 * What came off after a piece of which the file does not say what it lies over or under: what came off first goes back
 * last, as far as anybody knows. Said, and not refused: two covers may lie beside each other.
 */
function cameOffLater(job: Job, piece: PieceNow): PieceNow[] {
  const { key } = piece.spec;
  const { overs, unders } = layersOf(job);
  if (overs.get(key)?.size || unders.get(key)?.size) return [];
  const at = lastOff(job, key);
  if (at < 0) return [];
  return [...job.pieces.values()].filter(
    (other) => other.away === 'removed' && !other.fitted && lastOff(job, other.spec.key) > at,
  );
}

/** Place in the diary of the mark by which it came off last; -1: none. */
function lastOff(job: Job, piece: string): number {
  const mark = livingAt(job, piece).findLast((e) => e.verb === 'removed');
  return mark ? job.entries.indexOf(mark) : -1;
}

/** What is open and was to be done before a piece goes on, or while it is off; what waits runs by itself. */
function tasksFirst(job: Job, piece: string): Words {
  return [...job.tasks.values()].flatMap(({ spec, done }) => {
    if (spec.verb === 'wait' || (done !== null && done !== 'failed')) return [];
    const names = (steps: readonly string[], step: string) =>
      steps.some((s) => s.trim().replace(/\s+/g, ' ') === step);
    const isFirst = names(spec.before, `${piece} on`) || names(spec.while, `${piece} off`);
    return isFirst ? [spec.say] : [];
  });
}

/** What the order says of a piece that goes on, with its first bolt: told, where nothing else stops it. */
export function orderSaid(job: Job, piece: PieceNow): Warning[] {
  const later = cameOffLater(job, piece);
  const { key, name } = piece.spec;
  const tasks = tasksFirst(job, key);
  const off = listPieces(later);
  const is = later.length === 1 ? 'is' : 'are';
  const put = `${off} came off after ${name} and ${is} not back. Look that nothing is closed in.`;
  return [
    ...(later.length === 0 ? [] : [{ code: 'came-off-later', say: put }]),
    ...tasks.map((say) => ({
      code: 'task-first',
      say: `To be done before ${name} is back: ${inWords([say])}.`,
    })),
  ];
}

function isBack(piece: PieceNow): boolean {
  if (piece.holes.length === 0) return piece.away === 'no';
  return piece.where === 'home' || piece.where === 'tight' || piece.where === 'tested';
}

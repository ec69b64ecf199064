/** Questions about a job that several screens ask. */
import type { HoleNow, Job, PieceNow } from '../../model/types.ts';

/** Time of the latest mark in the order of the diary; null when there is none. */
export function lastMark(job: Job): string | null {
  return job.entries.findLast((e) => job.living.has(e.id))?.at ?? null;
}

/** In by fingers only. */
export function fingerTight(piece: PieceNow): HoleNow[] {
  return piece.holes.filter((h) => h.state === 'in');
}

export function troubles(piece: PieceNow): HoleNow[] {
  return piece.holes.filter((h) => h.trouble !== null);
}

/** Something of the job is off, loose or in trouble. */
export function isUnderWay(job: Job): boolean {
  return [...job.pieces.values()].some(
    (p) => p.where === 'off' || p.where === 'open' || p.where === 'on' || troubles(p).length > 0,
  );
}

/** Something came off, and all that did is on again, its last pass done. */
export function isAllBack(job: Job): boolean {
  const moved = [...job.pieces.values()].filter((p) => p.where !== 'home' || p.round > 1);
  const isBack = (p: PieceNow) =>
    p.away === 'no' &&
    (p.where === 'home' || p.where === 'tight' || p.where === 'tested' || p.holes.length === 0);
  return moved.length > 0 && moved.every(isBack);
}

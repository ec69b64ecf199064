/** What lies over what, as the file says it: by `under`, by what a piece comes off with, and by what bridges it. */
import type { Job, PieceNow, PieceSpec } from './types.ts';

/** What lies directly over each piece. */
export type Overs = ReadonlyMap<string, ReadonlySet<string>>;

/** Names that the job has not are left out. */
export function oversOf(pieces: readonly PieceSpec[]): Overs {
  const overs = new Map(pieces.map((spec) => [spec.key, new Set<string>()]));
  for (const { key, under, along, bridges } of pieces) {
    for (const over of [...under, ...along]) if (overs.has(over)) overs.get(key)?.add(over);
    for (const below of bridges) overs.get(below)?.add(key);
  }
  return overs;
}

const known = new WeakMap<Job, Overs>();

/** The same for the pieces of a job, which never changes. */
export function oversIn(job: Job): Overs {
  const overs = known.get(job) ?? oversOf([...job.pieces.values()].map((p) => p.spec));
  known.set(job, overs);
  return overs;
}

/** The piece with which this one came off, without a step of its own; null where it has one, or is on its place. */
export function carrierOf(job: Job, piece: PieceNow): PieceNow | null {
  if (piece.where !== 'home') return null;
  const carriers = piece.spec.along.flatMap((key) => job.pieces.get(key) ?? []);
  return carriers.find((p) => p.away !== 'no' || p.where === 'open') ?? null;
}

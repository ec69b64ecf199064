/** What lies over what, as the file says it: by `under`, by what a piece comes off with, and by what bridges it. */
import { kept } from '../../model/kept.ts';
import type { Job, PieceNow, PieceSpec } from '../../model/types.ts';

/** What lies directly over each piece. */
export type Overs = ReadonlyMap<string, ReadonlySet<string>>;

/** Names of pieces that the job does not have are left out. */
export function oversOf(pieces: readonly PieceSpec[]): Overs {
  const overs = new Map(pieces.map((spec) => [spec.key, new Set<string>()]));
  for (const { key, under, along, bridges } of pieces) {
    for (const over of [...under, ...along]) if (overs.has(over)) overs.get(key)?.add(over);
    for (const below of bridges) overs.get(below)?.add(key);
  }
  return overs;
}

/** The same for the pieces of a job; `unders` is what lies directly under each. */
export function layersOf(job: Job): { overs: Overs; unders: Overs } {
  return kept(job, 'layers', () => layers([...job.pieces.values()].map((p) => p.spec)));
}

function layers(pieces: readonly PieceSpec[]): { overs: Overs; unders: Overs } {
  const overs = new Map(oversOf(pieces));
  // A piece over itself is a slip that check tells; nothing waits for itself.
  for (const [key, all] of overs) overs.set(key, new Set([...all].filter((over) => over !== key)));
  const unders = new Map(pieces.map(({ key }) => [key, new Set<string>()]));
  for (const [below, all] of overs) for (const over of all) unders.get(over)?.add(below);
  return { overs, unders };
}

/** The piece and all that lies under it, directly or not. */
export function withBelow(job: Job, key: string): ReadonlySet<string> {
  const { unders } = layersOf(job);
  const found = new Set([key]);
  for (const over of found) for (const below of unders.get(over) ?? []) found.add(below);
  return found;
}

/** The piece with which this one came off, without a step of its own; null where it has one, or is on its place. */
export function carrierOf(job: Job, piece: PieceNow): PieceNow | null {
  if (piece.where !== 'home') return null;
  const carriers = piece.spec.along.flatMap((key) => job.pieces.get(key) ?? []);
  return carriers.find((p) => p.away !== 'no' || p.where === 'open') ?? null;
}

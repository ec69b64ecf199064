/** The entries of a job that count, by what they are about: asked for piece after piece, they are looked through once. */
import { kept } from '../../model/kept.ts';
import type { Entry, Job } from '../../model/types.ts';
import { livingEntries } from '../diary/living.ts';

/** In the order of the file. */
export function livingOf(job: Job): readonly Entry[] {
  return living(job, () => livingEntries(job.entries));
}

const living = (job: Job, make: () => readonly Entry[]) => kept(job, 'living', make);

/** Those about one piece, its holes included. */
export function livingAt(job: Job, piece: string): readonly Entry[] {
  return piecesOf(job).get(piece) ?? [];
}

type ByPiece = ReadonlyMap<string | undefined, readonly Entry[]>;

function piecesOf(job: Job): ByPiece {
  return byPiece(job, () => Map.groupBy(livingOf(job), (e) => e.piece));
}

const byPiece = (job: Job, make: () => ByPiece) => kept(job, 'living by piece', make);

/** `next` is `job` with this entry more, which counts: so it has not to be looked through again. */
export function livesOn(job: Job, next: Job, entry: Entry): void {
  living(next, () => [...livingOf(job), entry]);
  const before = piecesOf(job);
  const own = [...(before.get(entry.piece) ?? []), entry];
  byPiece(next, () => new Map(before).set(entry.piece, own));
}

/** How far a thing to buy has come: its last mark. */
export function lastBought(job: Job, buy: string): Entry | undefined {
  const all = kept(job, 'living by buy', () => {
    const marks = livingOf(job).filter((e) => e.buy !== undefined && e.verb === 'done');
    return new Map(marks.map((e) => [e.buy, e]));
  });
  return all.get(buy);
}

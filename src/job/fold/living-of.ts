/** The entries of a job that count, by what they are about: asked for piece after piece, they are looked through once. */
import { kept } from '../../model/kept.ts';
import type { Entry, Job } from '../../model/types.ts';
import { livingEntries } from '../diary/living.ts';

/** In the order of the file. */
export function livingOf(job: Job): readonly Entry[] {
  return kept(job, 'living', () => livingEntries(job.entries));
}

/** Those about one piece, its holes included. */
export function livingAt(job: Job, piece: string): readonly Entry[] {
  const all = kept(job, 'living by piece', () => Map.groupBy(livingOf(job), (e) => e.piece));
  return all.get(piece) ?? [];
}

/** How far a thing to buy has come: its last mark. */
export function lastBought(job: Job, buy: string): Entry | undefined {
  const all = kept(job, 'living by buy', () => {
    const marks = livingOf(job).filter((e) => e.buy !== undefined && e.verb === 'done');
    return new Map(marks.map((e) => [e.buy, e]));
  });
  return all.get(buy);
}

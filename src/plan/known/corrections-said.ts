/** What is printed and not so here, in words, for whoever comes back to a job or takes it apart again. */
import type { Correction, Job } from '../../model/types.ts';
import { subjectSaid } from './words.ts';

export interface Corrected {
  text: string;
  printed: string;
}

/** All of them, or those of the pieces and tasks named, in the order in which they were made. */
export function correctionsSaid(job: Job, counts: (c: Correction) => boolean): Corrected[] {
  return job.corrections
    .filter(counts)
    .map((c) => ({ text: `${subjectSaid(job, c)}: ${c.says}`, printed: c.printed }));
}

/** It matters still: the piece is not back and tight, the task is not done. */
export function mattersStill(job: Job, { piece, task }: Correction): boolean {
  if (task !== undefined) return (job.tasks.get(task)?.done ?? null) === null;
  const where = job.pieces.get(piece ?? '')?.where;
  return where === 'off' || where === 'open' || where === 'on';
}

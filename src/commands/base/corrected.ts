/** What of a job, or of one piece, is printed and not so: for the commands that show its figures. */

import { livingEntries } from '../../job/diary/living.ts';
import { besidePrinted, silentTruths } from '../../job/truth/corrections.ts';
import type { Correctable, Correction, Job } from '../../model/types.ts';
import { subjectSaid } from '../../plan/known/words.ts';

/** Of all the job without a piece, of any kind without kinds. */
export function correctedIn(
  job: Job,
  piece?: string,
  kinds?: readonly Correctable[],
): readonly Correction[] {
  return job.corrections.filter(
    (c) => (piece === undefined || c.piece === piece) && (kinds?.includes(c.what) ?? true),
  );
}

/** A line for each below a head; nothing for none. */
export function correctedLines(job: Job, all: readonly Correction[]): string[] {
  if (all.length === 0) return [];
  const lines = all.map((c) => `  ${subjectSaid(job, c)}: ${besidePrinted(c.says, c.printed)}`);
  return ['', 'Not as printed:', ...lines];
}

/** Truths that count no more, because the file says something else now; nothing for none. */
export function lostLines(job: Job): string[] {
  return silentTruths(job.printed, livingEntries(job.entries)).lost.map(
    ({ piece, task, value, was, says }) =>
      `${job.pieces.get(piece ?? '')?.spec.name ?? task ?? piece}, ${value}: ${says} does not count, the file says “${was}” no more.`,
  );
}

/** Answers about a job at a time. */
import { kept } from '../../model/kept.ts';
import type { Job } from '../../model/types.ts';

/** The answer to a question that was asked of this job at this time before, or a new one. */
export function atTime<T>(job: Job, now: string, question: string, make: () => T): T {
  return kept(job, question, make, now);
}

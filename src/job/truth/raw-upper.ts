/** The person's part of a job as the file says it, beside the one in which corrections count. */
import type { Job, Upper } from '../../model/types.ts';

const raw = new WeakMap<Job, Upper>();

export function keepRaw(job: Job, upper: Upper): void {
  raw.set(job, upper);
}

/** What the file says; `job.upper` is what is true. */
export function rawUpper(job: Job): Upper {
  return raw.get(job) ?? job.upper;
}

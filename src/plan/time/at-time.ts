/** Answers about a job at a time: kept with the job, which never changes, until the time does. */
import type { Job } from '../../model/types.ts';

const kept = new WeakMap<Job, { now: string; answers: Map<string, unknown> }>();

/** The answer to a question that was asked of this job at this time before, or a new one. */
export function atTime<T>(job: Job, now: string, question: string, make: () => T): T {
  const last = kept.get(job);
  const known = last?.now === now ? last : { now, answers: new Map<string, unknown>() };
  if (known !== last) kept.set(job, known);
  if (!known.answers.has(question)) known.answers.set(question, make());
  return known.answers.get(question) as T;
}

/** What the plan says of a job as it stands, asked once: what a step waits for. */
import type { Job } from '../../job/types.ts';
import { type Told, waitsFor as waitsIn } from '../../plan/next-on-job.ts';
import { planNow } from './plan-now.ts';
import { cures } from './sealant.ts';

export function toldNow(job: Job, now: string): Told {
  return { plan: planNow(job, now), cures: cures(job, now), now };
}

/** What has to be done, had or out before it; empty where nothing is in the way. */
export function waitsFor(job: Job, step: string, now: string): string {
  return waitsIn(job, step, toldNow(job, now));
}
